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

// notToBeHad says that nothing there is room for is good enough, and what would
// be.
func (a *solution) notToBeHad() *report.Part {
	p := &report.Part{ID: "cannot", Title: "Not to be had like this", Needs: a.keys}
	most := a.most()
	if most < longStep {
		p.Add(report.DoubtNote("There is no room for a test: the instrument does not reach to the mark. Take one that reaches farther, or set the mark nearer."))
		return p
	}
	d := a.design
	d.Repeats = mostRepeats(d)
	best := solution{entries: a.entries, test: a.testOf(most), design: d}
	best.expected, _ = best.test.Expect(d)
	p.Add(report.DoubtNote("Even ", millimetres("", "", most), " and "+strconv.Itoa(d.Runs())+" runs leave the error uncertain by ", share("", best.expected.Expanded()), "; you want ", share("", a.wanted()), "."),
		best.lengthChart("the best there is room for"), report.Points{Items: a.remedies()})
	return p
}

// remedies are what would make the test good enough.
func (a *solution) remedies() []report.Line {
	var items report.Sentences
	if other, with, ok := a.finer(); ok {
		items.Say(word.Capital(axis.ToolName(with))+" would do: "+other.runsText()+" of ", millimetres("", "", other.test.Commanded), ".")
	}
	return append(items, report.Say("A finer mark, measured for each run and read from the same edge, lowers the scatter."), report.Say("A longer feed or travel makes every error count less."), report.Say("Or be content with less: what matters is whether the error is within your tolerance."))
}

// finer is the plan with the coarsest of the usual instruments that is good
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
	return &report.Part{ID: "improve", Title: "What would make it good enough", Needs: a.keys, Blocks: []report.Block{report.Points{Items: a.remedies()}}}
}

func millimetres(id, label string, v float64) *report.Figure {
	return &report.Figure{ID: id, Label: label, Value: v, Unit: "mm", Digits: 6}
}

// share is a relative uncertainty as a figure.
func share(id string, u float64) *report.Figure {
	return &report.Figure{ID: id, Label: "Uncertainty of the error to expect, ±", Value: 100 * u, Unit: "%", Digits: 2, Keep: true}
}

// runsText is how many runs there are, in words.
func (a *solution) runsText() string {
	n := strconv.Itoa(a.design.Repeats)
	switch a.Method() {
	case trial.SeveralSpeeds:
		return n + " at each of " + strconv.Itoa(len(a.design.Places)) + " speeds"
	case trial.SeveralLengths:
		return n + " of each of " + strconv.Itoa(len(a.design.Places)) + " lengths"
	case trial.BothSides:
		return n + " to each of " + strconv.Itoa(len(targetShares)) + " targets from either side"
	}
	return n + " runs"
}

func (a *solution) answer() *report.Answer {
	f := millimetres("length", word.Capital(a.runsText())+" of", a.test.Commanded)
	says := report.Say("At ", a.perMinute("", a.atSpeeds()[0]))
	switch a.Method() {
	case trial.SeveralSpeeds:
		says = report.Say(strconv.Itoa(a.design.Runs()) + " runs in all")
	case trial.SeveralLengths:
		f.Label = word.Capital(a.runsText()) + ", the longest of"
	case trial.BothSides:
		f.Label = "Five targets over"
	}
	if mark := a.test.Mark; mark > 0 {
		says = append(says, report.Say(", the mark at ", millimetres("", "", mark))...)
	}
	if a.Method() == trial.BothSides {
		return &report.Answer{Figure: *f, Needs: a.keys, Says: append(says, report.Say(": what is lost on reversal is then known to ± ", a.lost(""), ".")...)}
	}
	answer := &report.Answer{Figure: *f, Needs: a.keys, Says: append(says, report.Say(": the error is then known to ± ", share("", a.expected.Expanded()), ".")...)}
	if !a.enough {
		answer.Notes = []report.Note{report.DoubtNote("That is not as good as you want it, ± ", share("", a.wanted()), ".")}
	}
	return answer
}

func (a *solution) lost(id string) *report.Figure {
	return &report.Figure{ID: id, Label: "Uncertainty of what is lost on reversal, ±", Value: a.expected.Expanded(), Unit: "mm", Digits: 2, Keep: true}
}

func (a *solution) perMinute(id string, v unit.Speed) *report.Figure {
	return &report.Figure{ID: id, Label: "The same as the F word of a move", Value: float64(v) * unit.Minute, Unit: "mm/min", Digits: 6}
}

// meltRate is what a feed speed asks of the hot end, mm³/s.
func (a *solution) meltRate(v unit.Speed) float64 {
	d := a.Filament.Number
	return math.Pi / 4 * d * d * float64(v)
}

func (a *solution) figures() *report.Part {
	p := &report.Part{ID: "plan", Title: "The test in figures", Needs: lists.Concat(a.keys, []string{"filament", "melt", "each", "single"})}
	all := report.FigureList{{ID: "runs", Label: "Runs in all", Value: float64(a.allRuns()), Digits: 3}}
	if a.Method() == trial.BothSides {
		all.Add(a.lost("lost"))
	} else {
		all.Add(share("expanded", a.expected.Expanded()))
	}
	if a.test.Mark > 0 {
		all.Add(millimetres("mark", "Mark at", a.test.Mark))
	}
	at := a.atSpeeds()
	if len(at) == 1 {
		all.Add(&report.Figure{ID: "speed", Label: "Speed", Value: float64(at[0]), Unit: "mm/s", Digits: 4}, a.perMinute("word", at[0]))
		if a.Filament.Given {
			all.Add(&report.Figure{ID: "melt", Label: "The hot end must melt", Value: a.meltRate(at[0]), Unit: "mm³/s", Digits: 3})
		}
	}
	m := a.program()
	if a.isFeed() {
		all.Add(millimetres("filament", "Filament used", m.Path))
	}
	minutes := (m.Seconds + a.reading()*float64(a.allRuns())) / unit.Minute
	all.Add(&report.Figure{ID: "time", Label: "Time, with reading and marking", Value: minutes, Unit: "min", Digits: 2})
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
	doubt := func(parts ...any) { all = append(all, report.DoubtNote(parts...)) }
	with, _ := a.tool.Instrument()
	if longest := max(a.test.Mark, a.test.Commanded); with.Reach > 0 && longest > with.Reach {
		doubt(word.Capital(axis.ToolName(with))+" reaches ", millimetres("", "", with.Reach), " as a rule, and you would have to read ", millimetres("", "", longest), ".")
	}
	if a.test.Mark > 0 && float64(a.test.Mark-a.test.Commanded) < a.test.Commanded/10 {
		doubt("The mark is less than a tenth beyond the length: if the drive feeds too much, it runs in.")
	}
	if a.isFeed() && a.Method() == trial.OneLength {
		if a.atSpeeds()[0] > a.TooFast() {
			doubt("That is fast for a test: slip may be measured along. Is it mm/min?")
		}
	}
	if !a.isFeed() || a.Path.Word != "hot" {
		return all
	}
	if !a.Filament.Given {
		return append(all, report.Ask{Keys: []string{"filament"}, For: "what the hot end must melt"})
	}
	for _, v := range a.atSpeeds() {
		if rate := a.meltRate(v); a.Melt.Given && rate > a.Melt.Number {
			most := a.perMinute("", v*unit.Speed(a.Melt.Number/rate))
			most.Digits = 3
			doubt("At ", a.perMinute("", v), " the hot end must melt ", &report.Figure{Value: rate, Unit: "mm³/s", Digits: 3}, ", more than the "+a.Melt.Text()+" that it can: the drive would slip. Feed no faster than ", most, ".")
			break
		}
	}
	return all
}

// tradeRuns are the numbers of runs that are set against lengths.
var tradeRuns = []int{3, 4, 5, 6, 8, 10, 15, 20}

// trade sets length against runs: what each brings, and for the same uncertainty.
func (a *solution) trade() *report.Part {
	p := &report.Part{ID: "trade", Title: "Longer, or more often", Needs: lists.Concat(a.keys, []string{"each"})}
	if a.Method() == trial.BothSides {
		return nil
	}
	p.Add(a.lengthChart("this plan"))
	if a.Method() != trial.OneLength {
		return p
	}
	t := report.Table{Caption: "Tests that are equally good", Head: []string{"Runs", "Length, mm", "All moves, mm"}}
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
		p.Add(report.ParaOf("Each of these tests gives ± ", share("", a.wanted()), ". Few long runs or many short ones: take what suits you, and write it under “What you want to set yourself”."), t)
	}
	return p
}

// speedTable shows the speeds of a slip test, and what it can tell.
func (a *solution) speedTable() *report.Part {
	if a.Method() != trial.SeveralSpeeds {
		return nil
	}
	p := &report.Part{ID: "speeds", Title: "What the speeds can show", Needs: lists.Concat(a.keys, []string{"filament", "melt"})}
	t := report.Table{Caption: "Speeds", Head: []string{"Speed, mm/min", "mm/s"}}
	if a.Filament.Given {
		t.Head = append(t.Head, "To melt, mm³/s")
	}
	slow, fast := a.atSpeeds()[0], a.atSpeeds()[0]
	for i, v := range a.atSpeeds() {
		n := "-" + strconv.Itoa(i+1)
		row := []report.Line{report.Say(&report.Figure{ID: "word" + n, Value: float64(v) * unit.Minute, Digits: 6}), report.Say(&report.Figure{ID: "speed" + n, Value: float64(v), Digits: 4})}
		if a.Filament.Given {
			row = append(row, report.Say(&report.Figure{ID: "melt" + n, Value: a.meltRate(v), Digits: 3}))
		}
		t.Rows = append(t.Rows, row)
		slow, fast = min(slow, v), max(fast, v)
	}
	p.Add(t)
	slope := a.design
	slope.Zero = false
	// What the instrument does is the same at each speed.
	if e, err := (measure.Test{Commanded: a.test.Commanded, Scatter: a.test.Scatter}).Expect(slope); err == nil {
		p.Add(report.Figures{All: []report.Figure{{ID: "slip", Label: "Smallest slip between the slowest and the fastest run that would show", Value: 100 * e.Expanded() * float64(fast-slow), Unit: "%", Digits: 2}}})
	}
	return p
}

// targetTable lists the positions of a test from both sides.
func (a *solution) targetTable() *report.Part {
	if a.Method() != trial.BothSides {
		return nil
	}
	t := report.Table{Caption: "Targets", Head: []string{"Target", "Position, mm"}}
	for i, x := range a.targets() {
		t.Row(strconv.Itoa(i+1), &report.Figure{ID: "target-" + strconv.Itoa(i+1), Value: x, Digits: 6})
	}
	return &report.Part{ID: "targets", Title: "Where to go", Needs: a.keys, Blocks: []report.Block{
		report.ParaOf("Going up, each target is approached from below; coming down, from above. The ends of the range are kept for turning round."), t}}
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
