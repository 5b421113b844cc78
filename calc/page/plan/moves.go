package plan

import (
	"strconv"
	"strings"

	"striderule/calc/lists"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/word"
)

// program are the moves, ready to send.
func (a *solution) program() *trial.Program {
	if a.isFeed() {
		return a.feedMoves()
	}
	if a.Method() == trial.BothSides {
		return a.bothWays()
	}
	return a.travelMoves()
}

// rounds visits all runs, place after place and round after round, so that what
// changes with time does not look like what changes with place.
func (a *solution) rounds(visit func(place, n int)) {
	places := max(1, len(a.design.Places))
	for n := range a.design.Runs() {
		visit(n%places, n+1)
	}
}

func (a *solution) feedMoves() *trial.Program {
	p := a.MovesEntry.Program("E", true)
	length, at := a.test.Commanded, a.atSpeeds()
	mark := trial.Decimal(a.test.Mark)
	p.Say(a.runs(a.wording().title, "length", trial.Decimal(length)))
	p.Say(stayFeeding)
	if a.Path.Word == "hot" {
		p.Say(hotFirst)
	} else {
		p.Say(coldFirst)
	}
	p.Start()
	p.Go(slack, at[0], takeUpSlack)
	p.Wait(markRemark.Fill("mark", mark))
	a.rounds(func(place, n int) {
		p.Go(length, at[place], a.run(n))
		if n == a.design.Runs() {
			p.Wait(readRemark)
		} else {
			p.Wait(againRemark.Fill("mark", mark))
		}
	})
	p.End()
	return p
}

// run is the remark on one run.
func (a *solution) run(n int) string {
	return runRemark.Fill("n", strconv.Itoa(n), "all", strconv.Itoa(a.design.Runs()))
}

// letter is that of the axis, as the moves have it.
func (a *solution) letter() string { return strings.ToUpper(a.Letter.Word) }

// heading begins the moves of a linear axis, which stands at the lower end.
func (a *solution) heading() *trial.Program {
	p := a.MovesEntry.Program(a.letter(), false)
	p.Say(a.runs(a.wording().title, "axis", a.letter(), "length", trial.Decimal(a.test.Commanded)))
	p.Say(startAt.Fill("axis", a.letter(), "from", trial.Decimal(a.From.Number), "to", trial.Decimal(a.To.Number)))
	p.Say(stayMoving)
	if a.Letter.Word == "z" {
		p.Say(awayFromBed)
	}
	p.Start()
	return p
}

func (a *solution) travelMoves() *trial.Program {
	p := a.heading()
	v := a.atSpeeds()[0]
	a.rounds(func(place, n int) {
		length := a.test.Commanded
		if len(a.design.Places) > 0 {
			length = trial.Nearest(length * a.design.Places[place])
		}
		p.Go(slack, v, slackToRun)
		p.Wait(readPosition)
		p.Go(length, v, a.run(n))
		p.Wait(readMoved)
		p.Go(-length-slack, v, backRemark)
	})
	p.End()
	return p
}

func (a *solution) bothWays() *trial.Program {
	p := a.heading()
	v, targets := a.atSpeeds()[0], a.targets()
	here := a.From.Number
	to := func(x float64, why string) {
		p.Go(trial.Nearest(x-here), v, why)
		here = x
	}
	for n := range a.design.Repeats {
		reach := func(i int, why word.Template) {
			to(targets[i], why.Fill("target", strconv.Itoa(i+1), "n", strconv.Itoa(n+1)))
			p.Wait(readPosition)
		}
		for i := range targets {
			reach(i, plusRemark)
		}
		to(a.To.Number, turnRemark)
		for i := len(targets) - 1; i >= 0; i-- {
			reach(i, minusRemark)
		}
		to(a.From.Number, turnRemark)
	}
	p.End()
	return p
}

func (a *solution) moves() *report.Part {
	name := moveFile
	if a.isFeed() {
		name = feedFile
	}
	program := a.program()
	return &report.Part{ID: "moves", Title: movesTitle, Needs: lists.Concat(a.keys, a.MovesEntry.Keys()), Blocks: []report.Block{
		report.CautionOf("maker"),
		report.ParaOf(movesSay, "section", linesSection),
		report.Code{ID: "moves", Label: movesLabel, Text: program.String(), File: name, Of: program.Custom(), Axes: program.Axis()},
	}}
}
