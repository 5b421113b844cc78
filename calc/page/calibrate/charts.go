package calibrate

import (
	"strconv"
	"strings"

	"striderule/calc/measure"
	"striderule/calc/page/trial"
	"striderule/calc/report"
)

// Taken is a point that was worked out, with its interval.
func Taken(x float64, e measure.Estimate, per float64, label string) report.Point {
	low, high := e.Interval()
	return report.Point{X: x, Y: per * e.Value, Lo: per * low, Hi: per * high, Label: label, Kind: report.Result}
}

// speedChart draws the error against speed, and what the setting is taken from.
func (a *solution) speedChart() report.Chart {
	c := report.Chart{ID: "speeds", Title: speedChartTitle, Says: strings.Join(append([]string{speedChartSays}, a.slipSays()...), " "),
		X: report.Scale{Label: speedName, Unit: "mm/s", Digits: 4}, Y: report.Scale{Label: errorLabel, Unit: "%", Digits: 3}}
	fastest := 0.0
	for _, r := range a.withSpeed() {
		c.Points = append(c.Points, report.PointAt(r.Speed, 100*measure.Error(a.asked, r.Moved), runName(r), report.Counted))
		fastest = max(fastest, r.Speed)
	}
	name, end := lineName, report.Place{X: fastest, Y: 100 * (a.slip.Line.Intercept + a.slip.Line.Slope*fastest)}
	if a.slip.Basis == measure.FromSlowest {
		name, end = slowLineName, report.Place{X: a.slip.Speeds[1], Y: 100 * a.slip.MeanErrors[1]}
	}
	e := a.scale.Error()
	c.Curves = []report.Curve{{Label: name, Kind: report.Fitted, At: []report.Place{{X: 0, Y: 100 * e.Value}, end}}}
	c.Keys = [report.PointKinds]string{report.Counted: runNoun, report.Result: zeroSpeedKey}
	c.Points = append(c.Points, Taken(0, e, 100, zeroSpeedName))
	t := 100 * a.sheet.acceptable()
	c.Bands = []report.Band{{Lo: -t, Hi: t, Label: bandName}}
	return c
}

// lengthChart draws the line: it starts at the offset and rises with the error.
func (a *solution) lengthChart() report.Chart {
	c := report.Chart{ID: "lengths", Title: lengthChartTitle, Says: a.sheet.moves().LengthChartSays,
		X: report.Scale{Label: commandedName, Unit: a.unit, Digits: 5}, Y: report.Scale{Label: differenceName, Unit: a.unit, Digits: 3},
		Keys: [report.PointKinds]string{report.Counted: runNoun, report.Result: offsetKey}}
	line := a.fit.Line
	longest := 0.0
	for _, r := range a.withLength() {
		c.Points = append(c.Points, report.PointAt(r.Want, r.Moved-r.Want, runName(r), report.Counted))
		longest = max(longest, r.Want)
	}
	c.Points = append(c.Points, Taken(0, a.fit.Offset, 1, offsetName))
	c.Curves = []report.Curve{{Label: lineName, Kind: report.Fitted, At: []report.Place{{X: 0, Y: line.Intercept}, {X: longest, Y: line.Intercept + (line.Slope-1)*longest}}}}
	return c
}

// roundingNoise is what rounding leaves of a residual, or a deviation, that is 0, at most: in mm
// or degrees.
const roundingNoise = 1e-9

// residualChart draws what the line leaves over.
func (a *solution) residualChart() report.Chart {
	c := report.Chart{ID: "residuals", Title: residualTitle, Says: a.sheet.moves().ResidualSays,
		X: report.Scale{Label: commandedName, Unit: a.unit, Digits: 5}, Y: report.Scale{Label: aboveName, Unit: a.unit, Digits: 3},
		Keys: [report.PointKinds]string{report.Counted: runNoun}, Flat: true}
	longest := 0.0
	for i, r := range a.withLength() {
		left := withoutNoise(a.fit.Line.Residual(i))
		c.Points = append(c.Points, report.PointAt(r.Want, left, runName(r), report.Counted))
		longest = max(longest, r.Want)
	}
	c.Curves = []report.Curve{report.Level(theLine, report.Fitted, 0, longest, 0)}
	return c
}

// sideChart draws positions that were approached from both sides.
func (a *solution) sideChart() report.Chart {
	c := report.Chart{ID: "sides", Title: sideChartTitle, Says: sideChartSays,
		X: report.Scale{Label: targetName, Unit: a.unit, Digits: 5}, Y: report.Scale{Label: deviationName, Unit: a.unit, Digits: 3},
		Keys: [report.PointKinds]string{report.Counted: upName, report.Later: downName}}
	targets, ups, downs := a.sheet.positions()
	for i, in := range targets.Rows {
		target := in.Number
		if up := &ups.Rows[i]; in.Given && up.Given {
			c.Points = append(c.Points, report.PointAt(target, up.Number-target, upName, report.Counted))
		}
		if down := &downs.Rows[i]; in.Given && down.Given {
			c.Points = append(c.Points, report.PointAt(target, down.Number-target, downName, report.Later))
		}
	}
	return c
}

// runName calls a run by its number.
func runName(r trial.Run) string { return runLabel.Fill("n", strconv.Itoa(r.Row+1)) }
