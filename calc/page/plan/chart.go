package plan

import (
	"math"
	"strconv"

	"striderule/calc/report"
)

// lengthChart draws the uncertainty to expect against length, a line for each
// number of runs, and marks what is planned.
func (a *solution) lengthChart(plan string) report.Chart {
	wanted, expected := 100*a.wanted(), 100*a.expected.HalfWidth()
	c := report.Chart{ID: "expect", Title: chartTitle, Says: chartSays,
		X: report.Scale{Label: lengthScale, Unit: "mm", Digits: 6}, Y: report.Scale{Label: errorScale, Unit: "%", Digits: 2},
		Keys:   [report.PointKinds]string{report.Result: plan},
		Points: []report.Point{report.PointAt(a.test.Commanded, expected, plan, report.Result)}}
	lengths := a.drawnLengths()
	c.Curves = []report.Curve{report.Level(wantedLevel, report.Limit, lengths[0], lengths[len(lengths)-1], wanted)}
	kinds := [...]report.CurveKind{report.Fitted, report.Limit + 1, report.Limit + 2, report.Limit + 3}
	for i, n := range [...]int{a.design.Repeats, 3, 5, 10} {
		d := a.design
		d.Repeats = n
		if i > 0 && n == a.design.Repeats || n > mostRepeats(d) {
			continue
		}
		curve := report.Curve{Label: a.runsOf(n), Kind: kinds[i]}
		for _, length := range lengths {
			e, err := a.testOf(length).Expect(d)
			// What is far too uncertain would press the rest flat.
			if u := 100 * e.HalfWidth(); err == nil && u <= 3*max(wanted, expected) {
				curve.At = append(curve.At, report.Place{X: length, Y: u})
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
func (a *solution) drawnLengths() []float64 {
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

// runsOf is the label of a number of runs, which each place has where there are several.
func (a *solution) runsOf(n int) string {
	if len(a.design.Places) > 0 {
		return eachCurve.Fill("n", strconv.Itoa(n))
	}
	return runsCurve.Fill("n", strconv.Itoa(n))
}
