package flow

import (
	"strconv"

	"striderule/calc/measure"
	"striderule/calc/page/axis"
	"striderule/calc/report"
)

// howTo is how to get readings that are worth something.
func (a *solution) howTo() *report.Part {
	p := &report.Part{ID: "how", Title: "How to get the readings", Guide: true, Needs: []string{"by"}}
	p.Caution("maker")
	if a.sheet.By.Word != byDiameter {
		p.Caution("stay", "hot")
	}
	switch a.sheet.By.Word {
	case byMass:
		p.Add(report.StepsOf(
			"Print a solid piece of 20 g or more in one material, in the profile that you mean to set: the balance's step counts less.",
			"Weigh all that the stated amount contains, skirt, brim and supports included; or leave those out in the slicing step.",
			"Set the balance to zero, weigh, and take the piece off again. Look whether zero comes back.",
			"Print and weigh it again: three times at least."))
	case byDiameter:
		p.Add(report.StepsOf(
			"Wipe the caliper's jaws, close them and set zero.",
			"Measure the filament without squeezing it flat, across and then a quarter turn round: it is often oval.",
			"Repeat at five places or more, a hand's breadth apart, on the piece that goes in next."))
	default:
		p.Add(report.StepsOf(
			"Print a box of 30 to 40 mm without top and infill, its wall made of one line; or of several lines side by side if one is too thin for your instrument.",
			"Use the material, temperature, speed and layer height that you mean to set the flow for.",
			"Let it cool, and scrape off burrs and blobs.",
			"Wipe the caliper's jaws, close them and set zero.",
			"Measure in the middle of the flat sides, two or more readings on each: not at corners, the seam, or the first layers. Squeeze lightly: the wall gives way.",
			"Six readings or more; write down each as it is."), caliperPlaces())
	}
	return p
}

// next says what to do now, which depends on the verdict.
func (a *solution) next() *report.Part {
	p := &report.Part{ID: "next", Title: "What to do next", Needs: flowKeys}
	var items report.Sentences
	switch a.judged.Verdict {
	case measure.LeaveIt:
		items.Say("Leave the flow factor. If surfaces or sizes are still wrong, the cause is not the amount of plastic.")
	case measure.MeasureMore, measure.NotWithThis:
		items = a.remedies()
	default:
		items.Say("Note down the flow factor as it is now, to be able to undo: ", a.was(""), ".")
		if a.sheet.By.Word == byDiameter {
			items = append(items, a.diameterOrFlow()...)
			break
		}
		items.Say("Set the flow factor of this material or profile to " + a.entered() + ", in one place only. Where there are several that multiply, leave the others at 100 %.")
		items = append(items, a.confirm())
		items.Say("Type the new readings with the new factor as the one that is now. If they still say Change it, on the same side, the new factor is not in use.")
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
	d := &report.Figure{ID: "diameter", Value: mean.Value, U: mean.Expanded(), Unit: a.unit}
	return []report.Line{
		report.Say("Enter the measured diameter in the slicing step, ", d, ", and leave the flow factor: that is the better place, as it goes with this spool."),
		report.Say("Or leave the diameter there as it is set, and set the flow factor to " + a.entered() + ". Never both: that would count it twice."),
		report.Say("Then print a wall and measure it: it shows all there is."),
	}
}

// confirm says in which band the next reading should fall.
func (a *solution) confirm() report.Line {
	l := report.Say("Print the same once more and read it in the same way: ", a.reading("", "", a.gauge.at(1)), " is what it should be")
	m := a.raw
	m.Length -= a.gauge.offset
	if next, err := m.Next(a.gauge.per, len(m.Runs)); err == nil {
		low, high := next.Interval()
		end := func(id string, v float64) *report.Figure {
			return &report.Figure{ID: id, Value: a.gauge.offset + v, Like: next.Expanded(), Unit: a.unit}
		}
		l = append(l, report.Say("; with the scatter of these readings the mean of as many new ones should lie between ", end("low", low), " and ", end("high", high))...)
	}
	return append(l, report.Say(".")...)
}

// remedies say what would settle it, the best first.
func (a *solution) remedies() []report.Line {
	means, err := a.scale.Advise(a.sheet.tolerance())
	if err != nil || a.scale.Ratio.U == 0 { // nothing is known that could be improved
		return []report.Line{report.Say("Take at least three readings, and say what you read them with.")}
	}
	var items report.Sentences
	settles := false // something here does
	for _, m := range means {
		u := report.Percent("", "", m.U, m.U)
		var l report.Line
		enough := ""
		switch m.Means {
		case measure.MoreRuns:
			l = report.Say("Take one more reading: the uncertainty of the error comes down to about ± ", u)
			enough = strconv.Itoa(m.Enough.Runs) + " readings in all would settle it"
		case measure.BetterInstrument:
			l = report.Say("Read it with "+axis.ToolName(m.Next.With)+": it would be about ± ", u)
			enough = axis.ToolName(m.Enough.With) + " would settle it"
		default:
			continue // there is no longer move to make
		}
		if m.Verdict == measure.LeaveIt || m.Verdict == measure.ChangeIt {
			settles = true
			l = append(l, report.Say("; "+enough+", if the readings stay as they are")...)
		} else {
			l = append(l, report.Say("; that alone would not settle it, however far you take it")...)
		}
		items = append(items, append(l, report.Say(".")...))
	}
	if n, ok := a.enoughWalls(); ok {
		items.Say("Print a wall of more lines side by side, of which the same step of the instrument is a smaller share: ",
			&report.Figure{ID: "walls", Value: float64(n), Digits: 2}, " lines would settle it, if error and scatter stay as they are.")
	} else if a.judged.Verdict == measure.NotWithThis && !settles && a.sheet.By.Word != byMass {
		items.Say("What you read it with is too coarse for that tolerance: take a finer instrument together with more readings, or be content with a wider tolerance.")
	}
	switch {
	case a.sheet.By.Word == byWalls && a.sheet.Fused.Word == "gaps":
		items.Say("More lines side by side do not help while there are gaps between them. Print a solid piece, weigh it, and choose Mass above.")
	case a.sheet.By.Word == byWalls && !settles:
		items.Say("Or print a solid piece, weigh it, and choose Mass above.")
	case a.sheet.By.Word == byMass && !settles:
		items.Say("Look below for the largest cause of doubt: a heavier piece or a finer balance makes its step and limits matter less; a density that is known better than the label says makes that matter less.")
	}
	return items
}

// whatBelongsWhere keeps three settings apart that can all hide each other's
// errors.
var whatBelongsWhere = report.Part{ID: "belongs", Title: "What belongs to scale, flow and slip", Folded: true, Blocks: []report.Block{
	report.PointsOf(
		"Scale: the length that is fed for each millimetre asked for. It belongs to the machine and is the same for every material. It is measured on the filament, and comes first.",
		"Flow: the plastic that comes for each length fed, beside what the slicing step reckons with: the filament's diameter, how much it swells, how lines are laid. It belongs to one material and profile, and comes when the scale is right.",
		"Slip: an error that grows with feed speed. It belongs to neither: melt hotter, feed slower, clean the roller. A flow factor that hides it at one speed is wrong at every other.",
		"A flow factor that was found while the scale was wrong hid that error too. When the scale is put right, find the factor anew, starting from 1.00.",
	),
}}
