package trial

import (
	"math"
	"strconv"

	"striderule/calc/measure"
	"striderule/calc/report"
	"striderule/calc/word"
)

// A Wording is how a page says its verdicts: sentences about what errs.
type Wording struct {
	Exactly    word.Template // without error
	Little     word.Template // {size} too little, of which no ± is known
	Much       word.Template // {size} too much
	LittleFrom word.Template // {low} to {high} too little
	MuchFrom   word.Template // {low} to {high} too much
	Between    word.Template // between {low} too little and {high} too much
	Once       word.Template // a single reading shows no scatter
}

// Verdict puts a judgement of an error into words.
func (w Wording) Verdict(j measure.Judgement, e measure.Estimate) *report.Verdict {
	tolerance := &report.Figure{Value: 100 * j.Tolerance, Unit: "%", Digits: 3}
	v := &report.Verdict{}
	says := func(t word.Template, parts ...any) {
		v.Says = report.Together(w.Span(e), report.Say(t, append(parts, "tolerance", tolerance)...))
	}
	switch j.Verdict {
	case measure.LeaveIt:
		v.Kind, v.Title = report.Leave, leaveTitle
		if e.HalfWidth() > 0 && w.passes(e, j.Tolerance) {
			// The verdict asks for 95 % on one side, the interval leaves 2.5 % on either.
			says(withinSure, "sure", chance(j.Within))
		} else {
			says(within)
		}
	case measure.ChangeIt:
		v.Kind, v.Title = report.Change, changeTitle
		if low, high := e.Interval(); low < j.Tolerance && high > -j.Tolerance {
			says(beyondSure, "sure", chance(max(j.Above, j.Below)))
		} else {
			says(beyond)
		}
	case measure.EitherIsFine:
		v.Kind, v.Title = report.Either, eitherTitle
		says(eitherSays)
	case measure.NotWithThis:
		v.Kind, v.Title = report.Hopeless, TooCoarseTitle
		if j.Beyond() {
			says(tooCoarse)
		} else {
			says(cannotSettle)
		}
	default:
		v.Kind, v.Title = report.MeasureMore, moreTitle
		low, high := e.Interval()
		switch {
		case e.HalfWidth() == 0: // nothing is known yet
			says(cannotTell)
		case low > j.Tolerance || high < -j.Tolerance:
			says(notClearlyBeyond)
		case low >= -j.Tolerance && high <= j.Tolerance:
			says(notClearlyWithin)
		default:
			says(cannotTell)
		}
	}
	return v
}

// Planned puts a judgement into words that's made before the planned number of runs.
func (w Wording) Planned(j measure.Judgement, e measure.Estimate, runs int) *report.Verdict {
	v := w.Verdict(j, e)
	v.Says = report.Together(w.Span(e), report.Say(comesWithPlan, "n", strconv.Itoa(runs)))
	return v
}

func chance(p float64) *report.Figure {
	return &report.Figure{Value: 100 * p, Unit: "%", Digits: 3, Chance: true}
}

// Alone puts a judgement of a single reading into words, which shows no scatter and so no ±.
func (w Wording) Alone(j measure.Judgement, e measure.Estimate) *report.Verdict {
	j.Above, j.Below = 0, 0 // what chances there are it doesn't show either
	v := w.Verdict(j, measure.Estimate{Value: e.Value})
	if j.Verdict != measure.NotWithThis {
		v.Says = report.Together(w.Span(measure.Estimate{Value: e.Value}), report.Say(w.Once))
	}
	return v
}

// Span says an error with its interval in the words of the workshop.
func (w Wording) Span(e measure.Estimate) report.Line {
	low, high := e.Interval()
	u := e.HalfWidth()
	size := func(v float64) *report.Figure { return report.Percent("", "", math.Abs(v), u) }
	bare := func(v float64) *report.Figure { f := size(v); f.Unit = ""; return f }
	switch {
	case u == 0 && e.Value == 0:
		return report.Say(w.Exactly)
	case u == 0 && e.Value < 0:
		return report.Say(w.Little, "size", size(e.Value))
	case u == 0:
		return report.Say(w.Much, "size", size(e.Value))
	case high < 0:
		return report.Say(w.LittleFrom, "low", bare(high), "high", size(low))
	case low > 0:
		return report.Say(w.MuchFrom, "low", bare(low), "high", size(high))
	}
	return report.Say(w.Between, "low", size(low), "high", size(high))
}

// passes reports whether an end of an error's interval, as Span shows it, is beyond a tolerance.
func (w Wording) passes(e measure.Estimate, tolerance float64) bool {
	low, high := e.Interval()
	end, _ := strconv.ParseFloat(report.Percent("", "", max(-low, high), e.HalfWidth()).Plain(), 64)
	return end > 100*tolerance
}

// Doubt is the sentence of a warning.
func Doubt(w measure.Warning) word.Template { return word.Template(warnings.Of(string(w))) }

// Doubt is the sentence of a warning for such an axis.
func (w *MoveWording) Doubt(of measure.Warning) word.Template {
	if own := w.Doubts.Of(string(of)); own != "" {
		return word.Template(own)
	}
	return Doubt(of)
}
