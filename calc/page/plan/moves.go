package plan

import (
	"strconv"

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
	mark := "make a mark at " + trial.Decimal(a.test.Mark) + " mm from the drive's inlet"
	p.Say("Feed test: " + a.runsText() + ", each of " + trial.Decimal(length) + " mm")
	p.Say("Stay with the machine, a hand near the stop; fingers away from rollers and gears")
	if a.Path.Word == "hot" {
		p.Say("Before: the hot end at printing temperature and steady; it burns, and melted plastic gives off fumes")
	} else {
		p.Say("Before: open path, no filament in a cold hot end; put the guard against cold feeding back afterwards")
	}
	p.Start()
	p.Go(slack, at[0], "takes up the slack")
	p.Wait(mark)
	a.rounds(func(place, n int) {
		p.Go(length, at[place], "run "+strconv.Itoa(n)+" of "+strconv.Itoa(a.design.Runs()))
		then := ", then " + mark
		if n == a.design.Runs() {
			then = ""
		}
		p.Wait("read what remains up to the mark and write it down" + then)
	})
	p.End()
	return p
}

// heading begins the moves of a travel axis, which stands at the lower end.
func (a *solution) heading(what string) *trial.Program {
	letter := word.Capital(a.Letter.Word)
	p := a.MovesEntry.Program(letter, false)
	p.Say(what)
	p.Say("Before: stand at " + letter + " = " + trial.Decimal(a.From.Number) + "; all moves stay between there and " + letter + " = " + trial.Decimal(a.To.Number))
	p.Say("Stay with the machine, a hand near the stop; fingers away from belts, screws and gears")
	if a.Letter.Word == "z" {
		p.Say("Nothing may stand in the way: keep well away from the bed")
	}
	p.Start()
	return p
}

func (a *solution) travelMoves() *trial.Program {
	p := a.heading("Travel test: " + a.runsText() + " up to " + trial.Decimal(a.test.Commanded) + " mm")
	v := a.atSpeeds()[0]
	a.rounds(func(place, n int) {
		length := a.test.Commanded
		if len(a.design.Places) > 0 {
			length = trial.Nearest(length * a.design.Places[place])
		}
		p.Go(slack, v, "takes up the slack in the direction of the run")
		p.Wait("read where it stands")
		p.Go(length, v, "run "+strconv.Itoa(n)+" of "+strconv.Itoa(a.design.Runs()))
		p.Wait("read where it stands, and write down how far it moved")
		p.Go(-length-slack, v, "back beyond the start")
	})
	p.End()
	return p
}

func (a *solution) bothWays() *trial.Program {
	p := a.heading("Positions from both sides: " + a.runsText())
	v, targets := a.atSpeeds()[0], a.targets()
	here := a.From.Number
	to := func(x float64, why string) {
		p.Go(trial.Nearest(x-here), v, why)
		here = x
	}
	for n := range a.design.Repeats {
		for i, x := range targets {
			to(x, "up to target "+strconv.Itoa(i+1)+", round "+strconv.Itoa(n+1))
			p.Wait("read the position reached")
		}
		to(a.To.Number, "turn round")
		for i := len(targets) - 1; i >= 0; i-- {
			to(targets[i], "down to target "+strconv.Itoa(i+1)+", round "+strconv.Itoa(n+1))
			p.Wait("read the position reached")
		}
		to(a.From.Number, "turn round")
	}
	p.End()
	return p
}

func (a *solution) moves() *report.Part {
	name := "travel-test.gcode"
	if a.isFeed() {
		name = "feed-test.gcode"
	}
	return &report.Part{ID: "moves", Title: "The moves, line by line", Needs: lists.Concat(a.keys, a.MovesEntry.Keys()), Blocks: []report.Block{
		report.CautionOf("maker"),
		report.ParaOf("Relative moves, lengths in mm, speeds in mm/min. Read them before you send them; send them one by one if you have no way to wait in between. Your own wording goes into “Your own lines for the moves”."),
		report.Code{ID: "moves", Label: "Moves", Text: a.program().String(), File: name, Of: []string{"begin", "move", "stop", "finish"}},
	}}
}
