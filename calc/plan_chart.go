package calc

import (
	"math"
	"strconv"
)

// lengthChart draws the uncertainty to expect against length, a line for each
// number of runs, and marks what is planned.
func (a *planned) lengthChart(plan string) Chart {
	wanted, expected := 100*a.wanted(), 100*a.expected.Expanded()
	c := Chart{ID: "expect", Title: "Uncertainty to expect", Says: "How uncertain the error stays, by length and number of runs. Where the lines lie together, more runs do not help.",
		X: Scale{Label: "Length of a run", Unit: "mm", Digits: 6}, Y: Scale{Label: "Uncertainty of the error", Unit: "%", Digits: 2},
		Keys:   [pointKinds]string{Result: plan},
		Points: []Point{at(a.test.Commanded, expected, plan, Result)}}
	lengths := a.drawnLengths()
	c.Curves = []Curve{level("wanted", Limit, lengths[0], lengths[len(lengths)-1], wanted)}
	kinds := [...]CurveKind{Fitted, Limit + 1, Limit + 2, Limit + 3}
	for i, n := range [...]int{a.design.Repeats, 3, 5, 10} {
		d := a.design
		d.Repeats = n
		if i > 0 && n == a.design.Repeats || n > mostRepeats(d) {
			continue
		}
		curve := Curve{Label: a.runsOf(n), Kind: kinds[i]}
		for _, length := range lengths {
			e, err := a.planSheet.test(length).Expect(d)
			// What is far too uncertain would press the rest flat.
			if u := 100 * e.Expanded(); err == nil && u <= 3*max(wanted, expected) {
				curve.At = append(curve.At, Place{length, u})
			}
		}
		if len(curve.At) > 1 {
			c.Curves = append(c.Curves, curve)
		}
	}
	return c
}

// drawnLengths are lengths from the shortest to the longest there is room for,
// wider apart where the curves are less bent, and the planned one.
func (a *planned) drawnLengths() []float64 {
	plan, most := a.test.Commanded, max(a.most(), a.test.Commanded)
	var all []float64
	for length := min(longStep, plan); length < most; {
		all = append(all, length)
		next := math.Ceil(1.15*length/longStep) * longStep
		if length < plan && plan < next {
			next = plan
		}
		length = next
	}
	return append(all, most)
}

// runsOf is a number of runs in words, where each place has that many.
func (a *planned) runsOf(n int) string {
	if len(a.design.Places) > 0 {
		return strconv.Itoa(n) + " runs at each"
	}
	return strconv.Itoa(n) + " runs"
}
