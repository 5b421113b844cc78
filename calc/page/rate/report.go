package rate

import (
	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/report"
	"striderule/calc/unit"
)

func (r *row) figure(id, label string, v float64, u string) *report.Figure {
	if id != "" {
		id += "-" + r.n
	}
	return &report.Figure{ID: id, Label: label, Value: v, Unit: u, Digits: rateDigits}
}

const rateDigits = 6

// mm is the unit of the axis' travel, with what comes after it.
func (r *row) mm(per string) string {
	if r.rotary {
		return "°" + per
	}
	return "mm" + per
}

func (r *row) rate(id string, s speed, at state) *report.Figure {
	return r.figure(id, "Pulses per second at "+s.word, float64(drive.PulseRate(s.value, at.steps)), "pulses/s")
}

// part is what an axis takes and how finely it moves, as it is before a swap.
func (r *row) part() *report.Part {
	p := &report.Part{ID: "axis-" + r.n, Title: r.name, Needs: r.needs, Blocks: r.blocks}
	if r.was.steps == 0 {
		return p
	}
	var figures report.FigureList
	for _, s := range r.speeds {
		figures.Add(r.rate(s.id, s, r.was))
	}
	if r.accel > 0 {
		figures.Add(r.figure("accel", "Pulse rate gained in a second", r.accel*r.was.steps, "pulses/s²"))
	}
	figures.Add(r.figure("microstep", "Smallest move, a microstep", 1/r.was.steps, r.mm("")))
	if m := r.was.motor.Microsteps; m > 0 {
		figures.Add(r.figure("fullstep", "A full step", float64(m)/r.was.steps, r.mm("")))
	} else {
		p.Add(report.Ask{Keys: []string{"micro"}, For: "travel per full step and torque"})
	}
	p.Blocks = append([]report.Block{report.Figures{All: figures}}, p.Blocks...)
	return p
}

// A solution is the axes that are known, on their way into words.
type solution struct {
	sheet *entries
	rows  []*row
	sums  []speed // of pulses per second, at one sort of speed
	needs []string
}

// sum adds up the axes that have a speed of the same sort.
func (a *solution) sum() {
	for _, at := range []speed{{"allwork", "working speed", 0}, {"allfast", "travel speed", 0}} {
		n := 0
		for _, r := range a.rows {
			for _, s := range r.speeds {
				if s.word == at.word {
					at.value += float64(drive.PulseRate(s.value, r.is.steps))
					n++
				}
			}
		}
		if n > 1 {
			a.sums = append(a.sums, at)
		}
	}
}

// shared reports whether all axes together have the limit.
func (a *solution) shared() bool { return a.sheet.Share.Word == "all" }

func (a *solution) swap() bool { return a.sheet.Compare.Word == "swap" }

func afterwards(yes bool) string {
	if yes {
		return ", after the swap"
	}
	return ""
}

// A demand is a pulse rate with who asks for it.
type demand struct {
	who, at string
	rate    float64
	cure    string // besides fewer microsteps
}

// demands are all that the limit is held against, the greatest first.
func (a *solution) demands() []demand {
	var all []demand
	add := func(d demand) {
		all = append(all, d)
		for i := len(all) - 1; i > 0 && all[i-1].rate < d.rate; i-- {
			all[i-1], all[i] = d, all[i-1]
		}
	}
	limit := a.sheet.Limit.Number
	if a.shared() {
		for _, s := range a.sums {
			add(demand{"All axes together", s.word, s.value, "or " + unit.Trim(100*limit/s.value, 3) + " % of these speeds"})
		}
	}
	for _, r := range a.rows {
		top := r.figure("", "", drive.TopSpeed(a.sheet.Limit.Value(), r.is.steps), r.mm("/s"))
		top.Digits = 4
		for _, s := range r.speeds {
			add(demand{r.name, s.word, float64(drive.PulseRate(s.value, r.is.steps)), "or at most " + top.String()})
		}
	}
	return all
}

func (d demand) over(limit unit.PulseRate) report.Note {
	return report.DoubtNote(d.who + " at " + d.at + " needs " + unit.Trim(d.rate, rateDigits) + " pulses/s, more than the limit of " +
		unit.Trim(float64(limit), rateDigits) + ": not possible. Fewer microsteps would cure it, " + d.cure + ".")
}

func (a *solution) answer() *report.Answer {
	all := a.demands()
	if len(all) == 0 {
		return nil
	}
	most, limit := all[0], a.sheet.Limit
	ans := &report.Answer{
		Figure: report.Figure{ID: "most", Label: most.who + " at " + most.at + afterwards(a.swap()), Value: most.rate, Unit: "pulses/s", Digits: rateDigits},
		Says:   report.Say("The highest rate of all. Give the most pulses per second that your controller makes to see what speeds it allows."),
		Needs:  lists.Concat(a.needs, []string{"limit", "share"}),
	}
	switch {
	case limit.Given && most.rate > limit.Number:
		ans.Label += " (too fast)"
		ans.Says = report.Say("The highest rate of all. Your controller does not reach it.")
		ans.Notes = []report.Note{most.over(limit.Value())}
	case limit.Given:
		ans.Says = report.Say("The highest rate of all. It is " + unit.Trim(100*most.rate/limit.Number, 3) + " % of your controller's limit: possible.")
	}
	return ans
}

// glance is every axis at every speed, side by side.
func (a *solution) glance() *report.Part {
	t := report.Table{Caption: "All axes", Head: []string{"Axis", "At", "Pulses per second"}}
	for _, r := range a.rows {
		for _, s := range r.speeds {
			t.Row(r.name, report.Say(s.word+", ", r.figure("", "", s.value, r.mm("/s"))), r.rate("", s, r.was))
		}
	}
	return &report.Part{ID: "all", Title: "All axes at a glance", Needs: a.needs, Blocks: []report.Block{t}}
}

func (a *solution) together() *report.Part {
	p := &report.Part{ID: "together", Title: "All axes at once", Needs: a.needs}
	var figures report.FigureList
	for _, s := range a.sums {
		figures.Add(&report.Figure{ID: s.id, Label: "Together, each at its " + s.word + afterwards(a.swap()), Value: s.value, Unit: "pulses/s", Digits: rateDigits})
	}
	if len(figures) == 0 {
		return nil
	}
	p.Add(report.Figures{All: figures}, report.ParaOf("As if every axis of the table that has such a speed moved at that speed at the same moment: the most there can be. Leave axes out that never move together."))
	return p
}
