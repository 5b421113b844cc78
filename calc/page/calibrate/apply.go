package calibrate

import (
	"math"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/measure"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/word"
)

// templateProblems finds templates without a place for the number.
func (s *entries) templateProblems() []report.Problem {
	var problems []report.Problem
	check := func(key, line, example string) {
		if line != "" && !strings.Contains(line, valuePlace) {
			problems = append(problems, report.Problem{Key: key, Row: 0, Says: noPlace.Fill("line", line, "value", valuePlace, "example", example)})
		}
	}
	check("line", s.Line.Value, extruderLine)
	check("linetravel", s.TravelLine.Value, linearLine)
	check("linerotary", s.RotaryLine.Value, rotaryLine)
	check("entry", s.Entry.Value, configLine)
	return problems
}

const valuePlace = "{value}"

// lineAxes are the letters of the axes that a template may name; any in a config file.
var lineAxes = word.Table{{"line", "E"}, {"linetravel", "XYZUVW"}, {"linerotary", "ABC"}}

// apply says what to send, how to save it, how to undo it, and where the old
// value may hide. Where nothing should be changed it is folded.
func (a *solution) apply() *report.Part {
	v := a.judged.Verdict
	if !a.hasThen && !a.interim && (v == measure.MeasureMore || v == measure.NotWithThis) {
		return nil // there is nothing to be set yet
	}
	_, mends := a.mended()
	p := &report.Part{ID: "apply", Title: applyTitle, Needs: append([]string{"line", "linetravel", "linerotary", "entry"}, a.allKeys...)}
	switch {
	case a.hasThen:
		p.Title, p.Folded = appliedTitle, true
	case v == measure.LeaveIt, a.keepsParts():
		p.Title, p.Folded = applyAnywayTitle, true
	case mends:
	case a.suspectsMistake():
		p.Title, p.Folded = applyMistakeTitle, true
	}
	if p.Folded {
		p.Brief = applyBrief
	}
	number := a.toSet()
	was := a.now
	send, copyFor := sendLabel, lineFor
	if was.Convention != drive.StepsPerUnit {
		send, copyFor = configLabel, entryFor
	}
	template := a.sheet.Line.Value + a.sheet.TravelLine.Value + a.sheet.RotaryLine.Value + a.sheet.Entry.Value // only one of them is shown
	if template != "" {
		fill := func(number string) string { return strings.ReplaceAll(template, valuePlace, number) }
		key, undo := a.templateKey(), undoLabel
		of, axes := []string{key}, lineAxes.Of(key)
		if a.sheet.Line.Several() || a.sheet.TravelLine.Several() || a.sheet.RotaryLine.Several() || a.sheet.Entry.Several() {
			undo = oldNumberLabel
		}
		p.Add(report.Code{ID: "line", Label: send, Text: fill(number), Of: of, Axes: axes}, report.Code{ID: "undo", Label: undo, Text: fill(a.old("", was).Plain()), Of: of, Axes: axes})
	} else {
		p.Add(report.Ask{Keys: []string{a.templateKey()}, For: copyFor})
	}
	if p.Folded {
		p.Add(a.persistSteps())
	}
	if a.toBeChecked() {
		p.Add(report.Go{Key: a.laterKeys[len(a.laterKeys)-1], Text: checkItNow})
	}
	return p
}

// toBeChecked reports whether check runs are what comes next, and the form has room for them.
func (a *solution) toBeChecked() bool {
	v := a.judged.Verdict
	return !a.hasThen && !a.suspectsMistake() && !a.keepsParts() && a.sheet.Method() == trial.OneLength && (v == measure.ChangeIt || v == measure.EitherIsFine)
}

// persist says how to set the value so that it stays.
func (a *solution) persist() *report.Part {
	v := a.judged.Verdict
	if _, mends := a.mended(); a.hasThen || a.keepsParts() || a.suspectsMistake() && !mends || !a.interim && v != measure.ChangeIt && v != measure.EitherIsFine {
		return nil
	}
	p := &report.Part{ID: "persist", Title: persistTitle, Needs: a.allKeys, Blocks: []report.Block{a.persistSteps()}}
	return p.Fold(persistBrief)
}

func (a *solution) persistSteps() report.Block {
	save := saveCommandStep
	if a.now.Convention != drive.StepsPerUnit {
		save = saveConfigStep
	}
	return report.Steps{Items: []report.Line{
		report.Say(noteOldStep, "setting", a.old("", a.now)),
		report.Say(setNewStep, "setting", a.withUnit(a.toSet())),
		report.Text(save),
		report.Say(checkInUseStep, "part", axis.TouchesTitle),
	}}
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
	p := &report.Part{ID: "next", Title: nextTitle, Needs: append([]string{"path"}, a.allKeys...)}
	if a.hasThen {
		p.Fold(a.nextBrief())
	}
	var items report.Sentences
	var links []report.Link
	repeats := false // the test, which has its dangers
	if a.slips() {
		items = a.againstSlip()
	}
	switch a.judged.Verdict {
	case measure.LeaveIt:
		links = a.whenRight(a.now)
		if !a.slips() {
			items.Say(leaveStep)
		}
	case measure.MeasureMore, measure.NotWithThis:
		last := report.Say(a.sheet.moves().AddRunsStep)
		if a.interim {
			last = report.Say(interimStep)
		}
		items = lists.Concat(items, a.remedies(), []report.Line{last})
		if !a.sheet.rotary() {
			links = a.toPlan()
		}
	default:
		if a.suspectsMistake() {
			items = append(items, a.findMistake()...)
			break
		}
		if a.keepsParts() {
			items.Say(partsStep)
			break
		}
		enter := report.Say(checkHereStep, "section", secAgain.Title)
		if a.sheet.Method() != trial.OneLength { // whose second round the form has no room for
			enter = report.Say(newSheetStep)
		}
		repeats = true
		items = append(items, a.confirm(), enter, report.Say(whatIfStep), report.Say(seePartStep, "part", axis.TouchesTitle))
	}
	p.Add(report.Steps{Items: items})
	if _, supposed, ok := a.byParts(); ok && supposed {
		p.Add(report.Ask{Keys: []string{"angle", "micro", "gears"}, For: partsFor})
	}
	if a.sheet.isFeed() && a.sheet.Path.Word == "open" {
		p.Add(report.CautionNote(guardBack))
	}
	if far := math.Abs(a.scale.Error().Value) > farOff; far && !a.suspectsMistake() && !a.hasThen {
		links = append(links, a.swap().Any())
	}
	if repeats {
		p.Add(report.CautionOf("stay"), report.CautionOf("rollers"))
	}
	if len(links) > 0 {
		p.Add(report.Links{All: links})
	}
	return p
}

// findMistake is what to do before anything else where a mistake is likely.
func (a *solution) findMistake() []report.Line {
	if _, ok := a.mended(); ok {
		return []report.Line{report.Say(mendStep, "setting", a.withUnit(a.toSet()), "old", a.old("", a.now)), report.Say(thenCalibrateStep)}
	}
	return []report.Line{report.Say(mistakeStep), report.Say(noMistakeStep)}
}

// againstSlip says up to which speed the setting holds, and what slip is cured
// with.
func (a *solution) againstSlip() []report.Line {
	var items report.Sentences
	if v, ok := a.holdsUpTo(); ok && v > 0 {
		items.Say(noFasterStep, "speed", &report.Figure{Value: v, Unit: "mm/s", Digits: 2}, "rate", &report.Figure{Value: 60 * v, Unit: "mm/min", Digits: 2})
	}
	return append(items, report.Say(cureStep))
}

// confirm says in which band the next reading should fall.
func (a *solution) confirm() report.Line {
	if a.sheet.Method() != trial.OneLength {
		return report.Say(a.sheet.moves().OneLengthStep)
	}
	next, _ := a.test.Next(a.asked, 1) // the test was measured, so there can be another
	low, high := next.Interval()
	says, expect := expectMeasured, a.asked
	if mark := a.sheet.Mark.Number; mark > a.asked { // one for all runs
		says, expect = expectRemaining, mark-a.asked
		low, high = mark-high, mark-low
	}
	figure := func(id string, v float64) *report.Figure {
		f := a.length(id, "", v)
		f.Like = (high - low) / 2
		return f
	}
	return report.Say(says, "expect", a.length("expect", "", expect), "low", figure("low", low), "high", figure("high", high))
}

// again says what the second round shows.
func (a *solution) again() *report.Part {
	p := &report.Part{ID: "again", Title: againTitle, Needs: lists.Concat(a.readKeys, a.laterKeys)}
	title, stuck := a.stuck(a.stillThen)
	switch {
	case stuck != nil:
		p.Title, p.Blocks = title, stuck
		return p
	case !a.hasThen:
		return nil
	}
	e := a.then.Error()
	off := report.Percent("then", againLabel, e.Value, 0)
	off.U = a.wideThen()
	p.Add(report.FiguresOf(off))
	switch {
	case a.judgedThen.Verdict == measure.LeaveIt:
		p.Add(report.ParaOf(doneSays, "part", axis.TouchesTitle))
		if links := a.whenRight(a.corrected()); len(links) > 0 {
			p.Add(report.Links{All: links})
		}
	case a.judgedThen.Verdict == measure.ChangeIt && e.Value*a.scale.Error().Value > 0:
		p.Add(report.DoubtNote(sameSide))
	}
	return p
}

// Between these, in mm, lie the effective diameters of drive gears.
const leastGear, mostGear = 5, 20

// conventions shows the setting before and after in each convention that the
// given facts allow, and asks for the facts that are missing.
func (a *solution) conventions() *report.Part {
	p := &report.Part{ID: "conventions", Title: conventionsTitle,
		Needs: lists.Concat(a.allKeys, []string{"angle", "micro"}, a.sheet.GearEntry.Keys(""))}
	was, is := a.facts()
	show, found := a.setting, is
	if s, ok := a.mended(); ok {
		is.Setting, show = s, a.old
	}
	p.Blocks = axis.BeforeAndAfter(was, is, a.old, show)
	if a.sheet.GearEntry.Known() && a.sheet.Reduction() < 1 {
		p.Add(axis.TurnsFaster)
	}
	if travel, missing := found.In(drive.TravelPerOutputTurn); len(missing) == 0 && a.sheet.isFeed() {
		d := float64(drive.EffectiveDiameter(travel.Value))
		p.Add(report.Figures{All: []report.Figure{{ID: "diameter", Label: diameterLabel,
			Value: d, U: a.uncertainty(travel) * d / travel.Value, Unit: "mm", Digits: 4, Keep: true}}})
		if d < leastGear || d > mostGear {
			p.Add(report.DoubtNote(oddGear))
		}
	}
	return p
}

// nextBrief is what to do next, in a few words.
func (a *solution) nextBrief() string {
	if a.judged.Verdict == measure.LeaveIt {
		return elsewhereBrief
	}
	return nextBrief
}
