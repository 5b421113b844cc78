package run

import (
	"math"

	"striderule/calc/unit"
)

// Readings are asked about that are so far from what is likely, as shares of what was commanded:
// before anything was read, beside one run, and at least beside several.
const (
	nearPlan  = 0.25
	nearOne   = 0.05
	nearOther = 0.03
	nearSlip  = 0.1 // of what was meant where a decimal mark slipped
	sureScale = 5   // times the scatter of the runs before
	misreadBy = 1   // mm or °, on top: that much a reading may be off by hand
)

// Doubts asks about an entry with which something would go wrong, and about a reading that is unlikely
// after the runs before, or the plan; instead is the text that was meant, most likely, empty if none
// is near. It never asks about what is no number: the form says what is wrong with that.
func (t Test) Doubts(c Card, text string) (says, instead string) {
	wanted := t.Wanted(c)
	switch v, ok := t.Form.NumberOf(t.Key(Card{Step: c.Step, N: c.N}), text); {
	case c == AskFor("mark") && ok && t.isInside(v):
		return doubtMark, ""
	case c.Step == Choose && t.isSides() && ok && v < slack:
		return doubtRoom.Fill("low", t.show(v-slack)), ""
	}
	if !c.IsReading() || wanted == 0 && c.Step == Read {
		return "", ""
	}
	v, ok := t.Form.NumberOf(t.Key(c), text)
	off, most := t.unlikely(c)
	if !ok || off(v) <= most {
		return "", ""
	}
	for _, by := range [...]float64{0.1, 10, 0.01, 100} {
		if off(v*by) <= min(most, nearSlip) {
			instead = unit.PlainTrim(v*by, 7)
			break
		}
	}
	u := t.unit()
	show := func(v float64) string { return unit.Trim(v, 5) + u }
	if c.Step != Read {
		return doubtPosition.Fill("reading", show(v), "target", show(wanted)), instead
	}
	return doubtReading.Fill("reading", show(v), "moved", show(t.moved(c, v)), "asked", show(wanted)), instead
}

// moved is how far a run went by its reading.
func (t Test) moved(c Card, reading float64) float64 {
	if t.isMark() {
		return t.mark(c) - reading
	}
	return reading
}

// unlikely is how far a reading is off what is likely, as a share of what was commanded, and how far
// it may be.
func (t Test) unlikely(c Card) (off func(v float64) float64, most float64) {
	wanted := t.Wanted(c)
	if c.Step != Read {
		return func(v float64) float64 { return math.Abs(v-wanted) / (math.Abs(wanted) + 2*slack) }, nearOne
	}
	var ratios []float64
	for n := range maxRuns {
		of := Card{Step: Read, N: n, Check: c.Check}
		if v := t.number(t.Key(of), n); t.Text(of) != "" && n != c.N && !t.IsLeftOut(of) && t.Wanted(of) != 0 {
			ratios = append(ratios, t.moved(of, v)/t.Wanted(of))
		}
	}
	mean, most := 1.0, nearPlan
	if c.Check { // the change was made for that
		most = nearOne
	}
	if n := float64(len(ratios)); n > 0 {
		sum, squares := 0.0, 0.0
		for _, r := range ratios {
			sum += r / n
		}
		for _, r := range ratios {
			squares += (r - sum) * (r - sum)
		}
		mean, most = sum, nearOne
		if n > 1 {
			most = max(nearOther, sureScale*math.Sqrt(squares/(n-1)))
		}
	}
	return func(v float64) float64 { return math.Abs(t.moved(c, v)/wanted - mean) }, most + misreadBy/math.Abs(wanted)
}
