package calc

import (
	"striderule/calc/lists"
	"striderule/calc/unit"
)

// before, during and after are the check-list.
func (a *planned) before() *Part {
	p := &Part{ID: "before", Title: "Check-list: before", Needs: a.keys, Blocks: []Block{caution("maker"), caution("stay")}}
	if !a.isFeed() {
		p.add(caution("range"), points(
			"Nothing lies within the range of the axis, and it moves freely by hand.",
			"Belts and screws are as tight as in use.",
			"The rule, caliper or dial gauge stands along the axis and does not move.",
			"The carriage stands at the lower end of the range.",
		))
		return p
	}
	open := a.Path.Word == "open"
	if open {
		p.caution("cold", "guard")
	} else {
		p.caution("hot")
	}
	var items sentences
	for _, o := range readiness {
		if o.Word != "guard" || open {
			items.say(o.Label + ": " + o.Hint + ".")
		}
	}
	p.add(Points{items})
	return p
}

func (a *planned) during() *Part {
	p := &Part{ID: "during", Title: "Check-list: each run", Needs: a.keys, Blocks: []Block{caution("rollers")}}
	switch {
	case a.isFeed():
		p.add(Steps{[]Line{
			say("Mark the filament at ", millimetres("", "", a.test.Mark), " from the drive's inlet: a fine line, measured straight along the filament."),
			say("Feed ", millimetres("", "", a.test.Commanded), " in one go. If the mark nears the drive, stop."),
			say("Wait until nothing moves. Measure from the same place to the mark, about ", millimetres("", "", a.test.Mark-a.test.Commanded), ", and write it down as it is read."),
			say("Mark anew, and repeat: " + a.runsText() + "."),
		}})
	case a.method() == bothSides:
		p.add(steps(
			"Go to each target going up, then to each coming down, always far enough beyond the end to turn round.",
			"Wait until nothing moves, and write down the position as it is read: "+a.runsText()+".",
		))
	default:
		p.add(steps(
			"Come in from below, so that slack is taken up, and read where the carriage stands.",
			"Move the length, wait until nothing moves, read again, and write down the difference.",
			"Go back beyond the start, and repeat: "+a.runsText()+".",
		))
	}
	return p
}

func (a *planned) after() *Part {
	p := &Part{ID: "after", Title: "Check-list: afterwards", Needs: lists.Concat(a.keys, []string{"as", "steps", "turn", "output", "angle", "micro"}, a.gearEntry.keys(""))}
	items := sentences{say("Set the controller back to absolute moves if yours are: the last line above does it.")}
	if a.isFeed() {
		items.say("Set back what you changed for the test: an override of flow or speed, a filament sensor switched off.")
	}
	p.add(Points{append(items, say("Type the readings in, all of them, also those that look odd."))})
	if a.isFeed() && a.Path.Word == "open" {
		p.add(cautionNote("Put back the guard against cold feeding if you lifted it for this test."))
	}
	p.add(Links{[]Link{a.toMeasure()}})
	return p
}

// toMeasure hands the test over to the page for its readings.
func (a *planned) toMeasure() Link {
	var asked, speed, mark, at, want, targets []string
	perMinute := func(v unit.Speed) string { return decimal(float64(v) * unit.Minute) }
	switch a.method() {
	case bothSides:
		for range a.design.Repeats {
			for _, x := range a.targets() {
				targets = append(targets, decimal(x))
			}
		}
	case severalLengths:
		a.rounds(func(place, _ int) { want = append(want, decimal(a.test.Commanded*a.design.Places[place])) })
	default:
		asked = []string{decimal(a.test.Commanded)}
	}
	if a.isFeed() {
		mark = []string{decimal(a.test.Mark)}
		if a.method() == severalSpeeds {
			a.rounds(func(place, _ int) { at = append(at, perMinute(a.atSpeeds()[place])) })
		} else {
			speed = []string{perMinute(a.atSpeeds()[0])}
		}
	}
	return hand("Enter the readings", "measure", lists.Concat(
		fills("axis", a.Axis.told()), a.scaleEntry.handed(false),
		[]entry{fill("path", a.Path.told()), fill("trial", a.Trial.told()), fill("trip", a.Trip.told()), fill("asked", asked...), fill("speed", speed...),
			fill("mark", mark...), fill("at", at...), fill("want", want...), fill("target", targets...)},
		a.tool.handed(""), a.motorEntry.handed(), a.gearEntry.handed())...)
}
