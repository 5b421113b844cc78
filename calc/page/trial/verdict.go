package trial

import (
	"math"

	"striderule/calc/measure"
	"striderule/calc/report"
)

// A Wording is how a page says its verdicts.
type Wording struct {
	It        string // what errs, and what it does: "It fed "
	What      string // too much or too little of it: " plastic"
	Exactly   string // without error: "exactly what was asked."
	Tries     string // "runs"
	Hopeless  string // the title where the means are too coarse
	TooCoarse string // what is said there of an error that is shown
	Cannot    string // and of one that is not
}

// Verdict puts a judgement of an error into words.
func (w Wording) Verdict(j measure.Judgement, e measure.Estimate) *report.Verdict {
	tolerance := &report.Figure{Value: 100 * j.Tolerance, Unit: "%", Digits: 3}
	v := &report.Verdict{Says: w.Span(e)}
	add := func(parts ...any) { v.Says = append(v.Says, report.Say(parts...)...) }
	switch j.Verdict {
	case measure.LeaveIt:
		v.Kind, v.Title = report.Leave, "Leave it"
		add(" That is within your tolerance of ± ", tolerance, ".")
	case measure.ChangeIt:
		v.Kind, v.Title = report.Change, "Change it"
		if low, high := e.Interval(); low < j.Tolerance && high > -j.Tolerance {
			// The verdict asks for 95 % on one side, the interval leaves 2.5 % on either.
			add(" That it is more than your tolerance of ± ", tolerance, " is ", &report.Figure{Value: 100 * max(j.Above, j.Below), Unit: "%", Digits: 3}, " sure.")
		} else {
			add(" That is more than your tolerance of ± ", tolerance, ".")
		}
	case measure.EitherIsFine:
		v.Kind, v.Title = report.Either, "Either is fine"
		add(" That is about as much as your tolerance of ± ", tolerance, ": no number of "+w.Tries+" will settle it. Changing it and leaving it are both right.")
	case measure.NotWithThis:
		v.Kind, v.Title = report.Hopeless, w.Hopeless
		if j.Beyond() {
			add(" "+w.TooCoarse+" ± ", tolerance, ".")
		} else {
			add(" "+w.Cannot+" ± ", tolerance, ".")
		}
	default:
		v.Kind, v.Title = report.MeasureMore, "Measure more"
		add(" These readings cannot tell whether that is within your tolerance of ± ", tolerance, ".")
	}
	return v
}

// Span says an error with its interval in the words of the workshop.
func (w Wording) Span(e measure.Estimate) report.Line {
	low, high := e.Interval()
	u := e.Expanded()
	size := func(v float64) *report.Figure { return report.Percent("", "", math.Abs(v), u) }
	bare := func(v float64) *report.Figure { f := size(v); f.Unit = ""; return f }
	switch {
	case u == 0 && e.Value == 0:
		return report.Say(w.It + w.Exactly)
	case u == 0 && e.Value < 0:
		return report.Say(w.It, size(e.Value), " too little"+w.What+".")
	case u == 0:
		return report.Say(w.It, size(e.Value), " too much"+w.What+".")
	case high < 0:
		return report.Say(w.It, bare(high), " to ", size(low), " too little"+w.What+", 95 % sure.")
	case low > 0:
		return report.Say(w.It, bare(low), " to ", size(high), " too much"+w.What+", 95 % sure.")
	}
	return report.Say(w.It+"between ", size(low), " too little and ", size(high), " too much"+w.What+", 95 % sure.")
}
