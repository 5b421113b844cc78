package plan

import (
	"strconv"

	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// before, during and after are the checklist.
func (a *solution) before() *report.Part {
	p := &report.Part{ID: "before", Title: beforeTitle, Needs: a.keys, Blocks: []report.Block{report.CautionOf("maker"), report.CautionOf("stay")}}
	if !a.isFeed() {
		p.Add(report.CautionOf("range"), report.PointsOf(rangeClear, normalTension, toolAlong, carriageAtLow))
		return p
	}
	cold := a.Path.Word == "open"
	if cold {
		p.Caution("cold", "guard")
	} else {
		p.Caution("hot")
	}
	var items report.Sentences
	for _, o := range trial.Readiness {
		if o.Word != "guard" || cold {
			items.Say(readyPoint, "check", o.Label, "hint", o.Hint)
		}
	}
	p.Add(report.Points{Items: items})
	return p
}

func (a *solution) during() *report.Part {
	p := &report.Part{ID: "during", Title: duringTitle, Needs: a.keys, Blocks: []report.Block{report.CautionOf("rollers")}}
	switch {
	case a.isFeed():
		p.Add(report.Steps{Items: []report.Line{
			report.Say(markIt, "mark", millimetres("", "", a.test.Mark)),
			report.Say(feedIt, "length", millimetres("", "", a.test.Commanded)),
			report.Say(readIt, "left", millimetres("", "", a.test.Mark-a.test.Commanded)),
			report.Text(a.runs(a.wording().repeat)),
		}})
	case a.Method() == trial.BothSides:
		p.Add(report.StepsOf(goToEachTarget, a.runs(a.wording().repeat)))
	default:
		p.Add(report.StepsOf(comeFromBelow, moveAndRead, a.runs(a.wording().repeat)))
	}
	return p
}

func (a *solution) after() *report.Part {
	p := &report.Part{ID: "after", Title: afterTitle, Needs: lists.Concat(a.keys, []string{"as", "steps", "turn", "output", "angle", "micro"}, a.GearEntry.Keys(""))}
	items := report.Sentences{report.Say(backToAbsolute)}
	if a.isFeed() {
		items.Say(undoOverrides)
	}
	p.Add(report.Points{Items: append(items, report.Say(enterAll))})
	if a.isFeed() && a.Path.Word == "open" {
		p.Add(report.CautionNote(guardBackOn))
	}
	p.Add(report.Links{All: []report.Link{a.to("run", runThisPlan), a.to("measure", enterReadings)}})
	return p
}

// points is how many runs the page for the readings counts: of positions from both sides,
// a pair is one.
func (a *solution) points() int {
	if a.Method() == trial.BothSides {
		return len(targetShares) * a.design.Repeats
	}
	return a.design.Runs()
}

// to hands the test over to a page of its readings.
func (a *solution) to(slug, text string) report.Link {
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
	}
	if a.Method() == trial.SeveralSpeeds {
		a.rounds(func(place, _ int) { at = append(at, perMinute(a.atSpeeds()[place])) })
	} else {
		speed = []string{perMinute(a.atSpeeds()[0])}
	}
	return axis.LinkTo(text, slug, lists.Concat(
		axis.Fills("axis", a.Axis.Chosen()), a.ScaleEntry.Filled(false),
		[]axis.Filling{axis.Fill("path", a.Path.Chosen()), axis.Fill("trial", a.Trial.Chosen()), axis.Fill("trip", a.Trip.Chosen()), axis.Fill("asked", asked...), axis.Fill("speed", speed...),
			axis.Fill("mark", mark...), axis.Fill("at", at...), axis.Fill("want", want...), axis.Fill("target", targets...)},
		a.tool.Filled(""), axis.Fills("planned", strconv.Itoa(a.points())), a.MotorEntry.Filled(), a.GearEntry.Filled())...)
}
