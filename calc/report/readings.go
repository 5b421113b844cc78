package report

import (
	"strconv"

	"striderule/calc/measure"
)

// A ReadingsChart draws readings beside their mean, in the making.
type ReadingsChart struct {
	Chart Chart
	Words ReadingWords
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
	c.Put(n, Point{Y: value, Lo: value, Hi: value, Label: c.Words.Point.Fill("n", n), Kind: kind})
}

// Put adds a point to the right of the others.
func (c *ReadingsChart) Put(name string, p Point) {
	c.Chart.X.Names = append(c.Chart.X.Names, name)
	p.X = float64(len(c.Chart.X.Names))
	c.Chart.Points = append(c.Chart.Points, p)
}

// Within adds the mean with its interval, and the band that is acceptable.
func (c *ReadingsChart) Within(least, most float64) {
	c.Chart.Title, c.Chart.Says = c.Words.Title, c.Words.Says
	c.Chart.Keys = [PointKinds]string{Counted: c.Words.One, Aside: leftOutKey, Suspect: outlierKey, Result: meanKey, Later: checkRunKey}
	c.Chart.Bands = []Band{{least, most, acceptableKey}}
	low, high := c.Mean.Interval()
	c.Put(meanLabel, Point{Y: c.Mean.Value, Lo: low, Hi: high, Label: meanLabel, Kind: Result})
}
