package calc

import (
	"math"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/unit"
)

// swapped is a swap as it was solved, on its way into words.
type swapped struct {
	sheet   *swapSheet
	changes []change
	factors drive.Factors
	setting drive.Setting // before
	given   bool
	keys    []string // of the parts
	allKeys []string // with the setting's
}

func (a *swapped) answer() *Answer {
	word := conventionWords[a.setting.Convention]
	f := settingFigure(word, a.setting.Rescaled(a.factors), a.sheet.rotary(), 7, false)
	f.Label = "New setting, " + strings.ToLower(f.Label)
	old := settingFigure("", a.setting, a.sheet.rotary(), 7, false)
	says := say("It was ", old, " and "+times(a.factors.Of(a.setting.Convention))+". A correction that a measurement put into the old value is carried over.")
	return &Answer{Figure: *f, Says: says, Needs: a.allKeys}
}

// numbers shows the setting before and after in each convention.
func (a *swapped) numbers() *Part {
	show := func(id string, s drive.Setting) *Figure { return settingFigure(id, s, a.sheet.rotary(), 7, false) }
	return &Part{ID: "conventions", Title: "Before and after",
		Needs:  lists.Concat(a.allKeys, []string{"angle" + suffixKept, "micro" + suffixKept}, a.sheet.kept.gears.keys(suffixKept)),
		Blocks: beforeAndAfter(a.before(), a.after(), show, show),
	}
}

func (a *swapped) before() fact { return a.sheet.fact(a.setting, &a.sheet.was, "") }

func (a *swapped) after() fact {
	return a.sheet.fact(a.setting.Rescaled(a.factors), &a.sheet.now, suffixNew)
}

// touches says what the swap brings with it beside the setting.
func (a *swapped) touches() *Part {
	s := a.sheet
	p := &Part{ID: "touches", Title: touchesTitle,
		Needs: lists.Concat(a.allKeys, []string{"angle" + suffixKept, "micro" + suffixKept}, s.kept.gears.keys(suffixKept), speedKeys)}
	t := touched{&s.touchedEntry, a.before(), a.after()}
	figure := func(f fact) string { return settingFigure("", f.setting, s.rotary(), 7, false).String() }
	items := sentences{say("Lengths in mm, such as retraction, and the flow factor stay as they are if the old setting was right. If it was not, measure, and go by that page.")}
	if s.Moves.Word != "feed" {
		items = sentences{say("Positions and lengths stay as they are if the old setting was right.")}
	}
	if figure(t.was) != figure(t.is) {
		items = append(items, elsewhere(figure(t.was), figure(t.is), s.Moves.Word != "feed")...)
	}
	if s.Changed.Has("angle") {
		items.say("The driver's current and the motor's direction: see below, before it runs.")
	}
	p.add(Points{items})
	p.add(t.pulses()...)
	return p
}

// effects says in one sentence for each part what moves and what stays.
func (a *swapped) effects() *Part {
	p := &Part{ID: "effects", Title: "What moves, what stays", Needs: a.keys}
	var sentences []Line
	for _, c := range a.changes {
		if f, err := drive.Rescale(c.was, c.now); err == nil {
			sentences = append(sentences, c.says(f, a.sheet.rotary()))
		}
	}
	factor := func(id string, c drive.Convention) *Figure {
		return &Figure{ID: "x-" + id, Label: settingName(c, a.sheet.rotary()) + ", multiplied by", Value: a.factors.Of(c), Digits: 7}
	}
	p.add(Points{sentences}, figuresOf(
		factor(asSteps, drive.StepsPerUnit), factor(asTurn, drive.TravelPerTurn), factor(asOutput, drive.TravelPerOutputTurn),
	))
	return p
}

// entries names, for each convention, every entry that must change and every
// one that stays.
func (a *swapped) entries() *Part {
	p := &Part{ID: "entries", Title: "Which entries to change", Needs: a.keys}
	conventions := drive.Conventions
	if own := a.setting.Convention; a.given { // the person's own first
		conventions = []drive.Convention{own}
		for _, c := range drive.Conventions {
			if c != own {
				conventions = append(conventions, c)
			}
		}
	}
	for _, c := range conventions {
		p.add(para("Where the controller stores "+strings.ToLower(settingName(c, a.sheet.rotary()))+":"), Points{a.entriesOf(c)})
	}
	p.add(tipNote("Entries of a configuration are read at the start: restart the controller after changing them. A line that is sent works at once, and is gone after a restart unless it is stored."))
	return p
}

func (a *swapped) entriesOf(c drive.Convention) []Line {
	name := settingName(c, a.sheet.rotary())
	verdict := func(name string, must bool, to string) Line {
		if must {
			return say(name + ": must change" + to + ".")
		}
		return say(name + ": stays.")
	}
	f := a.factors.Of(c)
	entries := []Line{verdict(name, math.Abs(f-1) >= 1e-12, "; it "+times(f))}
	s := a.sheet
	if c != drive.StepsPerUnit {
		steps := drive.Motor{StepAngle: s.now.Angle.Value()}.FullSteps()
		entries = append(entries, verdict("Full steps per turn", s.differs("angle"), " to "+unit.Trim(steps, 7)))
	}
	entries = append(entries, verdict("Microsteps, if the controller sets the driver", s.differs("micro"), " to "+s.now.Micro.Text()))
	if c == drive.TravelPerOutputTurn {
		entries = append(entries, verdict("Gear ratio", s.differs("gears"), " to "+unit.Trim(s.now.gears.reduction(), 7)))
	}
	return entries
}

// check is what to see to before and after.
func (a *swapped) check() *Part {
	p := &Part{ID: "check", Title: "Before it runs, and after", Needs: a.keys}
	p.caution("maker", "wiring")
	if a.sheet.Changed.Has("angle") {
		p.caution("swap")
	}
	p.caution("rollers")
	measured := say("Then measure: a short test move shows whether the new value is right.")
	if a.sheet.Changed.Has("out") && a.sheet.now.output.Kind.Word == "roller" {
		measured = say("Then measure: the effective diameter of a roller is known only from a test.")
	}
	p.add(Para{measured})
	if a.given {
		links := []Link{a.toMeasure()}
		if l, ok := a.toRate(); ok {
			links = append(links, l)
		}
		p.add(Links{links})
	}
	return p
}

// toMeasure hands the new setting over to the page that verifies it.
func (a *swapped) toMeasure() Link {
	axis := worded{{"linear", "travel"}, {"rotary", "rotary"}}.of(a.sheet.Moves.Word)
	as := conventionWords[a.setting.Convention]
	if as == asSteps {
		as = "" // the default
	}
	return hand("Measure with the new setting", "measure", fills("axis", axis, "as", as,
		settingKey(a.setting.Convention, a.sheet.rotary()), unit.Trim(a.setting.Rescaled(a.factors).Value, 7))...)
}

// toRate hands before and after over to the page of pulse rates, if both can be
// told in steps.
func (a *swapped) toRate() (Link, bool) {
	was, is := a.before(), a.after()
	before, missing := was.in(drive.StepsPerUnit)
	after, missingAfter := is.in(drive.StepsPerUnit)
	if len(missing)+len(missingAfter) > 0 {
		return Link{}, false
	}
	steps, stepsAfter := "steps", "steps"+suffixNew
	moves := a.sheet.Moves.Word
	fastest := "fast"
	switch moves {
	case "linear":
		moves = "" // the default
	case "feed":
		fastest = "back"
	case "rotary":
		steps, stepsAfter = "stepsdeg", "stepsdeg"+suffixNew
	}
	entries := fills(
		"compare", "swap", "moves", moves, steps, unit.Trim(before.Value, 8),
		"angle", positiveText(float64(was.motor.StepAngle)), "micro", positiveText(float64(was.motor.Microsteps)),
		fastest, a.sheet.Fastest.Bare(), stepsAfter, unit.Trim(after.Value, 8))
	if a.sheet.Changed.Has("angle") {
		entries = append(entries, fill("angle"+suffixNew, positiveText(float64(is.motor.StepAngle))))
	}
	if a.sheet.Changed.Has("micro") {
		entries = append(entries, fill("micro"+suffixNew, positiveText(float64(is.motor.Microsteps))))
	}
	return hand("Speed and step rate, before and after", "rate", append(entries, fill("limit", a.sheet.Limit.Bare()))...), true
}

// positiveText is a number of a part that is told; 0 stands for not.
func positiveText(v float64) string {
	if v == 0 {
		return ""
	}
	return unit.Full(v)
}
