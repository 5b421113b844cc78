package calibrate

import (
	"strconv"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/measure"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/word"
)

// readRatio looks the found ratio up among the usual mistakes.
func (a *solution) readRatio() [][]drive.Mistake {
	s := a.sheet
	known := drive.Known{Feed: s.isFeed(), Volumetric: s.isFeed() && s.Counted.Word == "volume"}
	if s.rotary() {
		known.Feed = true // no belts and no screws either
	}
	if stages, ok := s.Stages(); ok {
		known.Stages = stages
	}
	ratio := a.scale.Ratio
	return drive.ReadRatio(ratio.Value, a.k*ratio.U/ratio.Value, drive.Mistakes(known)).Fits
}

// templateProblems finds templates without a place for the number.
func (s *entries) templateProblems() []report.Problem {
	var problems []report.Problem
	check := func(key, template string) {
		if template != "" && !strings.Contains(template, valuePlace) {
			problems = append(problems, report.Problem{Key: key, Row: 0, Says: word.Quote(template) + " has no " + valuePlace + ". Write " + valuePlace + " where the number goes, as in M92 E" + valuePlace + "."})
		}
	}
	check("line", s.Line.Value)
	check("linetravel", s.TravelLine.Value)
	check("linerotary", s.RotaryLine.Value)
	check("entry", s.Entry.Value)
	return problems
}

const valuePlace = "{value}"

// apply says what to send, how to keep it, how to undo it, and where the old
// value may hide. Where nothing should be changed it is folded.
func (a *solution) apply() *report.Part {
	p := &report.Part{ID: "apply", Title: "Apply it", Needs: append([]string{"line", "linetravel", "linerotary", "entry"}, a.allKeys...)}
	switch {
	case a.hasThen:
		p.Title, p.Folded = "What was applied", true
	case a.judged.Verdict == measure.LeaveIt:
		p.Title, p.Folded = "If you change it all the same", true
	case a.judged.Verdict == measure.MeasureMore, a.judged.Verdict == measure.NotWithThis:
		p.Title, p.Folded = "If you cannot measure any better", true
	case a.suspectsMistake():
		p.Title, p.Folded = "If none of that is true, or the controller has no entry for it", true
	}
	is, was := a.corrected(), a.now
	template := a.sheet.Line.Value + a.sheet.TravelLine.Value + a.sheet.RotaryLine.Value + a.sheet.Entry.Value // only one of them is shown
	if template != "" {
		fill := func(number string) string { return strings.ReplaceAll(template, valuePlace, number) }
		of := []string{a.templateKey()}
		p.Add(report.Code{ID: "line", Label: "The line", Text: fill(a.number(is)), Of: of}, report.Code{ID: "undo", Label: "To undo it", Text: fill(a.old("", was).Number()), Of: of})
	} else {
		p.Add(report.Ask{Keys: []string{a.templateKey()}, For: "a line to copy, ready filled in"})
	}
	keep := "A line that is sent lasts until the controller restarts, unless you store it: with the controller's own command for keeping settings, or by changing the entry in its configuration."
	if was.Convention != drive.StepsPerUnit {
		keep = "Change the entry in the controller's configuration, save it, and restart the controller: entries are read at the start."
	}
	p.Add(report.CautionOf("stay"), report.CautionOf("rollers"), report.Steps{Items: []report.Line{
		report.Say("Note down the old value first, to be able to undo: ", a.old("", was), "."),
		report.Say("Set the new one: " + a.entered(is) + ". Make the first move with it short and slow."),
		report.Say(keep),
		report.Say("Ask the controller for the value it uses after a restart. If it is the old one, it hides somewhere: see “" + axis.TouchesTitle + "”."),
	}})
	return p
}

func (a *solution) templateKey() string {
	switch {
	case a.now.Convention != drive.StepsPerUnit:
		return "entry"
	case a.sheet.rotary():
		return "linerotary"
	case a.sheet.isFeed():
		return "line"
	}
	return "linetravel"
}

// next says what to do now, which depends on the verdict.
func (a *solution) next() *report.Part {
	p := &report.Part{ID: "next", Title: "What to do next", Needs: append([]string{"path", "counted"}, a.readKeys...), Folded: a.hasThen}
	var items report.Sentences
	var links []report.Link
	if a.slips() {
		items = a.againstSlip()
	}
	switch a.judged.Verdict {
	case measure.LeaveIt:
		links = a.whenRight(a.now)
		if !a.slips() {
			items.Say("Leave the setting. If sizes or amounts are still wrong, the cause is not the scale of this axis.")
		}
	case measure.MeasureMore, measure.NotWithThis:
		items = lists.Concat(items, a.remedies(), []report.Line{report.Say("More runs of the same kind count together with these. For another length or instrument start anew: these readings belong to this one.")})
		if !a.sheet.rotary() {
			links = []report.Link{a.toPlan()}
		}
	default:
		if a.suspectsMistake() {
			items.Say("Look for the mistake first. Where you find it, put it right and measure again.")
		}
		enter := "Enter those readings under “" + secAgain.Title + "”; leave the setting in the form as it was during the first runs."
		if a.sheet.Method() != trial.OneLength { // whose second round the form has no room for
			enter = "Enter those readings on a new sheet, with the new setting."
		}
		items = append(items, a.confirm(), report.Say(enter),
			report.Say("If nothing has changed, the controller does not use the new value yet. If it is still off, look for slip, for a reading that went wrong, and for the old value hiding somewhere. If the error comes back the other way round, the value was probably entered in the wrong place."),
			report.Say("Then look at “"+axis.TouchesTitle+"”."))
	}
	p.Add(report.Steps{Items: items})
	if a.sheet.isFeed() && a.sheet.Path.Word == "open" {
		p.Add(report.CautionNote("Put back the guard against cold feeding if you lifted it for this test."))
	}
	if v := a.judged.Verdict; !a.hasThen && a.sheet.Method() == trial.OneLength && (v == measure.ChangeIt || v == measure.EitherIsFine) {
		p.Add(report.Ask{Keys: a.laterKeys[len(a.laterKeys)-1:], For: "the check of the new setting, when it is set"})
	}
	if len(links) > 0 {
		p.Add(report.Links{All: links})
	}
	return p
}

// againstSlip says up to which speed the setting holds, and what slip is cured
// with.
func (a *solution) againstSlip() []report.Line {
	var items report.Sentences
	if v, ok := a.slip.HoldsUpTo(a.sheet.tolerance(), a.judged.Verdict != measure.LeaveIt); ok {
		items.Say("Feed no faster than ", &report.Figure{Value: v, Unit: "mm/s", Digits: 2}, " (", &report.Figure{Value: 60 * v, Unit: "mm/min", Digits: 2}, "): beyond that the error passes the tolerance.")
	}
	return append(items, report.Say("Against the slip: melt hotter or feed slower, clean the roller, set its tension, ease the filament's path, and look for a blocked nozzle. Then repeat the test."))
}

// confirm says in which band the next reading should fall.
func (a *solution) confirm() report.Line {
	if a.sheet.Method() != trial.OneLength {
		return report.Say("Make a test of one length with the new setting, and see whether what is asked is what moves.")
	}
	next, _ := a.test.Next(a.asked, 1) // the test was measured, so there can be another
	low, high := next.Interval()
	what := " should be " + a.verb()
	expect := a.asked
	if mark := a.sheet.Mark.Number; mark > a.asked { // one for all runs
		what, expect = " should remain", mark-a.asked
		low, high = mark-high, mark-low
	}
	figure := func(id string, v float64) *report.Figure {
		f := a.length(id, "", v)
		f.Like = (high - low) / 2
		return f
	}
	return report.Say("Repeat the same test with the new setting: about ", a.length("expect", "", expect), what,
		"; with the scatter of these runs anything from ", figure("low", low), " to ", figure("high", high), " is in order.")
}

// remedies say what would settle it: the best first.
func (a *solution) remedies() []report.Line {
	means, err := a.scale.Advise(a.sheet.tolerance())
	if err != nil || len(means) == 0 || a.scale.Ratio.U == 0 { // nothing is known that could be improved
		return []report.Line{report.Say("Make at least three runs, and say what you read them with.")}
	}
	var items report.Sentences
	if with, _ := a.sheet.instrument(); with.Resolution > 0 && a.test.Scatter > 5*with.Resolution {
		some := a.length("", "", 2*a.test.Scatter)
		some.Digits = 2
		items.Say("Your runs differ by some ", some, ", much more than the step of your instrument. Make the mark finer, measure it for each run, and read from the same edge each time.")
	}
	for _, m := range means {
		u := report.Percent("", "", m.U, m.U)
		var l report.Line
		enough := ""
		switch m.Means {
		case measure.MoreRuns:
			l = report.Say("Make one more run: the uncertainty of the error comes down to about ± ", u)
			enough = strconv.Itoa(m.Enough.Runs) + " runs in all would settle it"
		case measure.LongerMove:
			l = report.Say("Move farther: with ", a.length("", "", m.Next.Commanded), " it would be about ± ", u)
			enough = a.length("", "", m.Enough.Commanded).String() + " would settle it"
		default:
			l = report.Say("Read it with "+axis.ToolName(m.Next.With)+": it would be about ± ", u)
			enough = axis.ToolName(m.Enough.With) + " would settle it"
		}
		if m.Verdict == measure.LeaveIt || m.Verdict == measure.ChangeIt {
			l = append(l, report.Say("; "+enough+", if the readings stay as they are")...)
		}
		items = append(items, append(l, report.Say(".")...))
	}
	return items
}

// again says what the second round shows.
func (a *solution) again() *report.Part {
	if !a.hasThen {
		return nil
	}
	p := &report.Part{ID: "again", Title: "After the change", Needs: lists.Concat(a.readKeys, a.laterKeys)}
	e := a.then.Error()
	off := report.Percent("then", "Error now", e.Value, 0)
	off.U = 100 * e.Expanded()
	p.Add(report.FiguresOf(off))
	switch {
	case a.judgedThen.Verdict == measure.LeaveIt:
		p.Add(report.ParaOf("Now look at “" + axis.TouchesTitle + "”, and keep this sheet in the log: the button stands beside the one for the link."))
		if links := a.whenRight(a.corrected()); len(links) > 0 {
			p.Add(report.Links{All: links})
		}
	case a.judgedThen.Verdict == measure.ChangeIt && e.Value*a.scale.Error().Value > 0:
		p.Add(report.DoubtNote("It errs on the same side as before: is the new value really in use? A start-up script or the controller's memory may have set the old one again."))
	}
	return p
}

// conventions shows the setting before and after in each convention that the
// given facts allow, and asks for the facts that are missing.
func (a *solution) conventions() *report.Part {
	p := &report.Part{ID: "conventions", Title: "The same in each convention",
		Needs: lists.Concat(a.allKeys, []string{"angle", "micro"}, a.sheet.GearEntry.Keys(""))}
	was, is := a.facts()
	p.Blocks = axis.BeforeAndAfter(was, is, a.old, a.setting)
	if a.sheet.GearEntry.Known() && a.sheet.Reduction() < 1 {
		p.Add(axis.TurnsFaster)
	}
	if travel, missing := is.In(drive.TravelPerOutputTurn); len(missing) == 0 && a.sheet.isFeed() {
		d := float64(drive.EffectiveDiameter(travel.Value))
		p.Add(report.Figures{All: []report.Figure{{ID: "diameter", Label: "Effective diameter of the roller that this implies",
			Value: d, U: a.uncertainty(travel) * d / travel.Value, Unit: "mm", Digits: 4, Keep: true}}})
	}
	return p
}
