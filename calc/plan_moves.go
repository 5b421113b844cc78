package calc

import (
	"strconv"

	"striderule/calc/lists"
)

// program are the moves, ready to send.
func (a *planned) program() *program {
	if a.isFeed() {
		return a.feedMoves()
	}
	if a.method() == bothSides {
		return a.bothWays()
	}
	return a.travelMoves()
}

// rounds visits all runs, place after place and round after round, so that what
// changes with time does not look like what changes with place.
func (a *planned) rounds(visit func(place, n int)) {
	places := max(1, len(a.design.Places))
	for n := range a.design.Runs() {
		visit(n%places, n+1)
	}
}

func (a *planned) feedMoves() *program {
	p := a.movesEntry.program("E", true)
	length, at := a.test.Commanded, a.atSpeeds()
	mark := "make a mark at " + decimal(a.test.Mark) + " mm from the drive's inlet"
	p.say("Feed test: " + a.runsText() + ", each of " + decimal(length) + " mm")
	p.say("Stay with the machine, a hand near the stop; fingers away from rollers and gears")
	if a.Path.Word == "hot" {
		p.say("Before: the hot end at printing temperature and steady; it burns, and melted plastic gives off fumes")
	} else {
		p.say("Before: open path, no filament in a cold hot end; put the guard against cold feeding back afterwards")
	}
	p.begin()
	p.move(slack, at[0], "takes up the slack")
	p.wait(mark)
	a.rounds(func(place, n int) {
		p.move(length, at[place], "run "+strconv.Itoa(n)+" of "+strconv.Itoa(a.design.Runs()))
		then := ", then " + mark
		if n == a.design.Runs() {
			then = ""
		}
		p.wait("read what remains up to the mark and write it down" + then)
	})
	p.finish()
	return p
}

// heading begins the moves of a travel axis, which stands at the lower end.
func (a *planned) heading(what string) *program {
	letter := capital(a.Letter.Word)
	p := a.movesEntry.program(letter, false)
	p.say(what)
	p.say("Before: stand at " + letter + " = " + decimal(a.From.Number) + "; all moves stay between there and " + letter + " = " + decimal(a.To.Number))
	p.say("Stay with the machine, a hand near the stop; fingers away from belts, screws and gears")
	if a.Letter.Word == "z" {
		p.say("Nothing may stand in the way: keep well away from the bed")
	}
	p.begin()
	return p
}

func (a *planned) travelMoves() *program {
	p := a.heading("Travel test: " + a.runsText() + " up to " + decimal(a.test.Commanded) + " mm")
	v := a.atSpeeds()[0]
	a.rounds(func(place, n int) {
		length := a.test.Commanded
		if len(a.design.Places) > 0 {
			length = nearest(length * a.design.Places[place])
		}
		p.move(slack, v, "takes up the slack in the direction of the run")
		p.wait("read where it stands")
		p.move(length, v, "run "+strconv.Itoa(n)+" of "+strconv.Itoa(a.design.Runs()))
		p.wait("read where it stands, and write down how far it moved")
		p.move(-length-slack, v, "back beyond the start")
	})
	p.finish()
	return p
}

func (a *planned) bothWays() *program {
	p := a.heading("Positions from both sides: " + a.runsText())
	v, targets := a.atSpeeds()[0], a.targets()
	here := a.From.Number
	to := func(x float64, why string) {
		p.move(nearest(x-here), v, why)
		here = x
	}
	for n := range a.design.Repeats {
		for i, x := range targets {
			to(x, "up to target "+strconv.Itoa(i+1)+", round "+strconv.Itoa(n+1))
			p.wait("read the position reached")
		}
		to(a.To.Number, "turn round")
		for i := len(targets) - 1; i >= 0; i-- {
			to(targets[i], "down to target "+strconv.Itoa(i+1)+", round "+strconv.Itoa(n+1))
			p.wait("read the position reached")
		}
		to(a.From.Number, "turn round")
	}
	p.finish()
	return p
}

func (a *planned) moves() *Part {
	name := "travel-test.gcode"
	if a.isFeed() {
		name = "feed-test.gcode"
	}
	return &Part{ID: "moves", Title: "The moves, line by line", Needs: lists.Concat(a.keys, a.movesEntry.keys()), Blocks: []Block{
		caution("maker"),
		para("Relative moves, lengths in mm, speeds in mm/min. Read them before you send them; send them one by one if you have no way to wait in between. Your own wording goes into “Your own lines for the moves”."),
		Code{ID: "moves", Label: "Moves", Text: a.program().String(), File: name, Of: []string{"begin", "move", "stop", "finish"}},
	}}
}
