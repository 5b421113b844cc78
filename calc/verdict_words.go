package calc

import (
	"math"

	"striderule/calc/measure"
)

// A wording is how a page says its verdicts.
type wording struct {
	it        string // what errs, and what it does: "It fed "
	what      string // too much or too little of it: " plastic"
	exactly   string // without error: "exactly what was asked."
	tries     string // "runs"
	hopeless  string // the title where the means are too coarse
	tooCoarse string // what is said there of an error that is shown
	cannot    string // and of one that is not
}

// verdict puts a judgement of an error into words.
func (w wording) verdict(j measure.Judgement, e measure.Estimate) *Verdict {
	tolerance := &Figure{Value: 100 * j.Tolerance, Unit: "%", Digits: 3}
	v := &Verdict{Says: w.span(e)}
	add := func(parts ...any) { v.Says = append(v.Says, say(parts...)...) }
	switch j.Verdict {
	case measure.LeaveIt:
		v.Kind, v.Title = Leave, "Leave it"
		add(" That is within your tolerance of ± ", tolerance, ".")
	case measure.ChangeIt:
		v.Kind, v.Title = Change, "Change it"
		if low, high := e.Interval(); low < j.Tolerance && high > -j.Tolerance {
			// The verdict asks for 95 % on one side, the interval leaves 2.5 % on either.
			add(" That it is more than your tolerance of ± ", tolerance, " is ", &Figure{Value: 100 * max(j.Above, j.Below), Unit: "%", Digits: 3}, " sure.")
		} else {
			add(" That is more than your tolerance of ± ", tolerance, ".")
		}
	case measure.EitherIsFine:
		v.Kind, v.Title = Either, "Either is fine"
		add(" That is about as much as your tolerance of ± ", tolerance, ": no number of "+w.tries+" will settle it. Changing it and leaving it are both right.")
	case measure.NotWithThis:
		v.Kind, v.Title = Hopeless, w.hopeless
		if j.Beyond() {
			add(" "+w.tooCoarse+" ± ", tolerance, ".")
		} else {
			add(" "+w.cannot+" ± ", tolerance, ".")
		}
	default:
		v.Kind, v.Title = MeasureMore, "Measure more"
		add(" These readings cannot tell whether that is within your tolerance of ± ", tolerance, ".")
	}
	return v
}

// span says an error with its interval in the words of the workshop.
func (w wording) span(e measure.Estimate) Line {
	low, high := e.Interval()
	u := e.Expanded()
	size := func(v float64) *Figure { return percent("", "", math.Abs(v), u) }
	bare := func(v float64) *Figure { f := size(v); f.Unit = ""; return f }
	switch {
	case u == 0 && e.Value == 0:
		return say(w.it + w.exactly)
	case u == 0 && e.Value < 0:
		return say(w.it, size(e.Value), " too little"+w.what+".")
	case u == 0:
		return say(w.it, size(e.Value), " too much"+w.what+".")
	case high < 0:
		return say(w.it, bare(high), " to ", size(low), " too little"+w.what+", 95 % sure.")
	case low > 0:
		return say(w.it, bare(low), " to ", size(high), " too much"+w.what+", 95 % sure.")
	}
	return say(w.it+"between ", size(low), " too little and ", size(high), " too much"+w.what+", 95 % sure.")
}
