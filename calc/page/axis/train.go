package axis

import (
	"striderule/calc/drive"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// A MotorEntry asks for what turns pulses into motor turns.
type MotorEntry struct {
	Angle unit.Input[unit.Angle]
	Micro unit.Input[unit.Count]
}

func angleInput() unit.Input[unit.Angle] { return unit.StepAngles.Input("°", 0.01, 90) }
func microInput() unit.Input[unit.Count] { return unit.Microsteps.Input("", 1, 4096) }

// NewMotorEntry is one with nothing given.
func NewMotorEntry() MotorEntry { return MotorEntry{Angle: angleInput(), Micro: microInput()} }

const (
	AngleHint = "On the motor's label or in its data sheet: 1.8° is 200 full steps per turn, 0.9° is 400."
	MicroHint = "As the driver is set, by jumpers or by software. What it smooths by itself does not count."
)

var (
	UsualAngles = []string{"1.8°", "0.9°"}
	UsualMicro  = []string{"8", "16", "32", "64"}
)

// Motor is what is given of the motor; the rest is 0.
func (m *MotorEntry) Motor() drive.Motor {
	return drive.Motor{StepAngle: m.Angle.Value(), Microsteps: m.Micro.Value()}
}

// Fields declares the entry.
func (m *MotorEntry) Fields(section *sheet.Section) []sheet.Field {
	return []sheet.Field{
		{Key: "angle", Label: "Step angle of the motor", Hint: AngleHint, Section: section, Cells: sheet.Input(&m.Angle), Suggest: UsualAngles},
		{Key: "micro", Label: "Microsteps", Hint: MicroHint, Section: section, Cells: sheet.Input(&m.Micro), Suggest: UsualMicro},
	}
}

// Filled fills the same entry of another page in.
func (m *MotorEntry) Filled() []Filling {
	return Fills("angle", m.Angle.Bare(), "micro", m.Micro.Bare())
}

// Missing returns the keys that are not given.
func (m *MotorEntry) Missing() []string {
	var keys []string
	if !m.Angle.Given {
		keys = append(keys, "angle")
	}
	if !m.Micro.Given {
		keys = append(keys, "micro")
	}
	return keys
}

// A GearEntry asks for the gearing between motor and output.
type GearEntry struct {
	Kind    sheet.Choice
	Driving sheet.CountList
	Driven  sheet.CountList
	Ratio   unit.Input[unit.Ratio]
	stage   *sheet.Group
}

func ratioInput() unit.Input[unit.Ratio] { return unit.Ratios.Input("", 0.0001, 100_000) }

// NewGearEntry offers these kinds of gearing, the first of them by default.
func NewGearEntry(kinds ...sheet.Option) GearEntry {
	teeth := unit.Teeth.Input("", 1, 10_000)
	return GearEntry{
		Kind:    sheet.Choose(kinds...),
		Driving: sheet.ColumnOf(teeth),
		Driven:  sheet.ColumnOf(teeth),
		Ratio:   ratioInput(),
		stage:   &sheet.Group{Noun: "stage", Least: 1, Most: 6},
	}
}

// Words of the kinds of gearing.
var (
	GearsUnknown = sheet.Option{Word: "unknown", Label: "Not known", Hint: "what depends on it is left out"}
	GearsNone    = sheet.Option{Word: "none", Label: "None", Hint: "the motor drives it directly"}
	GearsPairs   = sheet.Option{Word: "pairs", Label: "Tooth pairs", Hint: "gears, or pulleys on a belt between them"}
	GearsRatio   = sheet.Option{Word: "ratio", Label: "A ratio", Hint: "motor turns for one output turn"}
)

// Fields declares the entry; on is when there is a gearing to tell.
func (g *GearEntry) Fields(section *sheet.Section, suffix string, on []sheet.When) []sheet.Field {
	with := func(kind string) []sheet.When { return sheet.And(on, "gears"+suffix, kind) }
	return []sheet.Field{
		{Key: "gears" + suffix, Label: "Gears between motor and output", Section: section, When: on, Cells: sheet.One(&g.Kind)},
		{Key: "driving" + suffix, Label: "Teeth on the motor side", Hint: "For a worm: its number of starts.",
			Section: section, When: with("pairs"), Group: g.stage, Cells: g.Driving.Cells()},
		{Key: "driven" + suffix, Label: "Teeth on the driven side", Hint: "For a worm: the teeth of its wheel.",
			Section: section, When: with("pairs"), Group: g.stage, Cells: g.Driven.Cells()},
		{Key: "ratio" + suffix, Label: "Gear ratio", Hint: "Motor turns for one output turn, above 1 where the output turns slower: 4.5, or 54:12.",
			Section: section, When: with("ratio"), Cells: sheet.Input(&g.Ratio)},
	}
}

// Stages returns the gearing as tooth pairs, which it is unless it is known as
// a ratio. ok is false while a stage has one of its two counts;
// a stage with neither is passed over.
func (g *GearEntry) Stages() (s drive.Stages, ok bool) {
	s = drive.Stages{}
	if g.Kind.Word == "none" {
		return s, true
	}
	for i := range g.Driving.Rows {
		a, b := g.Driving.Row(i), g.Driven.Row(i)
		if !a.Given && !b.Given {
			continue
		}
		if !a.Given || !b.Given {
			return nil, false
		}
		s = append(s, drive.Stage{Driving: a.Value(), Driven: b.Value()})
	}
	return s, g.Kind.Word == "pairs" && len(s) > 0
}

// Known reports whether the ratio of motor turns to output turns is given.
func (g *GearEntry) Known() bool {
	_, ok := g.Stages()
	return ok || g.Kind.Word == "ratio" && g.Ratio.Given
}

// Reduction returns motor turns per output turn; meaningful if known.
func (g *GearEntry) Reduction() float64 {
	if s, ok := g.Stages(); ok {
		return s.Reduction()
	}
	return g.Ratio.Number
}

// in is drive.Setting.In with this gearing.
func (g *GearEntry) in(s drive.Setting, to drive.Convention, m drive.Motor) drive.Setting {
	if stages, ok := g.Stages(); ok {
		return s.In(to, m, stages)
	}
	return s.InRatio(to, m, g.Ratio.Number)
}

// Filled fills the same entry of another page in.
func (g *GearEntry) Filled() []Filling {
	var driving, driven []string
	for i := range g.Driving.Rows {
		driving, driven = append(driving, g.Driving.Rows[i].Bare()), append(driven, g.Driven.Rows[i].Bare())
	}
	return []Filling{Fill("gears", g.Kind.Chosen()), Fill("driving", driving...), Fill("driven", driven...), Fill("ratio", g.Ratio.Bare())}
}

// Missing returns the keys to ask for.
func (g *GearEntry) Missing(suffix string) []string {
	if g.Known() {
		return nil
	}
	switch g.Kind.Word {
	case "pairs":
		return []string{"driving" + suffix, "driven" + suffix}
	case "ratio":
		return []string{"ratio" + suffix}
	}
	return []string{"gears" + suffix}
}

// Keys are all that the gearing is made of.
func (g *GearEntry) Keys(suffix string) []string {
	return []string{"gears" + suffix, "driving" + suffix, "driven" + suffix, "ratio" + suffix}
}

// Put names the gearing as a part of a swap, if it is known.
func (g *GearEntry) Put(p *drive.Parts) {
	if s, ok := g.Stages(); ok {
		p.Stages = s
	} else if g.Known() {
		p.Ratio = g.Ratio.Number
	}
}

// Relabel says of fields with a text to fill in at which time they are meant.
func Relabel(fields []sheet.Field, suffix string) []sheet.Field {
	for i := range fields {
		if fields[i].Key != "as" {
			fields[i].Label += suffix
		}
	}
	return fields
}

// Suffixes of the keys of what is there after the swap, and of what stayed.
const (
	SuffixNew  = "new"
	SuffixKept = "kept"
)
