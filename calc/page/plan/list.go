package plan

import (
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// before, during and after are the check-list.
func (a *solution) before() *report.Part {
	p := &report.Part{ID: "before", Title: "Check-list: before", Needs: a.keys, Blocks: []report.Block{report.CautionOf("maker"), report.CautionOf("stay")}}
	if !a.isFeed() {
		p.Add(report.CautionOf("range"), report.PointsOf(
			"Nothing lies within the range of the axis, and it moves freely by hand.",
			"Belts and screws are as tight as in use.",
			"The rule, caliper or dial gauge stands along the axis and does not move.",
			"The carriage stands at the lower end of the range.",
		))
		return p
	}
	open := a.Path.Word == "open"
	if open {
		p.Caution("cold", "guard")
	} else {
		p.Caution("hot")
	}
	var items report.Sentences
	for _, o := range trial.Readiness {
		if o.Word != "guard" || open {
			items.Say(o.Label + ": " + o.Hint + ".")
		}
	}
	p.Add(report.Points{Items: items})
	return p
}

func (a *solution) during() *report.Part {
	p := &report.Part{ID: "during", Title: "Check-list: each run", Needs: a.keys, Blocks: []report.Block{report.CautionOf("rollers")}}
	switch {
	case a.isFeed():
		p.Add(report.Steps{Items: []report.Line{
			report.Say("Mark the filament at ", millimetres("", "", a.test.Mark), " from the drive's inlet: a fine line, measured straight along the filament."),
			report.Say("Feed ", millimetres("", "", a.test.Commanded), " in one go. If the mark nears the drive, stop."),
			report.Say("Wait until nothing moves. Measure from the same place to the mark, about ", millimetres("", "", a.test.Mark-a.test.Commanded), ", and write it down as it is read."),
			report.Say("Mark anew, and repeat: " + a.runsText() + "."),
		}})
	case a.Method() == trial.BothSides:
		p.Add(report.StepsOf(
			"Go to each target going up, then to each coming down, always far enough beyond the end to turn round.",
			"Wait until nothing moves, and write down the position as it is read: "+a.runsText()+".",
		))
	default:
		p.Add(report.StepsOf(
			"Come in from below, so that slack is taken up, and read where the carriage stands.",
			"Move the length, wait until nothing moves, read again, and write down the difference.",
			"Go back beyond the start, and repeat: "+a.runsText()+".",
		))
	}
	return p
}

func (a *solution) after() *report.Part {
	p := &report.Part{ID: "after", Title: "Check-list: afterwards", Needs: lists.Concat(a.keys, []string{"as", "steps", "turn", "output", "angle", "micro"}, a.GearEntry.Keys(""))}
	items := report.Sentences{report.Say("Set the controller back to absolute moves if yours are: the last line above does it.")}
	if a.isFeed() {
		items.Say("Set back what you changed for the test: an override of flow or speed, a filament sensor switched off.")
	}
	p.Add(report.Points{Items: append(items, report.Say("Type the readings in, all of them, also those that look odd."))})
	if a.isFeed() && a.Path.Word == "open" {
		p.Add(report.CautionNote("Put back the guard against cold feeding if you lifted it for this test."))
	}
	p.Add(report.Links{All: []report.Link{a.toMeasure()}})
	return p
}

// toMeasure hands the test over to the page for its readings.
func (a *solution) toMeasure() report.Link {
	var asked, speed, mark, at, want, targets []string
	perMinute := func(v unit.Speed) string { return trial.Decimal(float64(v) * unit.Minute) }
	switch a.Method() {
	case trial.BothSides:
		for range a.design.Repeats {
			for _, x := range a.targets() {
				targets = append(targets, trial.Decimal(x))
			}
		}
	case trial.SeveralLengths:
		a.rounds(func(place, _ int) { want = append(want, trial.Decimal(a.test.Commanded*a.design.Places[place])) })
	default:
		asked = []string{trial.Decimal(a.test.Commanded)}
	}
	if a.isFeed() {
		mark = []string{trial.Decimal(a.test.Mark)}
		if a.Method() == trial.SeveralSpeeds {
			a.rounds(func(place, _ int) { at = append(at, perMinute(a.atSpeeds()[place])) })
		} else {
			speed = []string{perMinute(a.atSpeeds()[0])}
		}
	}
	return axis.LinkTo("Enter the readings", "measure", lists.Concat(
		axis.Fills("axis", a.Axis.Chosen()), a.ScaleEntry.Filled(false),
		[]axis.Filling{axis.Fill("path", a.Path.Chosen()), axis.Fill("trial", a.Trial.Chosen()), axis.Fill("trip", a.Trip.Chosen()), axis.Fill("asked", asked...), axis.Fill("speed", speed...),
			axis.Fill("mark", mark...), axis.Fill("at", at...), axis.Fill("want", want...), axis.Fill("target", targets...)},
		a.tool.Filled(""), a.MotorEntry.Filled(), a.GearEntry.Filled())...)
}
