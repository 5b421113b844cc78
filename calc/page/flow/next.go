package flow

import (
	"strconv"

	"striderule/calc/measure"
	"striderule/calc/page/trial"
	"striderule/calc/report"
)

// howTo is how to get readings that are worth something.
func (a *solution) howTo() *report.Part {
	p := &report.Part{ID: "how", Title: howTitle, Guide: true, Needs: []string{"by"}}
	p.Caution("maker")
	if a.sheet.By.Word != byDiameter {
		p.Caution("stay", "hot")
	}
	switch a.sheet.By.Word {
	case byMass:
		p.Add(report.StepsOf(massSteps...))
	case byDiameter:
		p.Add(report.StepsOf(diameterSteps...))
	default:
		p.Add(report.StepsOf(wallSteps...), caliperPlaces())
	}
	return p
}

// next says what to do now, which depends on the verdict; nil if that says it.
func (a *solution) next() *report.Part {
	if a.unclear() != nil {
		return nil
	}
	p := &report.Part{ID: "next", Title: nextTitle, Needs: flowKeys}
	var items report.Sentences
	switch a.judged.Verdict {
	case measure.LeaveIt:
		items.Say(leaveIt)
	case measure.MeasureMore, measure.NotWithThis:
		items = a.remedies()
	default:
		items.Say(noteOld, "flow", a.used(""))
		if a.sheet.By.Word == byDiameter {
			items = append(items, a.diameterOrFlow()...)
			break
		}
		items.Say(setFlow, "flow", a.entered())
		items = append(items, a.confirm(), report.Say(typeAgain, "flow", flowLabel))
	}
	if a.sheet.By.Word != byDiameter && a.judged.Verdict != measure.LeaveIt {
		p.Caution("maker", "hot")
	}
	p.Add(report.Steps{Items: items})
	return p
}

// diameterOrFlow are both places for what a diameter says, of which one is
// enough.
func (a *solution) diameterOrFlow() []report.Line {
	mean := a.raw.Estimate()
	d := &report.Figure{ID: "diameter", Value: mean.Value, U: a.known(mean), Unit: a.unit}
	return []report.Line{
		report.Say(setDiameter, "diameter", d),
		report.Say(orSetFlow, "flow", a.entered()),
		report.Say(thenWall),
	}
}

// confirm says in which band the next readings should fall.
func (a *solution) confirm() report.Line {
	target := a.reading("", "", a.gauge.at(1))
	m := a.raw
	m.Length -= a.gauge.offset
	next, err := m.Next(a.gauge.per, len(m.Runs))
	if err != nil {
		return report.Say(printAgain, "target", target)
	}
	low, high := next.Interval()
	end := func(id string, v float64) *report.Figure {
		return &report.Figure{ID: id, Value: a.gauge.offset + v, Like: next.HalfWidth(), Unit: a.unit}
	}
	return report.Say(printBand, "target", target, "low", end("low", low), "high", end("high", high))
}

// remedies say what would settle it, the best first.
func (a *solution) remedies() []report.Line {
	means, err := a.scale.Advise(a.sheet.tolerance())
	if err != nil || a.scale.Ratio.U == 0 { // nothing is known that could be improved
		return []report.Line{report.Say(sayTool)}
	}
	if a.alone && a.judged.Verdict == measure.MeasureMore { // what more would bring, a single reading can't tell
		return []report.Line{report.Say(takeThree)}
	}
	var items report.Sentences
	settles := false // something here does
	for _, m := range means {
		if l := remedy(m); l != nil {
			items = append(items, l)
			settles = settles || m.Settles()
		}
	}
	if n, ok := a.enoughWalls(); ok {
		items.Say(moreLines, "n", &report.Figure{ID: "walls", Value: float64(n), Digits: 2})
	} else if a.judged.Verdict == measure.NotWithThis && !settles && a.sheet.By.Word != byMass {
		items.Say(toolAndMore)
	}
	switch {
	case a.sheet.By.Word == byWalls && a.sheet.Fused.Word == "gaps":
		items.Say(gapsWeigh, "weight", wayMass.Label)
	case a.sheet.By.Word == byWalls && !settles:
		items.Say(orWeigh, "weight", wayMass.Label)
	case a.sheet.By.Word == byMass && !settles:
		items.Say(biggestSource)
	}
	return items
}

// remedy says what a means would do; nil for a longer move, which there is not here.
func remedy(m measure.Remedy) report.Line {
	switch m.Means {
	case measure.MoreRuns:
		u := report.Percent("", "", m.U, m.U)
		says := oneMore
		switch {
		case m.About:
			says = oneMoreAbout
		case !m.Settles():
			says = oneMoreOnly
		}
		return report.Say(says, "u", u, "n", strconv.Itoa(m.Enough.Runs))
	case measure.BetterInstrument:
		return trial.FinerTool(m)
	}
	return nil
}

// whatBelongsWhere keeps three settings apart that can all hide each other's
// errors.
var whatBelongsWhere = report.Part{ID: "belongs", Title: belongsTitle, Brief: belongsBrief, Folded: true, Blocks: []report.Block{report.PointsOf(belongs...)}}
