package calc

import "striderule/calc/measure"

// A readingsChart draws readings beside their mean, in the making.
type readingsChart struct {
	chart Chart
	noun  string // "run"
	mean  measure.Estimate
	show  func(v float64) string
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
	n := itoa(row + 1)
	c.chart.X.Names = append(c.chart.X.Names, n)
	c.chart.Points = append(c.chart.Points, Point{float64(len(c.chart.Points) + 1), value, value, value, c.noun + " " + n, kind})
}

// within adds the mean with its interval, and what the tolerance lets pass.
func (c *readingsChart) within(least, most float64) Chart {
	low, high := c.mean.Interval()
	drawn := c.chart
	drawn.Title = "Readings, mean and tolerance"
	drawn.Bands = []Band{{least, most, "within tolerance"}}
	drawn.X.Names = append(drawn.X.Names, "mean")
	drawn.Points = append(drawn.Points, Point{float64(len(drawn.Points) + 1), c.mean.Value, low, high, "mean with its interval", Result})
	drawn.Alt = "Each " + c.noun + " beside the mean, " + c.show(c.mean.Value) + ", with its interval from " + c.show(low) + " to " + c.show(high) +
		"; the tolerance lets pass " + c.show(least) + " to " + c.show(most) + "."
	return drawn
}
