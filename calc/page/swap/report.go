package swap

import (
	"math"
	"strings"

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
	word := axis.ConventionWords[a.setting.Convention]
	f := axis.SettingFigure(word, a.setting.Rescaled(a.factors), a.sheet.rotary(), 7, false)
	f.Label = "New setting, " + strings.ToLower(f.Label)
	old := axis.SettingFigure("", a.setting, a.sheet.rotary(), 7, false)
	says := report.Say("It was ", old, " and "+times(a.factors.Of(a.setting.Convention))+". A correction that a measurement put into the old value is carried over.")
	return &report.Answer{Figure: *f, Says: says, Needs: a.allKeys}
}

// numbers shows the setting before and after in each convention.
func (a *solution) numbers() *report.Part {
	show := func(id string, s drive.Setting) *report.Figure {
		return axis.SettingFigure(id, s, a.sheet.rotary(), 7, false)
	}
	return &report.Part{ID: "conventions", Title: "Before and after",
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
	items := report.Sentences{report.Say("Lengths in mm, such as retraction, and the flow factor stay as they are if the old setting was right. If it was not, measure, and go by that page.")}
	if s.Moves.Word != "feed" {
		items = report.Sentences{report.Say("Positions and lengths stay as they are if the old setting was right.")}
	}
	if figure(t.Was) != figure(t.Is) {
		items = append(items, axis.Elsewhere(figure(t.Was), figure(t.Is), s.Moves.Word != "feed")...)
	}
	if s.Changed.Has("angle") {
		items.Say("The driver's current and the motor's direction: see below, before it runs.")
	}
	p.Add(report.Points{Items: items})
	p.Add(t.Pulses()...)
	return p
}

// effects says in one sentence for each part what moves and what stays.
func (a *solution) effects() *report.Part {
	p := &report.Part{ID: "effects", Title: "What moves, what stays", Needs: a.keys}
	var sentences []report.Line
	for _, c := range a.changes {
		if f, err := drive.Rescale(c.was, c.now); err == nil {
			sentences = append(sentences, c.says(f, a.sheet.rotary()))
		}
	}
	factor := func(id string, c drive.Convention) *report.Figure {
		return &report.Figure{ID: "x-" + id, Label: axis.SettingName(c, a.sheet.rotary()) + ", multiplied by", Value: a.factors.Of(c), Digits: 7}
	}
	p.Add(report.Points{Items: sentences}, report.FiguresOf(
		factor(axis.AsSteps, drive.StepsPerUnit), factor(axis.AsTurn, drive.TravelPerTurn), factor(axis.AsOutput, drive.TravelPerOutputTurn),
	))
	return p
}

// entries names, for each convention, every entry that must change and every
// one that stays.
func (a *solution) entries() *report.Part {
	p := &report.Part{ID: "entries", Title: "Which entries to change", Needs: append([]string{"as"}, a.keys...)}
	own := a.setting.Convention
	conventions := []drive.Convention{own} // the person's own first
	for _, c := range drive.Conventions {
		if c != own {
			conventions = append(conventions, c)
		}
	}
	for _, c := range conventions {
		p.Add(report.ParaOf("Where the controller stores "+strings.ToLower(axis.SettingName(c, a.sheet.rotary()))+":"), report.Points{Items: a.entriesOf(c)})
	}
	p.Add(report.TipNote("Entries of a configuration are read at the start: restart the controller after changing them. A line that is sent works at once, and is gone after a restart unless it is stored."))
	return p
}

func (a *solution) entriesOf(c drive.Convention) []report.Line {
	name := axis.SettingName(c, a.sheet.rotary())
	verdict := func(name string, must bool, to string) report.Line {
		if must {
			return report.Say(name + ": must change" + to + ".")
		}
		return report.Say(name + ": stays.")
	}
	f := a.factors.Of(c)
	entries := []report.Line{verdict(name, math.Abs(f-1) >= 1e-12, "; it "+times(f))}
	s := a.sheet
	if c != drive.StepsPerUnit {
		steps := drive.Motor{StepAngle: s.now.Angle.Value()}.FullSteps()
		entries = append(entries, verdict("Full steps per turn", s.differs("angle"), " to "+unit.Trim(steps, 7)))
	}
	entries = append(entries, verdict("Microsteps, if the controller sets the driver", s.differs("micro"), " to "+s.now.Micro.Text()))
	if c == drive.TravelPerOutputTurn {
		entries = append(entries, verdict("Gear ratio", s.differs("gears"), " to "+unit.Trim(s.now.gears.Reduction(), 7)))
	}
	return entries
}

// check is what to see to before and after.
func (a *solution) check() *report.Part {
	p := &report.Part{ID: "check", Title: "Before it runs, and after", Needs: a.keys}
	p.Caution("maker", "wiring")
	if a.sheet.Changed.Has("angle") {
		p.Caution("swap")
	}
	p.Caution("rollers")
	measured := report.Say("Then measure: a short test move shows whether the new value is right.")
	if a.sheet.Changed.Has("out") && a.sheet.now.output.Kind.Word == "roller" {
		measured = report.Say("Then measure: the effective diameter of a roller is known only from a test.")
	}
	p.Add(report.Para{Line: measured})
	if a.given {
		links := []report.Link{a.toMeasure()}
		if l, ok := a.toRate(); ok {
			links = append(links, l)
		}
		p.Add(report.Links{All: links})
	}
	return p
}

// toMeasure hands the new setting over to the page that verifies it.
func (a *solution) toMeasure() report.Link {
	moves := word.Table{{"linear", "travel"}, {"rotary", "rotary"}}.Of(a.sheet.Moves.Word)
	as := axis.ConventionWords[a.setting.Convention]
	if as == axis.AsSteps {
		as = "" // the default
	}
	return axis.LinkTo("Measure with the new setting", "measure", axis.Fills("axis", moves, "as", as,
		axis.SettingKey(a.setting.Convention, a.sheet.rotary()), unit.Trim(a.setting.Rescaled(a.factors).Value, 7))...)
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
		"compare", "swap", "moves", moves, steps, unit.Trim(before.Value, 8),
		"angle", positiveText(float64(was.Motor.StepAngle)), "micro", positiveText(float64(was.Motor.Microsteps)),
		fastest, a.sheet.Fastest.Bare(), stepsAfter, unit.Trim(after.Value, 8))
	if a.sheet.Changed.Has("angle") {
		entries = append(entries, axis.Fill("angle"+axis.SuffixNew, positiveText(float64(is.Motor.StepAngle))))
	}
	if a.sheet.Changed.Has("micro") {
		entries = append(entries, axis.Fill("micro"+axis.SuffixNew, positiveText(float64(is.Motor.Microsteps))))
	}
	return axis.LinkTo("Speed and step rate, before and after", "rate", append(entries, axis.Fill("limit", a.sheet.Limit.Bare()))...), true
}

// positiveText is a number of a part that is given; 0 is one that is not.
func positiveText(v float64) string {
	if v == 0 {
		return ""
	}
	return unit.Full(v)
}
