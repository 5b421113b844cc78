package calc

import (
	"strconv"

	"striderule/calc/measure"
)

// howTo is how to get readings that are worth something.
func (a *flowed) howTo() *Part {
	p := &Part{ID: "how", Title: "How to get the readings", Guide: true, Needs: []string{"by"}}
	p.caution("maker")
	if a.sheet.By.Word != byDiameter {
		p.caution("stay", "hot")
	}
	switch a.sheet.By.Word {
	case byMass:
		p.add(steps(
			"Print a solid piece of 20 g or more in one material, in the profile that you mean to set: the balance's step counts less.",
			"Weigh all that the stated amount contains, skirt, brim and supports included; or leave those out in the slicing step.",
			"Set the balance to zero, weigh, and take the piece off again. Look whether zero comes back.",
			"Print and weigh it again: three times at least."))
	case byDiameter:
		p.add(steps(
			"Wipe the caliper's jaws, close them and set zero.",
			"Measure the filament without squeezing it flat, across and then a quarter turn round: it is often oval.",
			"Repeat at five places or more, a hand's breadth apart, on the piece that goes in next."))
	default:
		p.add(steps(
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
func (a *flowed) next() *Part {
	p := &Part{ID: "next", Title: "What to do next", Needs: flowKeys}
	var items sentences
	switch a.judged.Verdict {
	case measure.LeaveIt:
		items.say("Leave the flow factor. If surfaces or sizes are still wrong, the cause is not the amount of plastic.")
	case measure.MeasureMore, measure.NotWithThis:
		items = a.remedies()
	default:
		items.say("Note down the flow factor as it is now, to be able to undo: ", a.was(""), ".")
		if a.sheet.By.Word == byDiameter {
			items = append(items, a.diameterOrFlow()...)
			break
		}
		items.say("Set the flow factor of this material or profile to " + a.entered() + ", in one place only. Where there are several that multiply, leave the others at 100 %.")
		items = append(items, a.confirm())
		items.say("Type the new readings with the new factor as the one that is now. If they still say Change it, on the same side, the new factor is not in use.")
	}
	if a.sheet.By.Word != byDiameter && a.judged.Verdict != measure.LeaveIt {
		p.caution("maker", "hot")
	}
	p.add(Steps{items})
	return p
}

// diameterOrFlow are both places for what a diameter says, of which one is
// enough.
func (a *flowed) diameterOrFlow() []Line {
	mean := a.raw.Estimate()
	d := &Figure{ID: "diameter", Value: mean.Value, U: mean.Expanded(), Unit: a.unit}
	return []Line{
		say("Enter the measured diameter in the slicing step, ", d, ", and leave the flow factor: that is the better place, as it goes with this spool."),
		say("Or leave the diameter there as it is set, and set the flow factor to " + a.entered() + ". Never both: that would count it twice."),
		say("Then print a wall and measure it: it shows all there is."),
	}
}

// confirm says in which band the next reading should fall.
func (a *flowed) confirm() Line {
	l := say("Print the same once more and read it in the same way: ", a.reading("", "", a.gauge.at(1)), " is what it should be")
	m := a.raw
	m.Length -= a.gauge.offset
	if next, err := m.Next(a.gauge.per, len(m.Runs)); err == nil {
		low, high := next.Interval()
		end := func(id string, v float64) *Figure {
			return &Figure{ID: id, Value: a.gauge.offset + v, Like: next.Expanded(), Unit: a.unit}
		}
		l = append(l, say("; with the scatter of these readings the mean of as many new ones should lie between ", end("low", low), " and ", end("high", high))...)
	}
	return append(l, say(".")...)
}

// remedies say what would settle it, the best first.
func (a *flowed) remedies() []Line {
	means, err := a.scale.Advise(a.sheet.tolerance())
	if err != nil || a.scale.Ratio.U == 0 { // nothing is known that could be improved
		return []Line{say("Take at least three readings, and say what you read them with.")}
	}
	var items sentences
	settles := false // something here does
	for _, m := range means {
		u := percent("", "", m.U, m.U)
		var l Line
		enough := ""
		switch m.Means {
		case measure.MoreRuns:
			l = say("Take one more reading: the uncertainty of the error comes down to about ± ", u)
			enough = strconv.Itoa(m.Enough.Runs) + " readings in all would settle it"
		case measure.BetterInstrument:
			l = say("Read it with "+toolName(m.Next.With)+": it would be about ± ", u)
			enough = toolName(m.Enough.With) + " would settle it"
		default:
			continue // there is no longer move to make
		}
		if m.Verdict == measure.LeaveIt || m.Verdict == measure.ChangeIt {
			settles = true
			l = append(l, say("; "+enough+", if the readings stay as they are")...)
		} else {
			l = append(l, say("; that alone would not settle it, however far you take it")...)
		}
		items = append(items, append(l, say(".")...))
	}
	if n, ok := a.enoughWalls(); ok {
		items.say("Print a wall of more lines side by side, of which the same step of the instrument is a smaller share: ",
			&Figure{ID: "walls", Value: float64(n), Digits: 2}, " lines would settle it, if error and scatter stay as they are.")
	} else if a.judged.Verdict == measure.NotWithThis && !settles && a.sheet.By.Word != byMass {
		items.say("What you read it with is too coarse for that tolerance: take a finer instrument together with more readings, or be content with a wider tolerance.")
	}
	switch {
	case a.sheet.By.Word == byWalls && a.sheet.Fused.Word == "gaps":
		items.say("More lines side by side do not help while there are gaps between them. Print a solid piece, weigh it, and choose Mass above.")
	case a.sheet.By.Word == byWalls && !settles:
		items.say("Or print a solid piece, weigh it, and choose Mass above.")
	case a.sheet.By.Word == byMass && !settles:
		items.say("Look below for the largest cause of doubt: a heavier piece or a finer balance makes its step and limits matter less; a density that is known better than the label says makes that matter less.")
	}
	return items
}

// whatBelongsWhere keeps three settings apart that can all hide each other's
// errors.
var whatBelongsWhere = Part{ID: "belongs", Title: "What belongs to scale, flow and slip", Folded: true, Blocks: []Block{
	points(
		"Scale: the length that is fed for each millimetre asked for. It belongs to the machine and is the same for every material. It is measured on the filament, and comes first.",
		"Flow: the plastic that comes for each length fed, beside what the slicing step reckons with: the filament's diameter, how much it swells, how lines are laid. It belongs to one material and profile, and comes when the scale is right.",
		"Slip: an error that grows with feed speed. It belongs to neither: melt hotter, feed slower, clean the roller. A flow factor that hides it at one speed is wrong at every other.",
		"A flow factor that was found while the scale was wrong hid that error too. When the scale is put right, find the factor anew, starting from 1.00.",
	),
}}
