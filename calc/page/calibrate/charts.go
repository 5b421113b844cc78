package calibrate

import (
	"math"
	"strconv"

	"striderule/calc/measure"
	"striderule/calc/report"
)

// Taken is a point that was worked out, with its interval.
func Taken(x float64, e measure.Estimate, per float64, label string) report.Point {
	low, high := e.Interval()
	return report.Point{X: x, Y: per * e.Value, Lo: per * low, Hi: per * high, Label: label, Kind: report.Result}
}

// speedChart draws the error against speed, and what the setting is taken from.
func (a *solution) speedChart() report.Chart {
	c := report.Chart{ID: "speeds", Title: "Error against feed speed", Says: "The error of each run against its speed. " + a.slipSays(),
		X: report.Scale{Label: "Speed", Unit: "mm/s", Digits: 4}, Y: report.Scale{Label: "Error", Unit: "%", Digits: 3}}
	fastest, sum := 0.0, 0.0
	runs := a.withSpeed()
	for _, r := range runs {
		c.Points = append(c.Points, report.PointAt(r.Speed, 100*measure.Error(a.asked, r.Moved), "run "+strconv.Itoa(r.Row+1), report.Counted))
		fastest, sum = max(fastest, r.Speed), sum+r.Speed
	}
	line := report.Curve{Label: "line through the runs", Kind: report.Fitted, At: []report.Place{{X: 0, Y: 100 * a.slip.Line.Intercept}, {X: fastest, Y: 100 * (a.slip.Line.Intercept + a.slip.Line.Slope*fastest)}}}
	c.Keys = [report.PointKinds]string{report.Counted: "run"}
	switch a.slip.Basis {
	case measure.FromZeroSpeed:
		c.Keys[report.Result] = "the line at zero speed, with its interval"
		c.Points = append(c.Points, Taken(0, a.scale.Error(), 100, "at zero speed"))
		c.Curves = []report.Curve{line}
	case measure.FromPlateau: // no line fits
		slow := measure.Series(a.slip.Speeds[:a.slip.Plateau])
		c.Keys[report.Result] = "mean of the slow runs that agree, with its interval"
		c.Points = append(c.Points, Taken(slow.Mean(), a.scale.Error(), 100, "mean of the slow runs"))
	default:
		c.Keys[report.Result] = "mean of all runs, with its interval"
		c.Points = append(c.Points, Taken(sum/float64(len(runs)), a.scale.Error(), 100, "mean of all runs"))
		c.Curves = []report.Curve{line}
	}
	t := 100 * a.sheet.tolerance()
	c.Bands = []report.Band{{Lo: -t, Hi: t, Label: "within tolerance"}}
	return c
}

// lengthChart draws the line: it starts at the offset and rises with the error.
func (a *solution) lengthChart() report.Chart {
	c := report.Chart{ID: "lengths", Title: "Measured less commanded", Says: "Measured less commanded length against the commanded one. The line starts at the fixed offset and rises or falls with the error of the scale.",
		X: report.Scale{Label: "Commanded", Unit: "mm", Digits: 5}, Y: report.Scale{Label: "Difference", Unit: "mm", Digits: 3},
		Keys: [report.PointKinds]string{report.Counted: "run", report.Result: "fixed offset, with its interval"}}
	line := a.fit.Line
	longest := 0.0
	for _, r := range a.withLength() {
		c.Points = append(c.Points, report.PointAt(r.Want, r.Moved-r.Want, "run "+strconv.Itoa(r.Row+1), report.Counted))
		longest = max(longest, r.Want)
	}
	c.Points = append(c.Points, Taken(0, a.fit.Offset, 1, "fixed offset"))
	c.Curves = []report.Curve{{Label: "line through the runs", Kind: report.Fitted, At: []report.Place{{X: 0, Y: line.Intercept}, {X: longest, Y: line.Intercept + (line.Slope-1)*longest}}}}
	return c
}

// roundingNoise is what rounding leaves of a residual that is 0, in mm, at most.
const roundingNoise = 1e-9

// residualChart draws what the line leaves over.
func (a *solution) residualChart() report.Chart {
	c := report.Chart{ID: "residuals", Title: "What the line leaves over", Says: "How far each run lies above or below the line. Without a pattern, all is well; a bow says that the error changes with length.",
		X: report.Scale{Label: "Commanded", Unit: "mm", Digits: 5}, Y: report.Scale{Label: "Above the line", Unit: "mm", Digits: 3},
		Keys: [report.PointKinds]string{report.Counted: "run"}, Flat: true}
	longest := 0.0
	for i, r := range a.withLength() {
		left := a.fit.Line.Residual(i)
		if math.Abs(left) < roundingNoise {
			left = 0
		}
		c.Points = append(c.Points, report.PointAt(r.Want, left, "run "+strconv.Itoa(r.Row+1), report.Counted))
		longest = max(longest, r.Want)
	}
	c.Curves = []report.Curve{report.Level("the line", report.Fitted, 0, longest, 0)}
	return c
}

// sideChart draws positions that were approached from both sides.
func (a *solution) sideChart() report.Chart {
	c := report.Chart{ID: "sides", Title: "Deviation from the target", Says: "Reached less target position. The gap between both directions is what is lost on reversal.",
		X: report.Scale{Label: "Target", Unit: "mm", Digits: 5}, Y: report.Scale{Label: "Deviation", Unit: "mm", Digits: 3},
		Keys: [report.PointKinds]string{report.Counted: "going up", report.Later: "coming down"}}
	s := a.sheet
	for i, in := range s.Targets.Rows {
		target := in.Number
		if up := &s.Up.Rows[i]; in.Given && up.Given {
			c.Points = append(c.Points, report.PointAt(target, up.Number-target, "going up", report.Counted))
		}
		if down := &s.Down.Rows[i]; in.Given && down.Given {
			c.Points = append(c.Points, report.PointAt(target, down.Number-target, "coming down", report.Later))
		}
	}
	return c
}
