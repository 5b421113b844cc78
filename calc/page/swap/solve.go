package swap

import (
	"math"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// A change is one part of a swap.
type change struct {
	word     string // of the tick
	was, now drive.Parts
	missing  []string
	keys     []string
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
		all = append(all, c)
	}
	if s.Changed.Has("micro") {
		c := change{word: "micro", keys: []string{"micro", "micronew"}}
		a, b := s.was.Micro, s.now.Micro
		c.need("micro", a.Given)
		c.need("micronew", b.Given)
		c.was.Microsteps, c.now.Microsteps = a.Value(), b.Value()
		all = append(all, c)
	}
	if s.Changed.Has("gears") {
		c := change{word: "gears", keys: lists.Concat([]string{"gears", "gears" + axis.SuffixNew}, s.was.gears.Keys(""), s.now.gears.Keys(axis.SuffixNew))}
		c.missing = lists.Concat(s.was.gears.Missing(""), s.now.gears.Missing(axis.SuffixNew))
		s.was.gears.Put(&c.was)
		s.now.gears.Put(&c.now)
		all = append(all, c)
	}
	if s.Changed.Has("out") {
		c := change{word: "out", keys: lists.Concat(s.was.output.Keys(""), s.now.output.Keys(axis.SuffixNew))}
		var missingWas, missingNow []string
		c.was.Output, missingWas = s.was.output.Element("")
		c.now.Output, missingNow = s.now.output.Element(axis.SuffixNew)
		c.missing = lists.Concat(missingWas, missingNow)
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
	r := report.Report{Picture: s.guide(), Care: careSwap}
	if s.Changed.Has("out") {
		r.Problems = lists.Concat(s.was.output.Problems("", 0), s.now.output.Problems(axis.SuffixNew, 0))
	} else {
		r.Problems = s.kept.output.Problems(axis.SuffixKept, 0)
	}
	read := func(t *trainEntry, suffix string) {
		t.gears.Read(&r.Remarks, suffix)
		t.output.Read(&r.Remarks, suffix, 0)
		t.output.DoubtPitch(&r.Remarks, suffix, 0)
	}
	read(&s.was, "")
	read(&s.now, axis.SuffixNew)
	read(&s.kept, axis.SuffixKept)
	all := s.changes()
	if len(all) == 0 {
		r.Add(missingPart(nil, "changed"))
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
	setting, settingKey, given := s.Setting(s.rotary())
	if len(missing) > 0 {
		if !given {
			missing = append([]string{settingKey}, missing...)
		}
		r.Add(missingPart(nil, missing...))
		return r
	}
	factors, err := drive.Rescale(was, now)
	if err != nil { // the entries have their limits: only the kinds of axis are left to differ
		r.Problems = []report.Problem{{Key: "out" + axis.SuffixNew, Row: 0, Says: notOfOneKind}}
		return r
	}
	a := solution{s, all, factors, setting, given, keys, lists.Concat(keys, []string{"as", settingKey})}
	if given {
		r.Answer = a.answer()
		r.Set, r.SetKey = unit.PlainTrim(r.Answer.Value, 7), settingKey
		a.doubt(&r, settingKey)
	} else {
		r.Add(missingPart(keys, settingKey))
	}
	r.Add(a.entries(), a.check().Fold(checkBrief), a.others().Fold(othersBrief))
	if given {
		r.Add(a.numbers().Fold(numbersBrief))
	}
	r.Add(a.effects().Fold(effectsBrief))
	if given {
		r.Add(a.touches().Fold(touchesBrief))
	}
	return r
}

// missingPart asks for what the new setting lacks.
func missingPart(needs []string, keys ...string) *report.Part {
	return &report.Part{ID: report.Missing, Title: missingTitle, Needs: needs,
		Blocks: []report.Block{report.Ask{Keys: keys, For: askSetting}}}
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
