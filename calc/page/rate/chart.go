package rate

import (
	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// mostOpen is how many charts a part shows without being asked.
const mostOpen = 3

// charts draw the step rate of each axis against speed.
func (a *solution) charts() *report.Part {
	p := &report.Part{ID: "lines", Title: chartsTitle, Folded: len(a.rows) > mostOpen, Needs: lists.Concat(a.needs, []string{"limit"})}
	limit := a.sheet.Limit
	if limit.Given {
		for _, r := range a.rows {
			p.Add(r.chart(limit.Value()))
		}
	}
	if len(p.Blocks) == 0 {
		return nil
	}
	return p
}

// chart draws the axis' step rate against its speed, and marks the speeds in
// use and the highest that the limit allows.
func (r *row) chart(limit unit.PulseRate) report.Chart {
	c := report.Chart{ID: "rate-" + r.n, Title: chartTitle.Fill("axis", r.name), Says: chartSays,
		X: report.Scale{Label: speedScale, Unit: r.mm("/s"), Digits: 4}, Y: report.Scale{Label: rateScale, Digits: rateDigits}, Flat: true,
		Keys: [report.PointKinds]string{report.Counted: speedInUse, report.Suspect: beyondLimit, report.Result: topAtLimit}}
	top := drive.TopSpeed(limit, r.is.steps)
	c.Points = []report.Point{report.PointAt(top, float64(limit), topLabel, report.Result)}
	fastest := top
	for _, s := range r.speeds {
		kind, rate := report.Counted, drive.PulseRate(s.value, r.is.steps)
		if rate > limit {
			kind = report.Suspect
		}
		c.Points = append(c.Points, report.PointAt(s.value, float64(rate), s.kind.label, kind))
		fastest = max(fastest, s.value)
	}
	line := func(label string, kind report.CurveKind, steps float64) report.Curve {
		return report.Curve{Label: label, Kind: kind, At: []report.Place{{X: 0, Y: 0}, {X: fastest, Y: float64(drive.PulseRate(fastest, steps))}}}
	}
	c.Curves = []report.Curve{report.Level(limitLevel, report.Limit, 0, fastest, float64(limit))}
	if r.swapped {
		c.Curves = append(c.Curves, line(lineBefore, report.Limit+1, r.was.steps), line(lineAfter, report.Fitted, r.is.steps))
	} else {
		c.Curves = append(c.Curves, line(lineOfTheAxis, report.Fitted, r.is.steps))
	}
	return c
}
