package rate

import (
	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
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
	return r.figure(id, rateAt.Fill("speed", s.kind.name), float64(drive.PulseRate(s.value, at.steps)), "pulses/s")
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
		figures.Add(r.figure("accel", accelLabel, r.accel*r.was.steps, "pulses/s²"))
	}
	figures.Add(r.figure("microstep", microstepLabel, 1/r.was.steps, r.mm("")))
	if m := r.was.motor.Microsteps; m > 0 {
		figures.Add(r.figure("fullstep", fullstepLabel, float64(m)/r.was.steps, r.mm("")))
	} else {
		p.Add(report.Ask{Keys: []string{"micro"}, For: forSteps})
	}
	p.Blocks = append([]report.Block{report.Figures{All: figures}}, p.Blocks...)
	return p
}

// A solution is the axes that are known, on their way into words.
type solution struct {
	sheet *entries
	rows  []*row
	sums  []speed // of step rates, at one sort of speed
	needs []string
}

// sum adds up the axes that have a speed of the same sort.
func (a *solution) sum() {
	for _, at := range []speed{{"allwork", &working, 0}, {"allfast", &travel, 0}} {
		n := 0
		for _, r := range a.rows {
			for _, s := range r.speeds {
				if s.kind == at.kind {
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

// A demand is a step rate with who asks for it.
type demand struct {
	who    string
	at     *speedKind
	rate   float64
	beyond word.Template  // what is said of it beyond the limit
	stay   *report.Figure // what the limit allows
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
			add(demand{allAxes, s.kind, s.value, allOver, percent(limit / s.value)})
		}
	}
	for _, r := range a.rows {
		top := r.figure("", "", drive.TopSpeed(a.sheet.Limit.Value(), r.is.steps), r.mm("/s"))
		top.Digits = 4
		for _, s := range r.speeds {
			add(demand{r.name, s.kind, float64(drive.PulseRate(s.value, r.is.steps)), axisOver, top})
		}
	}
	return all
}

func (d demand) over(limit unit.PulseRate) report.Note {
	return report.DoubtNote(d.beyond, "axis", d.who, "speed", d.at.name, "rate", pulses(d.rate), "limit", pulses(float64(limit)), "stay", d.stay)
}

func pulses(rate float64) *report.Figure {
	return &report.Figure{Value: rate, Unit: "pulses/s", Digits: rateDigits}
}

func percent(share float64) *report.Figure {
	return &report.Figure{Value: 100 * share, Unit: "%", Digits: 3}
}

// headline is the label of a demand: of before and after the swap, within the limit and over it.
func (a *solution) headline(d demand, over bool) string {
	label := headline
	switch {
	case a.swap() && over:
		label = headlineAfterOver
	case a.swap():
		label = headlineAfter
	case over:
		label = headlineOver
	}
	return label.Fill("axis", d.who, "speed", d.at.name)
}

func (a *solution) answer() *report.Answer {
	all := a.demands()
	if len(all) == 0 {
		return nil
	}
	most, limit := all[0], a.sheet.Limit
	over := limit.Given && most.rate > limit.Number
	ans := &report.Answer{
		Figure: report.Figure{ID: "most", Label: a.headline(most, over), Value: most.rate, Unit: "pulses/s", Digits: rateDigits},
		Says:   report.Say(noLimit),
		Needs:  lists.Concat(a.needs, []string{"limit", "share"}),
	}
	switch {
	case over:
		ans.Says = report.Say(overLimit)
		ans.Notes = []report.Note{most.over(limit.Value())}
	case limit.Given:
		ans.Says = report.Say(inLimit, "share", percent(most.rate/limit.Number))
	}
	return ans
}

// glance is every axis at every speed, side by side.
func (a *solution) glance() *report.Part {
	t := report.Table{Caption: glanceCaption, Head: []string{axisColumn, atColumn, rateColumn}}
	for _, r := range a.rows {
		for _, s := range r.speeds {
			t.Row(r.name, report.Say(glanceSpeed, "speed", s.kind.label, "value", r.figure("", "", s.value, r.mm("/s"))), r.rate("", s, r.was))
		}
	}
	return &report.Part{ID: "all", Title: glanceTitle, Needs: a.needs, Blocks: []report.Block{t}}
}

func (a *solution) together() *report.Part {
	p := &report.Part{ID: "together", Title: togetherTitle, Needs: a.needs}
	var figures report.FigureList
	label := togetherAt
	if a.swap() {
		label = togetherAfter
	}
	for _, s := range a.sums {
		figures.Add(&report.Figure{ID: s.id, Label: label.Fill("speed", s.kind.name), Value: s.value, Unit: "pulses/s", Digits: rateDigits})
	}
	if len(figures) == 0 {
		return nil
	}
	p.Add(report.Figures{All: figures}, report.ParaOf(togetherSays))
	return p
}
