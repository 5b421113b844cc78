package swap

import (
	"math"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// solution is a swap as it was solved, on its way into words.
type solution struct {
	sheet   *entries
	changes []change
	factors drive.Factors
	setting drive.Setting // before
	given   bool
	keys    []string // of the parts
	allKeys []string // with the setting's
}

func (a *solution) answer() *report.Answer {
	c := a.setting.Convention
	f := axis.SettingFigure(axis.ConventionWords[c], a.setting.Rescaled(a.factors), a.sheet.rotary(), 7, false)
	f.Label = a.words(c).fresh
	old := axis.SettingFigure("", a.setting, a.sheet.rotary(), 7, false)
	says := report.Say(sameAsBefore, "old", old)
	if factor := a.factors.Of(c); matters(factor) {
		says = report.Say(timesBefore, "old", old, "factor", factorText(factor))
		if a.atMicrosteps() {
			says = report.Say(timesMicro, "old", old, "micro", a.sheet.was.Micro.Text(), "factor", factorText(factor))
		}
	}
	return &report.Answer{Figure: *f, Says: says, Needs: a.allKeys}
}

// words are those of a convention.
func (a *solution) words(c drive.Convention) settingWords {
	if a.sheet.rotary() {
		return perDegree[c]
	}
	return perMM[c]
}

// matters reports whether a factor changes anything.
func matters(factor float64) bool { return math.Abs(factor-1) >= 1e-12 }

func factorText(factor float64) string { return unit.Trim(factor, 6) }

// numbers shows the setting before and after in each convention.
func (a *solution) numbers() *report.Part {
	show := func(id string, s drive.Setting) *report.Figure {
		return axis.SettingFigure(id, s, a.sheet.rotary(), 7, false)
	}
	return &report.Part{ID: "conventions", Title: beforeAfterTitle,
		Needs:  lists.Concat(a.allKeys, []string{"angle" + axis.SuffixKept, "micro" + axis.SuffixKept}, a.sheet.kept.gears.Keys(axis.SuffixKept)),
		Blocks: axis.BeforeAndAfter(a.before(), a.after(), show, show),
	}
}

func (a *solution) before() axis.Fact { return a.sheet.fact(a.setting, &a.sheet.was, "") }

func (a *solution) after() axis.Fact {
	return a.sheet.fact(a.setting.Rescaled(a.factors), &a.sheet.now, axis.SuffixNew)
}

// touches says what the swap brings with it beside the setting.
func (a *solution) touches() *report.Part {
	s := a.sheet
	p := &report.Part{ID: "touches", Title: axis.TouchesTitle,
		Needs: lists.Concat(a.allKeys, []string{"angle" + axis.SuffixKept, "micro" + axis.SuffixKept}, s.kept.gears.Keys(axis.SuffixKept), axis.SpeedKeys)}
	t := axis.Change{TouchedEntry: &s.TouchedEntry, Was: a.before(), Is: a.after()}
	figure := func(f axis.Fact) string { return axis.SettingFigure("", f.Setting, s.rotary(), 7, false).String() }
	items := report.Sentences{report.Say(fedStays)}
	if s.Moves.Word != "feed" {
		items = report.Sentences{report.Say(movedStays)}
	}
	if figure(t.Was) != figure(t.Is) {
		items = append(items, axis.Elsewhere(figure(t.Was), figure(t.Is), s.Moves.Word != "feed")...)
	}
	if s.Changed.Has("angle") {
		items.Say(newMotor)
	}
	p.Add(report.Points{Items: items})
	p.Add(t.Pulses()...)
	return p
}

// effects says in one sentence for each part what changes and what stays.
func (a *solution) effects() *report.Part {
	p := &report.Part{ID: "effects", Title: effectsTitle, Needs: a.keys}
	var sentences []report.Line
	for _, c := range a.changes {
		if f, err := drive.Rescale(c.was, c.now); err == nil {
			sentences = append(sentences, a.effect(c.word, f))
		}
	}
	factor := func(id string, c drive.Convention) *report.Figure {
		return &report.Figure{ID: "x-" + id, Label: a.words(c).factor, Value: a.factors.Of(c), Digits: 7}
	}
	p.Add(report.Points{Items: sentences}, report.FiguresOf(
		factor(axis.AsSteps, drive.StepsPerUnit), factor(axis.AsTurn, drive.TravelPerTurn), factor(axis.AsOutput, drive.TravelPerOutputTurn),
	))
	return p
}

// effect says what one part does.
func (a *solution) effect(part string, f drive.Factors) report.Line {
	says := linearEffects
	switch {
	case !matters(f.Steps):
		says = noEffects
	case a.sheet.rotary():
		says = rotaryEffects
	}
	was, now := &a.sheet.was, &a.sheet.now
	steps, turn := factorText(f.Steps), factorText(f.Turn)
	switch part {
	case "angle":
		return report.Say(says.angle, "new", now.Angle.Text(), "old", was.Angle.Text(), "steps", steps, "fullsteps", a.sheet.fullSteps())
	case "micro":
		return report.Say(says.micro, "new", now.Micro.Text(), "old", was.Micro.Text(), "steps", steps)
	case "gears":
		return report.Say(says.gears, "new", now.ratioText(), "old", was.ratioText(), "steps", steps, "turn", turn)
	}
	return report.Say(says.out, "new", now.output.Describe(), "old", was.output.Describe(), "steps", steps, "turn", turn, "output", factorText(f.Output))
}

// fullSteps are those of the new motor.
func (s *entries) fullSteps() string {
	return unit.Trim(drive.Motor{StepAngle: s.now.Angle.Value()}.FullSteps(), 7)
}

func (t *trainEntry) ratioText() string { return unit.Trim(t.gears.Reduction(), 7) }

// entries names every entry that must change, and every one that stays.
func (a *solution) entries() *report.Part {
	p := &report.Part{ID: "entries", Title: entriesTitle, Needs: append([]string{"as"}, a.keys...)}
	p.Add(report.Points{Items: a.entriesOf(a.setting.Convention)}, report.ParaOf(restartTip))
	if a.given {
		p.Add(a.links())
	}
	return p
}

// others names the same where it is stored in another way.
func (a *solution) others() *report.Part {
	p := &report.Part{ID: "others", Title: othersTitle, Needs: append([]string{"as"}, a.keys...)}
	for _, c := range drive.Conventions {
		if c != a.setting.Convention {
			p.Add(report.Para{Line: report.Text(a.words(c).where)}, report.Points{Items: a.entriesOf(c)})
		}
	}
	return p
}

func (a *solution) entriesOf(c drive.Convention) []report.Line {
	s := a.sheet
	var all report.Sentences
	if name, f := axis.SettingName(c, s.rotary()), a.factors.Of(c); matters(f) {
		all.Say(multiplyEntry, "setting", name, "factor", factorText(f))
	} else {
		all.Say(leaveEntry, "setting", name)
	}
	entry := func(name, part, becomes string) {
		if s.differs(part) {
			all.Say(changeEntry, "setting", name, "new", becomes)
		} else {
			all.Say(leaveEntry, "setting", name)
		}
	}
	if c != drive.StepsPerUnit {
		entry(fullStepsEntry, "angle", s.fullSteps())
	}
	entry(microstepsEntry, "micro", s.now.Micro.Text())
	if c == drive.TravelPerOutputTurn {
		entry(gearRatioEntry, "gears", s.now.ratioText())
	}
	return all
}

// check is what to see to before and after.
func (a *solution) check() *report.Part {
	p := &report.Part{ID: "check", Title: checkTitle, Needs: a.keys}
	p.Caution("maker", "wiring")
	if a.sheet.Changed.Has("angle") {
		p.Caution("swap")
	}
	p.Caution("rollers")
	test := thenTest
	if a.sheet.Changed.Has("out") && a.sheet.now.output.Kind.Word == "roller" {
		test = thenTestDrive
	}
	p.Add(report.Para{Line: report.Text(test)})
	return p
}

// links lead on with the new setting.
func (a *solution) links() report.Block {
	links := []report.Link{a.toMeasure()}
	if l, ok := a.toRate(); ok {
		links = append(links, l)
	}
	return report.Links{All: links}
}

// toMeasure hands the new setting over to the page that verifies it.
func (a *solution) toMeasure() report.Link {
	moves := word.Table{{"linear", "travel"}, {"rotary", "rotary"}}.Of(a.sheet.Moves.Word)
	as := axis.ConventionWords[a.setting.Convention]
	if as == axis.AsSteps {
		as = "" // the default
	}
	return axis.LinkTo(toCalibrate, "measure", axis.Fills("axis", moves, "as", as,
		axis.SettingKey(a.setting.Convention, a.sheet.rotary()), unit.PlainTrim(a.setting.Rescaled(a.factors).Value, 7))...)
}

// toRate hands before and after over to the page of pulse rates, if both can be
// given in steps.
func (a *solution) toRate() (report.Link, bool) {
	was, is := a.before(), a.after()
	before, missing := was.In(drive.StepsPerUnit)
	after, missingAfter := is.In(drive.StepsPerUnit)
	if len(missing)+len(missingAfter) > 0 {
		return report.Link{}, false
	}
	steps, stepsAfter := "steps", "steps"+axis.SuffixNew
	moves := a.sheet.Moves.Word
	fastest := "fast"
	switch moves {
	case "linear":
		moves = "" // the default
	case "feed":
		fastest = "back"
	case "rotary":
		steps, stepsAfter = "stepsdeg", "stepsdeg"+axis.SuffixNew
	}
	entries := axis.Fills(
		"compare", "swap", "moves", moves, steps, unit.PlainTrim(before.Value, 8),
		"angle", positiveText(float64(was.Motor.StepAngle)), "micro", positiveText(float64(was.Motor.Microsteps)),
		fastest, a.sheet.Fastest.Bare(), stepsAfter, unit.PlainTrim(after.Value, 8))
	if a.sheet.Changed.Has("angle") {
		entries = append(entries, axis.Fill("angle"+axis.SuffixNew, positiveText(float64(is.Motor.StepAngle))))
	}
	if a.sheet.Changed.Has("micro") {
		entries = append(entries, axis.Fill("micro"+axis.SuffixNew, positiveText(float64(is.Motor.Microsteps))))
	}
	return axis.LinkTo(toStepRate, "rate", append(entries, axis.Fill("limit", a.sheet.Limit.Bare()))...), true
}

// positiveText is a number of a part that is given; 0 is one that is not.
func positiveText(v float64) string {
	if v == 0 {
		return ""
	}
	return unit.Full(v)
}
