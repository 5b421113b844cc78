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
		{Key: "angle", Label: motorAngleLabel, Short: motorShort, Hint: AngleHint, Section: section, Cells: sheet.Input(&m.Angle), Suggest: UsualAngles},
		{Key: "micro", Label: microstepsLabel, Hint: MicroHint, Section: section, Cells: sheet.Input(&m.Micro), Suggest: UsualMicro},
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
		stage:   &sheet.Group{Words: stageRows, Least: 1, Most: 6},
	}
}

// Fields declares the entry; on is when there is a gearing to tell.
func (g *GearEntry) Fields(section *sheet.Section, suffix string, on []sheet.When) []sheet.Field {
	with := func(kind string) []sheet.When { return sheet.And(on, "gears"+suffix, kind) }
	if suffix != "" { // a page that has two of them
		g.stage.Words.ID = stageRows.ID + "-" + suffix
	}
	return []sheet.Field{
		{Key: "gears" + suffix, Label: gearsLabel, Section: section, When: on, Cells: sheet.One(&g.Kind)},
		{Key: "driving" + suffix, Label: drivingLabel, Hint: drivingHint,
			Section: section, When: with("pairs"), Group: g.stage, Cells: g.Driving.Cells()},
		{Key: "driven" + suffix, Label: drivenLabel, Hint: drivenHint,
			Section: section, When: with("pairs"), Group: g.stage, Cells: g.Driven.Cells()},
		{Key: "ratio" + suffix, Label: ratioLabel, Hint: ratioHint,
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

// Suffixes of the keys of what is there after the swap, and of what stayed.
const (
	SuffixNew  = "new"
	SuffixKept = "kept"
)
