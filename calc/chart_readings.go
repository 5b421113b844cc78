package calc

import (
	"strconv"

	"striderule/calc/measure"
)

// A readingsChart draws readings beside their mean, in the making.
type readingsChart struct {
	chart Chart
	noun  string // "run"
	mean  measure.Estimate
}

// add draws the reading of a row.
func (c *readingsChart) add(row int, value float64, aside, suspect bool) {
	kind := Counted
	switch {
	case aside:
		kind = Aside
	case suspect:
		kind = Suspect
	}
	n := strconv.Itoa(row + 1)
	c.put(n, Point{Y: value, Lo: value, Hi: value, Label: c.noun + " " + n, Kind: kind})
}

// put adds a point to the right of the others.
func (c *readingsChart) put(name string, p Point) {
	c.chart.X.Names = append(c.chart.X.Names, name)
	p.X = float64(len(c.chart.X.Names))
	c.chart.Points = append(c.chart.Points, p)
}

// within adds the mean with its interval, and what the tolerance lets pass.
func (c *readingsChart) within(least, most float64) {
	c.chart.Title = "Readings, mean and tolerance"
	c.chart.Says = "Each " + c.noun + " beside the mean of those that count, and what the tolerance lets pass."
	c.chart.Keys = [pointKinds]string{Counted: c.noun, Aside: "set aside", Suspect: "stands out", Result: "mean with its interval", Later: "after the change"}
	c.chart.Bands = []Band{{least, most, "within tolerance"}}
	low, high := c.mean.Interval()
	c.put("mean", Point{Y: c.mean.Value, Lo: low, Hi: high, Label: "mean", Kind: Result})
}
