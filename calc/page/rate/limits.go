package rate

import (
	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// limits is what the controller's limit allows.
func (a *solution) limits() *report.Part {
	heading, top := limitTitle, axisTop
	if a.swap() {
		heading = limitAfterTitle
	}
	if a.shared() {
		top = aloneTop
	}
	p := &report.Part{ID: "limit", Title: heading, Needs: lists.Concat(a.needs, []string{"limit", "share"})}
	limit := a.sheet.Limit
	if !limit.Given {
		p.Add(report.Ask{Keys: []string{"limit"}, For: forTop})
		return p
	}
	var figures report.FigureList
	for _, r := range a.rows {
		id := "top"
		if a.swap() {
			id = "" // the table of before and after has both
		}
		figures.Add(r.figure(id, top.Fill("axis", r.name), drive.TopSpeed(limit.Value(), r.is.steps), r.mm("/s")))
	}
	all := a.demands()
	if a.shared() && len(a.sums) > 0 {
		most := max(a.sums[0].value, a.sums[len(a.sums)-1].value)
		figures.Add(&report.Figure{ID: "slower", Label: slowerLabel, Value: 100 * limit.Number / most, Unit: "%", Digits: 4})
	}
	p.Add(report.Figures{All: figures})
	over := keepDemands(all, limit.Number)
	for _, d := range over {
		p.Add(d.over(limit.Value()))
	}
	if len(over) == 0 && len(all) > 0 {
		p.Add(report.ParaOf(allOK))
	}
	return p
}

func keepDemands(all []demand, above float64) []demand {
	return lists.Keep(all, func(d demand) bool { return d.rate > above })
}

// after is what a swap changes.
func (a *solution) after() *report.Part {
	t := report.Table{Caption: afterCaption, Head: []string{"", beforeColumn, afterColumn}}
	for _, r := range a.rows {
		if !r.swapped {
			continue
		}
		for _, s := range r.speeds {
			t.Row(axisRateAt.Fill("axis", r.name, "speed", s.kind.name), r.rate("", s, r.was), r.rate("new-"+s.id, s, r.is))
		}
		if limit := a.sheet.Limit; limit.Given {
			t.Row(axisTop.Fill("axis", r.name), r.figure("top", topLabel, drive.TopSpeed(limit.Value(), r.was.steps), r.mm("/s")),
				r.figure("new-top", topLabel, drive.TopSpeed(limit.Value(), r.is.steps), r.mm("/s")))
		}
		t.Row(axisSmallest.Fill("axis", r.name), r.figure("", microstepCell, 1/r.was.steps, r.mm("")), r.figure("new-microstep", microstepCell, 1/r.is.steps, r.mm("")))
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return &report.Part{ID: "after", Title: afterTitle, Needs: lists.Concat(a.needs, []string{"limit"}), Blocks: []report.Block{t}}
}

// torque is what is behind one microstep.
func (a *solution) torque() *report.Part {
	p := &report.Part{ID: "torque", Title: torqueTitle, Needs: lists.Concat(a.needs, []string{"hold"})}
	var figures report.FigureList
	add := func(r *row, prefix string, steps word.Counted, holds word.Template, m unit.Count) {
		if m == 0 {
			return
		}
		share := drive.IncrementalTorque(m)
		f := r.figure(prefix+"torque", steps.Fill(int(m), "axis", r.name), 100*share, "%")
		f.Digits = 3
		figures.Add(f)
		if hold := a.sheet.Hold; hold.Given {
			f := r.figure(prefix+"holds", holds.Fill("axis", r.name), share*hold.Number, "N·m")
			f.Digits = 3
			figures.Add(f)
		}
	}
	for _, r := range a.rows {
		add(r, "", axisMicrosteps, axisHolds, r.was.motor.Microsteps)
		if r.swapped {
			add(r, "new-", axisMicrostepsAfter, axisHoldsAfter, r.is.motor.Microsteps)
		}
	}
	p.Add(report.ParaOf(torqueSays), report.Figures{All: figures}, report.ParaOf(torqueMeans))
	if len(figures) == 0 {
		return nil
	}
	return p
}

var cornerKeys = []string{"supply", "inductance", "resistance", "current"}

func (s *entries) winding() drive.Winding {
	return drive.Winding{Inductance: s.Inductance.Value(), Resistance: s.Resistance.Value()}
}

// weakSupply finds a supply that cannot drive the current through the winding.
func (s *entries) weakSupply() []report.Problem {
	takes := s.winding().Takes(s.Current.Value())
	if !s.Supply.Given || takes < s.Supply.Value() {
		return nil
	}
	figure := func(v float64, unit string) string { return report.Figure{Value: v, Unit: unit, Digits: 4}.String() }
	return []report.Problem{{Key: "supply", Says: supplyTooLow.Fill(
		"typed", s.Supply.Text(), "current", s.Current.Text(), "resistance", s.Resistance.Text(),
		"takes", figure(float64(takes), "V"), "most", figure(s.Supply.Number/s.Resistance.Number, "A"))}}
}

// corner is where a motor's current can no longer follow.
func (a *solution) corner() *report.Part {
	p := &report.Part{ID: "corner", Title: cornerTitle,
		Needs: lists.Concat(a.needs, cornerKeys)}
	s := a.sheet
	var missing []string
	for _, e := range []struct {
		key   string
		given bool
	}{{"supply", s.Supply.Given}, {"inductance", s.Inductance.Given}, {"current", s.Current.Given}} {
		if !e.given {
			missing = append(missing, e.key)
		}
	}
	turning := lists.Keep(a.rows, func(r *row) bool { return r.is.motor.StepAngle != 0 && r.is.motor.Microsteps != 0 })
	if len(turning) == 0 {
		missing = append(missing, "angle", "micro")
	}
	p.Add(report.CautionOf("wiring"), report.CautionOf("mains"))
	if len(missing) > 0 {
		p.Add(report.Ask{Keys: missing, For: forCorner})
		return p
	}
	t := report.Table{Caption: cornerCaption, Head: []string{axisColumn, motorColumn, "", movesColumn}}
	var doubts []report.Block
	var c drive.Corner
	for _, r := range turning {
		var ok bool
		if c, ok = drive.CornerOf(s.Supply.Value(), s.winding(), s.Current.Value(), r.is.motor.FullSteps()); !ok {
			return p // the supply is a problem of its own
		}
		follow := c.Turns * r.is.motor.Pulses() / r.is.steps
		t.Row(r.name, r.figure("corner", motorCell, c.Turns, "rev/s"), r.figure("rpm", motorCell, c.Turns*unit.Minute, "rev/min"),
			r.figure("follow", axisCell, follow, r.mm("/s")))
		for _, sp := range r.speeds {
			if sp.value > follow {
				doubts = append(doubts, report.DoubtNote(beyondCorner, "axis", r.name, "speed", sp.kind.name))
			}
		}
	}
	p.Add(
		report.Figures{All: []report.Figure{
			{ID: "swing", Label: swingLabel, Value: 1000 * float64(c.PerFullStep), Unit: "ms", Digits: 4},
			{ID: "fullrate", Label: fullrateLabel, Value: c.FullSteps, Unit: "steps/s", Digits: rateDigits},
		}}, t)
	p.Add(doubts...)
	rule, same := word.Template(ruleOfThumb), sameMotor
	if s.Resistance.Given {
		rule = ruleWithResistance
	}
	if a.swap() {
		same = sameMotorAfter
	}
	p.Add(report.Para{Line: report.Together(report.Say(rule), report.Text(same))})
	return p
}

// aboutPulses explains what is counted.
var aboutPulses = report.Part{ID: "pulses", Title: aboutTitle, Brief: aboutBrief, Guide: true, Blocks: []report.Block{
	report.PointsOf(onePulse, itsLimit, yourSpeeds),
}}
