package plan

import (
	"math"
	"strconv"

	"striderule/calc/lists"
	"striderule/calc/measure"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// cannot says that nothing there is room for is good enough, and what would
// be.
func (a *solution) cannot() *report.Part {
	p := &report.Part{ID: "cannot", Title: cannotTitle, Needs: a.keys}
	most := a.most()
	if most < longStep {
		p.Add(report.DoubtNote(noRoom))
		return p
	}
	d := a.design
	d.Repeats = mostRepeats(d)
	best := solution{entries: a.entries, test: a.testOf(most), design: d}
	best.expected, _ = best.test.Expect(d)
	p.Add(report.DoubtNote(bestIs, "n", strconv.Itoa(d.Runs()), "length", millimetres("", "", most), "best", share("", best.expected.HalfWidth()), "wanted", share("", a.wanted())),
		best.lengthChart(bestThereIs), report.Points{Items: a.remedies()})
	return p
}

// remedies are what would make the test good enough.
func (a *solution) remedies() []report.Line {
	var items report.Sentences
	if other, with, ok := a.finer(); ok {
		items.Say(other.wording().finer, "tool", axis.ToolName(with), "n", other.repeats(), "places", other.places(), "length", millimetres("", "", other.test.Commanded))
	}
	careful, longer := finerReading, longerMove
	if a.isFeed() {
		careful, longer = finerMark, longerFeed
	}
	return append(items, report.Text(careful), report.Text(longer), report.Say(accept))
}

// finer is the plan with the coarsest of the usual measuring tools that is good
// enough. Limits, if they are stated, are taken as usual for it.
func (a *solution) finer() (solution, measure.Instrument, bool) {
	now, _ := a.tool.Instrument()
	for _, with := range measure.Instruments {
		if with.Resolution >= now.Resolution {
			continue
		}
		s := *a.entries
		s.tool.Kind.Word = with.ID
		if now.Accuracy > 0 {
			s.tool.Limits.Number = min(with.Usual, now.Accuracy)
		}
		if other := (solution{entries: &s}); other.solve() && other.enough {
			return other, with, true
		}
	}
	return solution{}, now, false
}

// improve says what to do about a test that was set and is not good enough.
func (a *solution) improve() *report.Part {
	if a.enough {
		return nil
	}
	return &report.Part{ID: "improve", Title: improveTitle, Needs: a.keys, Blocks: []report.Block{report.Points{Items: a.remedies()}}}
}

func millimetres(id, label string, v float64) *report.Figure {
	return &report.Figure{ID: id, Label: label, Value: v, Unit: "mm", Digits: 6}
}

// share is a relative uncertainty as a figure.
func share(id string, u float64) *report.Figure {
	return &report.Figure{ID: id, Label: errorLabel, Value: 100 * u, Unit: "%", Digits: 2, Keep: true}
}

// wording is how the runs of this test are said.
func (a *solution) wording() *wording {
	switch {
	case a.Method() == trial.SeveralSpeeds:
		return &speedsWording
	case a.Method() == trial.SeveralLengths:
		return &lengthsWording
	case a.Method() == trial.BothSides:
		return &sidesWording
	case a.isFeed():
		return &feedWording
	}
	return &moveWording
}

// runs fills a sentence about the runs, and whatever else it says.
func (a *solution) runs(t word.Template, more ...string) string {
	return t.Fill(append(more, "n", a.repeats(), "places", a.places(), "all", strconv.Itoa(a.design.Runs()))...)
}

// repeats is how often the same is measured.
func (a *solution) repeats() string { return strconv.Itoa(a.design.Repeats) }

// places is at how many speeds, lengths or targets.
func (a *solution) places() string {
	if a.Method() == trial.BothSides {
		return strconv.Itoa(len(targetShares))
	}
	return strconv.Itoa(len(a.design.Places))
}

func (a *solution) answer() *report.Answer {
	wording, u := a.wording(), share("", a.expected.HalfWidth())
	if a.Method() == trial.BothSides {
		u = a.lost("")
	}
	answer := &report.Answer{
		Figure: *millimetres("length", a.runs(wording.answer), a.test.Commanded),
		Says:   report.Say(wording.says, "speed", a.perMinute("", a.atSpeeds()[0]), "mark", millimetres("", "", a.test.Mark), "u", u),
		Needs:  a.keys,
	}
	if !a.enough {
		answer.Notes = []report.Note{report.DoubtNote(notAsWanted, "wanted", share("", a.wanted()))}
	}
	return answer
}

func (a *solution) lost(id string) *report.Figure {
	return &report.Figure{ID: id, Label: lostLabel, Value: a.expected.HalfWidth(), Unit: "mm", Digits: 2, Keep: true}
}

func (a *solution) perMinute(id string, v unit.Speed) *report.Figure {
	return &report.Figure{ID: id, Label: fLabel, Value: float64(v) * unit.Minute, Unit: "mm/min", Digits: 6}
}

// meltRate is what a feed speed asks of the hot end, mm³/s.
func (a *solution) meltRate(v unit.Speed) float64 {
	d := a.Filament.Number
	return math.Pi / 4 * d * d * float64(v)
}

func (a *solution) figures() *report.Part {
	p := &report.Part{ID: "plan", Title: figuresTitle, Needs: lists.Concat(a.keys, []string{"filament", "melt", "each", "single"})}
	all := report.FigureList{{ID: "runs", Label: runsLabel, Value: float64(a.allRuns()), Digits: 3}}
	if a.Method() == trial.BothSides {
		all.Add(a.lost("lost"))
	} else {
		all.Add(share("expanded", a.expected.HalfWidth()))
	}
	if a.test.Mark > 0 {
		all.Add(millimetres("mark", markLabel, a.test.Mark))
	}
	at := a.atSpeeds()
	if len(at) == 1 {
		all.Add(&report.Figure{ID: "speed", Label: speedLabel, Value: float64(at[0]), Unit: "mm/s", Digits: 4}, a.perMinute("word", at[0]))
		if a.Filament.Given {
			all.Add(&report.Figure{ID: "melt", Label: meltLabel, Value: a.meltRate(at[0]), Unit: "mm³/s", Digits: 3})
		}
	}
	m := a.program()
	if a.isFeed() {
		all.Add(millimetres("filament", usedLabel, m.Path))
	}
	minutes := (m.Seconds + a.reading()*float64(a.allRuns())) / unit.Minute
	all.Add(&report.Figure{ID: "time", Label: timeLabel, Value: minutes, Unit: "min", Digits: 2})
	p.Add(report.Figures{All: all})
	p.Add(a.doubts()...)
	return p
}

// allRuns is how often something is read.
func (a *solution) allRuns() int {
	if a.Method() == trial.BothSides {
		return 2 * len(targetShares) * a.design.Repeats
	}
	return a.design.Runs()
}

// reading is how long it takes to read a run and to mark anew, in s.
func (a *solution) reading() float64 {
	if a.Each.Given {
		return a.Each.Number
	}
	return unit.Minute
}

func (a *solution) doubts() []report.Block {
	var all []report.Block
	with, _ := a.tool.Instrument()
	if longest := max(a.test.Mark, a.test.Commanded); with.Reach > 0 && longest > with.Reach {
		all = append(all, report.DoubtNote(beyondReach, "reach", millimetres("", "", with.Reach), "longest", millimetres("", "", longest)))
	}
	if a.test.Mark > 0 && float64(a.test.Mark-a.test.Commanded) < a.test.Commanded/10 {
		all = append(all, report.DoubtNote(nearMark))
	}
	if a.isFeed() && a.Method() == trial.OneLength {
		if a.atSpeeds()[0] > a.TooFast() {
			all = append(all, report.DoubtNote(fastTest))
		}
	}
	if note, ok := a.tool.Assumes(); ok {
		all = append(all, note)
	}
	if !a.isFeed() || a.Path.Word != "hot" {
		return all
	}
	if !a.Filament.Given {
		return append(all, report.Ask{Keys: []string{"filament"}, For: forMelt})
	}
	for _, v := range a.atSpeeds() {
		if rate := a.meltRate(v); a.Melt.Given && rate > a.Melt.Number {
			most := a.perMinute("", v*unit.Speed(a.Melt.Number/rate))
			most.Digits = 3
			all = append(all, report.DoubtNote(meltsLess, "speed", a.perMinute("", v), "rate", &report.Figure{Value: rate, Unit: "mm³/s", Digits: 3}, "limit", a.Melt.Text(), "most", most))
			break
		}
	}
	return all
}

// tradeRuns are the numbers of runs that are set against lengths.
var tradeRuns = []int{3, 4, 5, 6, 8, 10, 15, 20}

// trade sets length against runs: what each brings, and for the same uncertainty.
func (a *solution) trade() *report.Part {
	p := &report.Part{ID: "trade", Title: tradeTitle, Needs: lists.Concat(a.keys, []string{"each"})}
	if a.Method() == trial.BothSides {
		return nil
	}
	p.Add(a.lengthChart(thisPlan))
	if a.Method() != trial.OneLength {
		return p
	}
	t := report.Table{Caption: tableCaption, Head: []string{runsColumn, lengthColumn, totalColumn}}
	last := 0.0
	for _, n := range tradeRuns {
		d := a.design
		d.Repeats = n
		test, ok := measure.LengthFor(a.wanted(), d, longStep, max(a.most(), a.test.Commanded), a.testOf)
		if !ok || test.Commanded == last {
			continue // more runs that are no shorter are only more work
		}
		last = test.Commanded
		t.Row(strconv.Itoa(d.Runs()), &report.Figure{ID: "needs-" + strconv.Itoa(n), Value: test.Commanded, Digits: 6},
			&report.Figure{Value: float64(d.Runs()) * test.Commanded, Digits: 6})
	}
	if len(t.Rows) > 0 {
		p.Add(report.ParaOf(equal, "wanted", share("", a.wanted()), "section", fixedSection), t)
	}
	return p
}

// speedTable shows the speeds of a slip test, and what it can tell.
func (a *solution) speedTable() *report.Part {
	if a.Method() != trial.SeveralSpeeds {
		return nil
	}
	p := &report.Part{ID: "speeds", Title: speedsTitle, Needs: lists.Concat(a.keys, []string{"filament", "melt"})}
	t := report.Table{Caption: speedsCaption, Head: []string{feedColumn, secondsColumn}}
	if a.Filament.Given {
		t.Head = append(t.Head, meltColumn)
	}
	slow, fast := a.atSpeeds()[0], a.atSpeeds()[0]
	for i, v := range a.atSpeeds() {
		n := "-" + strconv.Itoa(i+1)
		row := []report.Line{report.Show(&report.Figure{ID: "word" + n, Value: float64(v) * unit.Minute, Digits: 6}), report.Show(&report.Figure{ID: "speed" + n, Value: float64(v), Digits: 4})}
		if a.Filament.Given {
			row = append(row, report.Show(&report.Figure{ID: "melt" + n, Value: a.meltRate(v), Digits: 3}))
		}
		t.Rows = append(t.Rows, row)
		slow, fast = min(slow, v), max(fast, v)
	}
	p.Add(t)
	slope := a.design
	slope.Zero = false
	// What the measuring tool does is the same at each speed.
	if e, err := (measure.Test{Commanded: a.test.Commanded, Scatter: a.test.Scatter}).Expect(slope); err == nil {
		p.Add(report.Figures{All: []report.Figure{{ID: "slip", Label: slipLabel, Value: 100 * e.HalfWidth() * float64(fast-slow), Unit: "%", Digits: 2}}})
	}
	return p
}

// targetTable lists the positions of a test from both sides.
func (a *solution) targetTable() *report.Part {
	if a.Method() != trial.BothSides {
		return nil
	}
	t := report.Table{Caption: targetsCaption, Head: []string{targetColumn, atColumn}}
	for i, x := range a.targets() {
		t.Row(strconv.Itoa(i+1), &report.Figure{ID: "target-" + strconv.Itoa(i+1), Value: x, Digits: 6})
	}
	return &report.Part{ID: "targets", Title: targetsTitle, Needs: a.keys, Blocks: []report.Block{
		report.ParaOf(targetsSay), t}}
}

// targets are positions inside the range, with room to turn round.
func (a *solution) targets() []float64 {
	from, span := a.From.Number+slack, a.test.Commanded
	var all []float64
	for _, share := range targetShares {
		all = append(all, trial.Nearest(from+share*span))
	}
	return all
}
