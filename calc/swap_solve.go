package calc

import (
	"math"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/unit"
)

// A change is one part of a swap.
type change struct {
	word     string // of the tick
	with     string // "64 instead of 32 microsteps"
	was, now drive.Parts
	missing  []string
	keys     []string
	beside   string // the entry that must change with travel per turn: "the microsteps entry must become 64"
	ratio    bool   // that entry stands beside travel per output turn only
}

// changes returns what was ticked, in the order of the list.
func (s *swapSheet) changes() []change {
	var all []change
	if s.Changed.Has("angle") {
		c := change{word: "angle", keys: []string{"angle", "anglenew"}}
		a, b := s.was.Angle, s.now.Angle
		c.need("angle", a.Given)
		c.need("anglenew", b.Given)
		c.was.StepAngle, c.now.StepAngle = a.Value, b.Value
		if len(c.missing) == 0 {
			c.with = "a step angle of " + b.String() + " instead of " + a.String()
			c.beside = "the entry of full steps per turn must become " + unit.Trim(drive.Motor{StepAngle: b.Value}.FullSteps(), 7)
		}
		all = append(all, c)
	}
	if s.Changed.Has("micro") {
		c := change{word: "micro", keys: []string{"micro", "micronew"}}
		a, b := s.was.Micro, s.now.Micro
		c.need("micro", a.Given)
		c.need("micronew", b.Given)
		c.was.Microsteps, c.now.Microsteps = a.Value, b.Value
		c.with = b.String() + " instead of " + a.String() + " microsteps"
		c.beside = "the microsteps entry must become " + b.String()
		all = append(all, c)
	}
	if s.Changed.Has("gears") {
		c := change{word: "gears", keys: concat([]string{"gears", "gears" + fresh}, s.was.gears.keys(""), s.now.gears.keys(fresh)), ratio: true}
		c.missing = concat(s.was.gears.missing(""), s.now.gears.missing(fresh))
		s.was.gears.put(&c.was)
		s.now.gears.put(&c.now)
		if len(c.missing) == 0 {
			c.with = "a gear ratio of " + unit.Trim(s.now.gears.reduction(), 7) + " instead of " + unit.Trim(s.was.gears.reduction(), 7)
			c.beside = "the gear ratio must become " + unit.Trim(s.now.gears.reduction(), 7)
		}
		all = append(all, c)
	}
	if s.Changed.Has("out") {
		c := change{word: "out", keys: concat(s.was.output.keys(""), s.now.output.keys(fresh))}
		var missingWas, missingNow []string
		c.was.Output, missingWas = s.was.output.element("")
		c.now.Output, missingNow = s.now.output.element(fresh)
		c.missing = concat(missingWas, missingNow)
		if len(c.missing) == 0 {
			c.with = s.now.output.describe() + " instead of " + s.was.output.describe()
		}
		all = append(all, c)
	}
	return all
}

func (c *change) need(key string, given bool) {
	if !given {
		c.missing = append(c.missing, key)
	}
}

// says is the change in one sentence: which numbers move and which stay, and
// the entry beside them.
func (c change) says(f drive.Factors, rotary bool) Line {
	s := "With " + c.with + " the setting in " + strings.ToLower(settingName(drive.StepsPerUnit, rotary)) + " " + times(f.Steps) +
		"; travel per motor turn " + times(f.Turn)
	if f.Turn == 1 && c.beside != "" {
		return say(s + ", but " + c.beside + ".")
	}
	s += "; travel per output turn " + times(f.Output)
	if f.Output == 1 && c.beside != "" {
		s += ", but " + c.beside
	}
	return say(s + ".")
}

// times says what a factor does.
func times(f float64) string {
	switch {
	case math.Abs(f-1) < 1e-12:
		return "stays"
	case math.Abs(f-2) < 1e-12:
		return "doubles"
	case math.Abs(f-0.5) < 1e-12:
		return "halves"
	}
	return "is multiplied by " + unit.Trim(f, 6)
}

func (s *swapSheet) rotary() bool { return s.Moves.Word == "rotary" }

// A train is motor and gearing before or after the swap, put together from
// what changed and what stayed, with the keys of what is missing.
type train struct {
	motor        drive.Motor
	gears        *gearEntry
	motorMissing []string
	gearsMissing []string
}

func (s *swapSheet) train(changed *trainEntry, suffix string) train {
	from := func(part string) (*trainEntry, string) {
		if s.Changed.Has(part) {
			return changed, suffix
		}
		return &s.kept, kept
	}
	angle, angleSuffix := from("angle")
	micro, microSuffix := from("micro")
	gears, gearsSuffix := from("gears")
	t := train{
		motor:        drive.Motor{StepAngle: angle.Angle.Value, Microsteps: micro.Micro.Value},
		gears:        &gears.gears,
		gearsMissing: gears.gears.missing(gearsSuffix),
	}
	if !angle.Angle.Given {
		t.motorMissing = append(t.motorMissing, "angle"+angleSuffix)
	}
	if !micro.Micro.Given {
		t.motorMissing = append(t.motorMissing, "micro"+microSuffix)
	}
	return t
}

func (s *swapSheet) Solve() Report {
	var r Report
	all := s.changes()
	if len(all) == 0 {
		r.Parts = []Part{{ID: "missing", Title: "Still needed", Blocks: []Block{Ask{[]string{"changed"}, "what moves and what stays"}}}}
		return r
	}
	var was, now drive.Parts
	var missing []string
	keys := []string{"changed", "moves"}
	for _, c := range all {
		missing = append(missing, c.missing...)
		keys = append(keys, c.keys...)
		was, now = merged(was, c.was), merged(now, c.now)
	}
	if len(missing) > 0 {
		r.Parts = []Part{{ID: "missing", Title: "Still needed", Blocks: []Block{Ask{missing, "what moves and what stays"}}}}
		return r
	}
	factors, err := drive.Rescale(was, now)
	if err != nil {
		r.Problems = []Problem{{"out" + fresh, 0, err.Error() + ". Choose an element of the same sort on both sides, or use the page for the parts of a new axis."}}
		return r
	}
	setting, settingKey, given := s.setting(s.rotary())
	a := swapped{s, all, factors, setting, given, keys, concat(keys, []string{"as", settingKey})}
	if given {
		r.Answer = a.answer()
		r.Parts = append(r.Parts, a.numbers())
	} else {
		r.Parts = append(r.Parts, Part{ID: "missing", Title: "Still needed", Needs: keys,
			Blocks: []Block{Ask{[]string{settingKey}, "the new value; its factor is known already"}}})
	}
	r.Parts = append(r.Parts, a.effects(), a.entries(), a.check())
	return r
}

// merged adds the parts that b names to a.
func merged(a, b drive.Parts) drive.Parts {
	if b.StepAngle > 0 {
		a.StepAngle = b.StepAngle
	}
	if b.Microsteps > 0 {
		a.Microsteps = b.Microsteps
	}
	if b.Stages != nil || b.Ratio > 0 {
		a.Stages, a.Ratio = b.Stages, b.Ratio
	}
	if b.Output != nil {
		a.Output = b.Output
	}
	return a
}

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
	return &Answer{Figure: f, Says: says, Needs: a.allKeys}
}

// numbers shows the setting before and after in each convention.
func (a *swapped) numbers() Part {
	p := Part{ID: "conventions", Title: "Before and after", Needs: concat(a.allKeys, []string{"angle" + kept, "micro" + kept}, a.sheet.kept.gears.keys(kept))}
	t := Table{Caption: "Before and after", Head: []string{"", "Before", "After"}}
	var asks []Block
	was, now := a.sheet.train(&a.sheet.was, ""), a.sheet.train(&a.sheet.now, fresh)
	for _, to := range drive.Conventions {
		var missing []string
		motor, gears := drive.Facts(a.setting.Convention, to)
		if motor {
			missing = append(missing, was.motorMissing...)
		}
		if gears {
			missing = append(missing, was.gearsMissing...)
		}
		name := settingName(to, a.sheet.rotary())
		if len(missing) > 0 {
			asks = append(asks, Ask{missing, strings.ToLower(name)})
			continue
		}
		before := was.gears.in(a.setting, to, was.motor)
		after := settingFigure(conventionWords[to], now.gears.in(a.setting.Rescaled(a.factors), to, now.motor), a.sheet.rotary(), 7, false)
		if to == a.setting.Convention {
			after.ID = "" // the headline has it
		}
		t.Rows = append(t.Rows, []Line{say(name),
			say(settingFigure("was-"+conventionWords[to], before, a.sheet.rotary(), 7, false)), say(after)})
	}
	p.Blocks = append([]Block{t}, asks...)
	return p
}

// effects says in one sentence for each part what moves and what stays.
func (a *swapped) effects() Part {
	p := Part{ID: "effects", Title: "What moves, what stays", Needs: a.keys}
	var sentences []Line
	for _, c := range a.changes {
		if f, err := drive.Rescale(c.was, c.now); err == nil {
			sentences = append(sentences, c.says(f, a.sheet.rotary()))
		}
	}
	factor := func(id string, c drive.Convention) Figure {
		return Figure{ID: "x-" + id, Label: settingName(c, a.sheet.rotary()) + ", multiplied by", Value: a.factors.Of(c), Digits: 7}
	}
	p.Blocks = []Block{Points{sentences}, Figures{[]Figure{
		factor(asSteps, drive.StepsPerUnit), factor(asTurn, drive.TravelPerTurn), factor(asOutput, drive.TravelPerOutputTurn),
	}}}
	return p
}

// entries names, for each convention, every entry that must change and every
// one that stays.
func (a *swapped) entries() Part {
	p := Part{ID: "entries", Title: "Which entries to change", Needs: a.keys}
	for _, c := range drive.Conventions {
		p.Blocks = append(p.Blocks, Para{say("Where the controller stores " + strings.ToLower(settingName(c, a.sheet.rotary())) + ":")}, Points{a.entriesOf(c)})
	}
	p.Blocks = append(p.Blocks, Note{Tip, say("Entries of a configuration are read at the start: restart the controller after changing them. A line that is sent works at once, and is gone after a restart unless it is stored.")})
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
	changed := &a.sheet.Changed
	if c != drive.StepsPerUnit {
		to := ""
		if changed.Has("angle") {
			to = " to " + unit.Trim(drive.Motor{StepAngle: a.sheet.now.Angle.Value}.FullSteps(), 7)
		}
		entries = append(entries, verdict("Full steps per turn", changed.Has("angle"), to))
	}
	entries = append(entries, verdict("Microsteps, if the controller sets the driver", changed.Has("micro"), " to "+a.sheet.now.Micro.String()))
	if c == drive.TravelPerOutputTurn {
		to := ""
		if changed.Has("gears") {
			to = " to " + unit.Trim(a.sheet.now.gears.reduction(), 7)
		}
		entries = append(entries, verdict("Gear ratio", changed.Has("gears"), to))
	}
	return entries
}

// check is what to see to before and after.
func (a *swapped) check() Part {
	p := Part{ID: "check", Title: "Before it runs, and after", Needs: a.keys}
	p.Blocks = append(p.Blocks, caution("maker"), caution("wiring"))
	if a.sheet.Changed.Has("angle") {
		p.Blocks = append(p.Blocks, caution("swap"))
	}
	p.Blocks = append(p.Blocks, caution("rollers"))
	measured := say("Then measure: a short test move shows whether the new value is right.")
	if a.sheet.Changed.Has("out") && a.sheet.now.output.Kind.Word == "roller" {
		measured = say("Then measure: the effective diameter of a roller is known only from a test.")
	}
	p.Blocks = append(p.Blocks, Para{measured})
	if a.given {
		p.Blocks = append(p.Blocks, Links{[]Link{a.toMeasure()}})
	}
	return p
}

// toMeasure hands the new setting over to the page that verifies it.
func (a *swapped) toMeasure() Link {
	word := conventionWords[a.setting.Convention]
	pieces := []piece{{"v", []string{Version}}}
	key := word
	switch {
	case a.sheet.rotary():
		pieces = append(pieces, piece{"axis", []string{"rotary"}})
		key += "deg"
	case a.sheet.now.output.Kind.Word != "roller" && a.sheet.Changed.Has("out"):
		pieces = append(pieces, piece{"axis", []string{"travel"}})
	}
	if word != asSteps {
		pieces = append(pieces, piece{"as", []string{word}})
	}
	pieces = append(pieces, piece{key, []string{unit.Trim(a.setting.Rescaled(a.factors).Value, 7)}})
	return Link{"Measure with the new setting", "measure", join(pieces)}
}
