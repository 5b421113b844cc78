package calc

import (
	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/unit"
)

// mostOpen is how many charts a part shows without being asked.
const mostOpen = 3

// charts draw the pulse rate of each axis against speed.
func (a *rates) charts() *Part {
	p := &Part{ID: "lines", Title: "Pulse rate against speed", Folded: len(a.rows) > mostOpen, Needs: lists.Concat(a.needs, []string{"limit"})}
	limit := a.sheet.Limit
	if limit.Given {
		for _, r := range a.rows {
			p.add(r.chart(limit.Value()))
		}
	}
	if len(p.Blocks) == 0 {
		return nil
	}
	return p
}

// chart draws the axis' pulse rate against its speed, and marks the speeds in
// use and the highest that the limit allows.
func (r *rateRow) chart(limit unit.PulseRate) Chart {
	c := Chart{ID: "rate-" + r.n, Title: r.name + ", pulse rate against speed", Says: "The pulse rate rises in proportion to the speed, up to the controller's limit.",
		X: Scale{Label: "Speed", Unit: r.mm("/s"), Digits: 4}, Y: Scale{Label: "Pulses per second", Digits: rateDigits}, Flat: true,
		Keys: [pointKinds]string{Counted: "speed in use", Suspect: "beyond the limit", Result: "highest speed at the limit"}}
	top := drive.TopSpeed(limit, r.is.steps)
	c.Points = []Point{at(top, float64(limit), "highest speed", Result)}
	fastest := top
	for _, s := range r.speeds {
		kind, rate := Counted, drive.PulseRate(s.value, r.is.steps)
		if rate > limit {
			kind = Suspect
		}
		c.Points = append(c.Points, at(s.value, float64(rate), s.word, kind))
		fastest = max(fastest, s.value)
	}
	line := func(label string, kind CurveKind, steps float64) Curve {
		return Curve{label, kind, []Place{{0, 0}, {fastest, float64(drive.PulseRate(fastest, steps))}}}
	}
	c.Curves = []Curve{level("the controller's limit", Limit, 0, fastest, float64(limit))}
	if r.swapped {
		c.Curves = append(c.Curves, line("before the swap", Limit+1, r.was.steps), line("after the swap", Fitted, r.is.steps))
	} else {
		c.Curves = append(c.Curves, line("this axis", Fitted, r.is.steps))
	}
	return c
}
