package swap

import (
	"math"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/report"
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
}

// changes returns what was ticked, in the order of the list.
func (s *entries) changes() []change {
	var all []change
	if s.Changed.Has("angle") {
		c := change{word: "angle", keys: []string{"angle", "anglenew"}}
		a, b := s.was.Angle, s.now.Angle
		c.need("angle", a.Given)
		c.need("anglenew", b.Given)
		c.was.StepAngle, c.now.StepAngle = a.Value(), b.Value()
		if len(c.missing) == 0 {
			c.with = "a step angle of " + b.Text() + " instead of " + a.Text()
			if s.differs("angle") {
				c.beside = "the entry of full steps per turn must become " + unit.Trim(drive.Motor{StepAngle: b.Value()}.FullSteps(), 7)
			}
		}
		all = append(all, c)
	}
	if s.Changed.Has("micro") {
		c := change{word: "micro", keys: []string{"micro", "micronew"}}
		a, b := s.was.Micro, s.now.Micro
		c.need("micro", a.Given)
		c.need("micronew", b.Given)
		c.was.Microsteps, c.now.Microsteps = a.Value(), b.Value()
		c.with = b.Text() + " instead of " + a.Text() + " microsteps"
		if s.differs("micro") {
			c.beside = "the microsteps entry must become " + b.Text()
		}
		all = append(all, c)
	}
	if s.Changed.Has("gears") {
		c := change{word: "gears", keys: lists.Concat([]string{"gears", "gears" + axis.SuffixNew}, s.was.gears.Keys(""), s.now.gears.Keys(axis.SuffixNew))}
		c.missing = lists.Concat(s.was.gears.Missing(""), s.now.gears.Missing(axis.SuffixNew))
		s.was.gears.Put(&c.was)
		s.now.gears.Put(&c.now)
		if len(c.missing) == 0 {
			c.with = "a gear ratio of " + unit.Trim(s.now.gears.Reduction(), 7) + " instead of " + unit.Trim(s.was.gears.Reduction(), 7)
			if s.differs("gears") {
				c.beside = "the gear ratio must become " + unit.Trim(s.now.gears.Reduction(), 7)
			}
		}
		all = append(all, c)
	}
	if s.Changed.Has("out") {
		c := change{word: "out", keys: lists.Concat(s.was.output.Keys(""), s.now.output.Keys(axis.SuffixNew))}
		var missingWas, missingNow []string
		c.was.Output, missingWas = s.was.output.Element("")
		c.now.Output, missingNow = s.now.output.Element(axis.SuffixNew)
		c.missing = lists.Concat(missingWas, missingNow)
		if len(c.missing) == 0 {
			c.with = s.now.output.Describe() + " instead of " + s.was.output.Describe()
		}
		all = append(all, c)
	}
	return all
}

// differs reports whether a part that was ticked, and is given, has another figure now.
func (s *entries) differs(part string) bool {
	if !s.Changed.Has(part) {
		return false
	}
	switch part {
	case "angle":
		return s.was.Angle.Number != s.now.Angle.Number
	case "micro":
		return s.was.Micro.Number != s.now.Micro.Number
	}
	return math.Abs(s.now.gears.Reduction()/s.was.gears.Reduction()-1) >= 1e-12
}

func (c *change) need(key string, given bool) {
	if !given {
		c.missing = append(c.missing, key)
	}
}

// says is the change in one sentence: which numbers move and which stay, and
// the entry beside them.
func (c change) says(f drive.Factors, rotary bool) report.Line {
	s := "With " + c.with + " the setting in " + strings.ToLower(axis.SettingName(drive.StepsPerUnit, rotary)) + " " + times(f.Steps) +
		"; travel per motor turn " + times(f.Turn)
	if f.Turn == 1 && c.beside != "" {
		return report.Say(s + ", but " + c.beside + ".")
	}
	s += "; travel per output turn " + times(f.Output)
	if f.Output == 1 && c.beside != "" {
		s += ", but " + c.beside
	}
	return report.Say(s + ".")
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

func (s *entries) rotary() bool { return s.Moves.Word == "rotary" }

// fact puts a setting into the drivetrain before or after the swap: what
// changed, with its suffix, and what stayed.
func (s *entries) fact(setting drive.Setting, changed *trainEntry, suffix string) axis.Fact {
	from := func(part string) (*trainEntry, string) {
		if s.Changed.Has(part) {
			return changed, suffix
		}
		return &s.kept, axis.SuffixKept
	}
	angle, angleSuffix := from("angle")
	micro, microSuffix := from("micro")
	gears, gearsSuffix := from("gears")
	f := axis.Fact{
		Setting: setting,
		Rotary:  s.rotary(),
		Motor:   drive.Motor{StepAngle: angle.Angle.Value(), Microsteps: micro.Micro.Value()},
		Gears:   &gears.gears,
		NoGears: gears.gears.Missing(gearsSuffix),
	}
	if !angle.Angle.Given {
		f.NoMotor = append(f.NoMotor, "angle"+angleSuffix)
	}
	if !micro.Micro.Given {
		f.NoMotor = append(f.NoMotor, "micro"+microSuffix)
	}
	return f
}

func (s *entries) Solve() report.Report {
	var r report.Report
	all := s.changes()
	if len(all) == 0 {
		r.Add(&report.Part{ID: "missing", Title: "Still needed", Blocks: []report.Block{report.Ask{Keys: []string{"changed"}, For: "what moves and what stays"}}})
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
		r.Add(&report.Part{ID: "missing", Title: "Still needed", Blocks: []report.Block{report.Ask{Keys: missing, For: "what moves and what stays"}}})
		return r
	}
	factors, err := drive.Rescale(was, now)
	if err != nil {
		r.Problems = []report.Problem{{Key: "out" + axis.SuffixNew, Row: 0, Says: err.Error() + ". Choose an element of the same sort on both sides, or use the page for the parts of a new axis."}}
		return r
	}
	setting, settingKey, given := s.Setting(s.rotary())
	a := solution{s, all, factors, setting, given, keys, lists.Concat(keys, []string{"as", settingKey})}
	if given {
		r.Answer = a.answer()
		r.Add(a.numbers(), a.stepPicture())
	} else {
		r.Add(&report.Part{ID: "missing", Title: "Still needed", Needs: keys,
			Blocks: []report.Block{report.Ask{Keys: []string{settingKey}, For: "the new value; its factor is known already"}}})
	}
	r.Add(a.effects(), a.entries())
	if given {
		r.Add(a.touches())
	}
	r.Add(a.check())
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
