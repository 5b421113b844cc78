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
	p := &report.Part{ID: "limit", Title: "What the limit allows" + afterwards(a.swap()), Needs: lists.Concat(a.needs, []string{"limit", "share"})}
	limit := a.sheet.Limit
	if !limit.Given {
		p.Add(report.Ask{Keys: []string{"limit"}, For: "the highest speeds"})
		return p
	}
	var figures report.FigureList
	for _, r := range a.rows {
		id := "top"
		if a.swap() {
			id = "" // the table of before and after has both
		}
		figures.Add(r.figure(id, r.name+", highest speed alone", drive.TopSpeed(limit.Value(), r.is.steps), r.mm("/s")))
	}
	all := a.demands()
	if a.shared() && len(a.sums) > 0 {
		most := max(a.sums[0].value, a.sums[len(a.sums)-1].value)
		figures.Add(&report.Figure{ID: "slower", Label: "All together: part of these speeds that it allows", Value: 100 * limit.Number / most, Unit: "%", Digits: 4})
	}
	p.Add(report.Figures{All: figures})
	over := keepDemands(all, limit.Number)
	for _, d := range over {
		p.Add(d.over(limit.Value()))
	}
	if len(over) == 0 && len(all) > 0 {
		p.Add(report.ParaOf("All speeds that you gave are possible."))
	}
	return p
}

func keepDemands(all []demand, above float64) []demand {
	return lists.Keep(all, func(d demand) bool { return d.rate > above })
}

// after is what a swap changes.
func (a *solution) after() *report.Part {
	t := report.Table{Caption: "Before and after", Head: []string{"", "Before", "After"}}
	for _, r := range a.rows {
		if !r.swapped {
			continue
		}
		add := func(label string, before, after *report.Figure) {
			t.Row(r.name+", "+label, before, after)
		}
		for _, s := range r.speeds {
			add("pulses per second at "+s.word, r.rate("", s, r.was), r.rate("new-"+s.id, s, r.is))
		}
		if limit := a.sheet.Limit; limit.Given {
			add("highest speed", r.figure("top", "Highest speed", drive.TopSpeed(limit.Value(), r.was.steps), r.mm("/s")),
				r.figure("new-top", "Highest speed", drive.TopSpeed(limit.Value(), r.is.steps), r.mm("/s")))
		}
		add("smallest move", r.figure("", "Microstep", 1/r.was.steps, r.mm("")), r.figure("new-microstep", "Microstep", 1/r.is.steps, r.mm("")))
	}
	if len(t.Rows) == 0 {
		return nil
	}
	return &report.Part{ID: "after", Title: "Before and after the swap", Needs: lists.Concat(a.needs, []string{"limit"}), Blocks: []report.Block{t}}
}

// torque is what is behind one microstep.
func (a *solution) torque() *report.Part {
	p := &report.Part{ID: "torque", Title: "What microsteps do to torque", Folded: true, Needs: lists.Concat(a.needs, []string{"hold"})}
	var figures report.FigureList
	add := func(r *row, prefix, when string, m unit.Count) {
		if m == 0 {
			return
		}
		share := drive.IncrementalTorque(m)
		f := r.figure(prefix+"torque", r.name+", "+word.Plural(int(m), "microstep", "microsteps")+when, 100*share, "%")
		f.Digits = 3
		figures.Add(f)
		if hold := a.sheet.Hold; hold.Given {
			f := r.figure(prefix+"holds", r.name+", that is", share*hold.Number, "N·m")
			f.Digits = 3
			figures.Add(f)
		}
	}
	for _, r := range a.rows {
		add(r, "", "", r.was.motor.Microsteps)
		if r.swapped {
			add(r, "new-", " after the swap", r.is.motor.Microsteps)
		}
	}
	p.Add(
		report.ParaOf("Torque behind one microstep, of the holding torque; a full step has all of it."), report.Figures{All: figures},
		report.ParaOf("That is less torque for one small step, not holding torque lost: the axis gives way by more microsteps until the torque is there. So finer microsteps make motion smoother; they do not make the position that much finer."),
	)
	if len(figures) == 0 {
		return nil
	}
	return p
}

// corner is where a motor's current can no longer follow.
func (a *solution) corner() *report.Part {
	p := &report.Part{ID: "corner", Title: "When the motor cannot follow: a rule of thumb", Folded: true,
		Needs: lists.Concat(a.needs, []string{"supply", "inductance", "current"})}
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
		p.Add(report.Ask{Keys: missing, For: "the ideal corner speed"})
		return p
	}
	t := report.Table{Caption: "The ideal corner speed", Head: []string{"Axis", "Motor", "", "Axis moves"}}
	var doubts []report.Block
	var c drive.Corner
	for _, r := range turning {
		c = drive.CornerOf(s.Supply.Value(), s.Inductance.Value(), s.Current.Value(), r.is.motor.FullSteps())
		follow := c.Turns * r.is.motor.Pulses() / r.is.steps
		t.Row(r.name, r.figure("corner", "Corner", c.Turns, "rev/s"), r.figure("rpm", "Corner", c.Turns*unit.Minute, "rev/min"),
			r.figure("follow", "Speed", follow, r.mm("/s")))
		for _, sp := range r.speeds {
			if sp.value > follow {
				doubts = append(doubts, report.DoubtNote(r.name+" at "+sp.word+" is faster than that: expect much less torque there."))
			}
		}
	}
	p.Add(
		report.Figures{All: []report.Figure{
			{ID: "swing", Label: "The current swings over in", Value: 1000 * float64(c.PerFullStep), Unit: "ms", Digits: 4},
			{ID: "fullrate", Label: "Full steps per second at which it just does", Value: c.FullSteps, Unit: "steps/s", Digits: rateDigits},
		}}, t)
	p.Add(doubts...)
	p.Add(report.ParaOf("A rule of thumb: an ideal winding whose current must swing from one peak to the other within a full step. The winding's resistance, " +
		"the voltage that the turning motor makes itself (back-EMF) and the load are left out, so torque begins to fall before this speed. " +
		"It takes the same motor, supply and current on every axis" + afterwards(a.swap()) + "."))
	return p
}

// aboutPulses explains what is counted.
var aboutPulses = report.Part{ID: "pulses", Title: "What is counted here", Guide: true, Blocks: []report.Block{
	report.PointsOf(
		"The controller sends one pulse for each microstep: pulses per second are speed times steps per mm.",
		"How many it can send is in its documents, for one axis or for all together. Above that it skips, or moves slower than it was told.",
		"Speeds are those that you use: from the program that prepares the job, or from your own settings. Here a number alone is in mm per second; on the page that measures it is in mm per minute.",
	),
}}
