package report

import (
	"strconv"

	"striderule/calc/measure"
)

// A ReadingsChart draws readings beside their mean, in the making.
type ReadingsChart struct {
	Chart Chart
	Noun  string // "run"
	Mean  measure.Estimate
}

// Add draws the reading of a row.
func (c *ReadingsChart) Add(row int, value float64, aside, suspect bool) {
	kind := Counted
	switch {
	case aside:
		kind = Aside
	case suspect:
		kind = Suspect
	}
	n := strconv.Itoa(row + 1)
	c.Put(n, Point{Y: value, Lo: value, Hi: value, Label: c.Noun + " " + n, Kind: kind})
}

// Put adds a point to the right of the others.
func (c *ReadingsChart) Put(name string, p Point) {
	c.Chart.X.Names = append(c.Chart.X.Names, name)
	p.X = float64(len(c.Chart.X.Names))
	c.Chart.Points = append(c.Chart.Points, p)
}

// Within adds the mean with its interval, and what the tolerance lets pass.
func (c *ReadingsChart) Within(least, most float64) {
	c.Chart.Title = "Readings, mean and tolerance"
	c.Chart.Says = "Each " + c.Noun + " beside the mean of those that count, and what the tolerance lets pass."
	c.Chart.Keys = [PointKinds]string{Counted: c.Noun, Aside: "set aside", Suspect: "stands out", Result: "mean with its interval", Later: "after the change"}
	c.Chart.Bands = []Band{{least, most, "within tolerance"}}
	low, high := c.Mean.Interval()
	c.Put("mean", Point{Y: c.Mean.Value, Lo: low, Hi: high, Label: "mean", Kind: Result})
}
