package calc

import (
	"math"
	"strconv"

	"striderule/calc/measure"
)

// taken is a point that was worked out, with its interval.
func taken(x float64, e measure.Estimate, per float64, label string) Point {
	low, high := e.Interval()
	return Point{x, per * e.Value, per * low, per * high, label, Result}
}

// speedChart draws the error against speed, and what the setting is taken from.
func (a *measured) speedChart() Chart {
	c := Chart{ID: "speeds", Title: "Error against feed speed", Says: "The error of each run against its speed. " + a.slipSays(),
		X: Scale{Label: "Speed", Unit: "mm/s", Digits: 4}, Y: Scale{Label: "Error", Unit: "%", Digits: 3}}
	fastest, sum := 0.0, 0.0
	runs := a.withSpeed()
	for _, r := range runs {
		c.Points = append(c.Points, at(r.speed, 100*measure.Error(a.asked, r.moved), "run "+strconv.Itoa(r.row+1), Counted))
		fastest, sum = max(fastest, r.speed), sum+r.speed
	}
	line := Curve{"line through the runs", Fitted, []Place{{0, 100 * a.slip.Line.Intercept}, {fastest, 100 * (a.slip.Line.Intercept + a.slip.Line.Slope*fastest)}}}
	c.Keys = [pointKinds]string{Counted: "run"}
	switch a.slip.Basis {
	case measure.FromZeroSpeed:
		c.Keys[Result] = "the line at zero speed, with its interval"
		c.Points = append(c.Points, taken(0, a.scale.Error(), 100, "at zero speed"))
		c.Curves = []Curve{line}
	case measure.FromPlateau: // no line fits
		slow := measure.Series(a.slip.Speeds[:a.slip.Plateau])
		c.Keys[Result] = "mean of the slow runs that agree, with its interval"
		c.Points = append(c.Points, taken(slow.Mean(), a.scale.Error(), 100, "mean of the slow runs"))
	default:
		c.Keys[Result] = "mean of all runs, with its interval"
		c.Points = append(c.Points, taken(sum/float64(len(runs)), a.scale.Error(), 100, "mean of all runs"))
		c.Curves = []Curve{line}
	}
	t := 100 * a.sheet.tolerance()
	c.Bands = []Band{{-t, t, "within tolerance"}}
	return c
}

// lengthChart draws the line: it starts at the offset and rises with the error.
func (a *measured) lengthChart() Chart {
	c := Chart{ID: "lengths", Title: "Measured less commanded", Says: "Measured less commanded length against the commanded one. The line starts at the fixed offset and rises or falls with the error of the scale.",
		X: Scale{Label: "Commanded", Unit: "mm", Digits: 5}, Y: Scale{Label: "Difference", Unit: "mm", Digits: 3},
		Keys: [pointKinds]string{Counted: "run", Result: "fixed offset, with its interval"}}
	line := a.fit.Line
	longest := 0.0
	for _, r := range a.withLength() {
		c.Points = append(c.Points, at(r.want, r.moved-r.want, "run "+strconv.Itoa(r.row+1), Counted))
		longest = max(longest, r.want)
	}
	c.Points = append(c.Points, taken(0, a.fit.Offset, 1, "fixed offset"))
	c.Curves = []Curve{{"line through the runs", Fitted, []Place{{0, line.Intercept}, {longest, line.Intercept + (line.Slope-1)*longest}}}}
	return c
}

// roundingNoise is what is left of a residual of nothing, in mm, at most.
const roundingNoise = 1e-9

// residualChart draws what the line leaves over.
func (a *measured) residualChart() Chart {
	c := Chart{ID: "residuals", Title: "What the line leaves over", Says: "How far each run lies above or below the line. Without a pattern, all is well; a bow says that the error changes with length.",
		X: Scale{Label: "Commanded", Unit: "mm", Digits: 5}, Y: Scale{Label: "Above the line", Unit: "mm", Digits: 3},
		Keys: [pointKinds]string{Counted: "run"}, Flat: true}
	longest := 0.0
	for i, r := range a.withLength() {
		left := a.fit.Line.Residual(i)
		if math.Abs(left) < roundingNoise {
			left = 0
		}
		c.Points = append(c.Points, at(r.want, left, "run "+strconv.Itoa(r.row+1), Counted))
		longest = max(longest, r.want)
	}
	c.Curves = []Curve{level("the line", Fitted, 0, longest, 0)}
	return c
}

// sideChart draws positions that were approached from both sides.
func (a *measured) sideChart() Chart {
	c := Chart{ID: "sides", Title: "Deviation from the target", Says: "Reached less target position. The gap between both directions is what is lost on reversal.",
		X: Scale{Label: "Target", Unit: "mm", Digits: 5}, Y: Scale{Label: "Deviation", Unit: "mm", Digits: 3},
		Keys: [pointKinds]string{Counted: "going up", Later: "coming down"}}
	s := a.sheet
	for i, in := range s.Targets.rows {
		target := in.Number
		if up := &s.Up.rows[i]; in.Given && up.Given {
			c.Points = append(c.Points, at(target, up.Number-target, "going up", Counted))
		}
		if down := &s.Down.rows[i]; in.Given && down.Given {
			c.Points = append(c.Points, at(target, down.Number-target, "coming down", Later))
		}
	}
	return c
}
