package calc

import (
	"striderule/calc/drive"
	"striderule/calc/unit"
)

// A motorEntry asks for what turns pulses into motor turns.
type motorEntry struct {
	Angle unit.Input[unit.Angle]
	Micro unit.Input[unit.Count]
}

func angleInput() unit.Input[unit.Angle] { return unit.StepAngles.Input("°", 0.01, 90) }
func microInput() unit.Input[unit.Count] { return unit.Microsteps.Input("", 1, 4096) }

func newMotorEntry() motorEntry { return motorEntry{Angle: angleInput(), Micro: microInput()} }

const (
	angleHint = "On the motor's label or in its data sheet: 1.8° is 200 full steps per turn, 0.9° is 400."
	microHint = "As the driver is set, by jumpers or by software. What it smooths by itself does not count."
)

var (
	usualAngles = []string{"1.8°", "0.9°"}
	usualMicro  = []string{"8", "16", "32", "64"}
)

// motor is what is given of the motor; the rest is 0.
func (m *motorEntry) motor() drive.Motor {
	return drive.Motor{StepAngle: m.Angle.Value(), Microsteps: m.Micro.Value()}
}

// fields declares the entry.
func (m *motorEntry) fields(section *Section) []Field {
	return []Field{
		{Key: "angle", Label: "Step angle of the motor", Hint: angleHint, Section: section, Cells: input(&m.Angle), Suggest: usualAngles},
		{Key: "micro", Label: "Microsteps", Hint: microHint, Section: section, Cells: input(&m.Micro), Suggest: usualMicro},
	}
}

// handed fills the same entry of another page in.
func (m *motorEntry) handed() []entry {
	return fills("angle", m.Angle.Bare(), "micro", m.Micro.Bare())
}

// missing returns the keys that are not given.
func (m *motorEntry) missing() []string {
	var keys []string
	if !m.Angle.Given {
		keys = append(keys, "angle")
	}
	if !m.Micro.Given {
		keys = append(keys, "micro")
	}
	return keys
}

// A gearEntry asks for the gearing between motor and output.
type gearEntry struct {
	Kind    Choice
	Driving countList
	Driven  countList
	Ratio   unit.Input[unit.Ratio]
	stage   *Group
}

func ratioInput() unit.Input[unit.Ratio] { return unit.Ratios.Input("", 0.0001, 100_000) }

func newGearEntry(kinds ...Option) gearEntry {
	teeth := unit.Teeth.Input("", 1, 10_000)
	return gearEntry{
		Kind:    choose(kinds...),
		Driving: columnOf(teeth),
		Driven:  columnOf(teeth),
		Ratio:   ratioInput(),
		stage:   &Group{Noun: "stage", Least: 1, Most: 6},
	}
}

// Words of the kinds of gearing.
var (
	gearsUnknown = Option{"unknown", "Not known", "what depends on it is left out"}
	gearsNone    = Option{"none", "None", "the motor drives it directly"}
	gearsPairs   = Option{"pairs", "Tooth pairs", "gears, or pulleys on a belt between them"}
	gearsRatio   = Option{"ratio", "A ratio", "motor turns for one output turn"}
)

func (g *gearEntry) fields(section *Section, suffix string, on []When) []Field {
	with := func(kind string) []When { return and(on, "gears"+suffix, kind) }
	return []Field{
		{Key: "gears" + suffix, Label: "Gears between motor and output", Section: section, When: on, Cells: one(&g.Kind)},
		{Key: "driving" + suffix, Label: "Teeth on the motor side", Hint: "For a worm: its number of starts.",
			Section: section, When: with("pairs"), Group: g.stage, Cells: g.Driving.cells()},
		{Key: "driven" + suffix, Label: "Teeth on the driven side", Hint: "For a worm: the teeth of its wheel.",
			Section: section, When: with("pairs"), Group: g.stage, Cells: g.Driven.cells()},
		{Key: "ratio" + suffix, Label: "Gear ratio", Hint: "Motor turns for one output turn, above 1 where the output turns slower: 4.5, or 54:12.",
			Section: section, When: with("ratio"), Cells: input(&g.Ratio)},
	}
}

// stages returns the gearing as tooth pairs, which it is unless it is known as
// a ratio. ok is false while a box of a stage is empty; a stage without any is none.
func (g *gearEntry) stages() (s drive.Stages, ok bool) {
	s = drive.Stages{}
	if g.Kind.Word == "none" {
		return s, true
	}
	for i := range g.Driving.rows {
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

// known reports whether the ratio of motor turns to output turns is told.
func (g *gearEntry) known() bool {
	_, ok := g.stages()
	return ok || g.Kind.Word == "ratio" && g.Ratio.Given
}

// reduction returns motor turns per output turn; meaningful if known.
func (g *gearEntry) reduction() float64 {
	if s, ok := g.stages(); ok {
		return s.Reduction()
	}
	return g.Ratio.Number
}

// in is drive.Setting.In with this gearing.
func (g *gearEntry) in(s drive.Setting, to drive.Convention, m drive.Motor) drive.Setting {
	if stages, ok := g.stages(); ok {
		return s.In(to, m, stages)
	}
	return s.InRatio(to, m, g.Ratio.Number)
}

// handed fills the same entry of another page in.
func (g *gearEntry) handed() []entry {
	var driving, driven []string
	for i := range g.Driving.rows {
		driving, driven = append(driving, g.Driving.rows[i].Bare()), append(driven, g.Driven.rows[i].Bare())
	}
	return []entry{fill("gears", g.Kind.told()), fill("driving", driving...), fill("driven", driven...), fill("ratio", g.Ratio.Bare())}
}

// missing returns the keys to ask for.
func (g *gearEntry) missing(suffix string) []string {
	if g.known() {
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

// keys are all that the gearing is made of.
func (g *gearEntry) keys(suffix string) []string {
	return []string{"gears" + suffix, "driving" + suffix, "driven" + suffix, "ratio" + suffix}
}

// put names the gearing as a part of a swap, if it is known.
func (g *gearEntry) put(p *drive.Parts) {
	if s, ok := g.stages(); ok {
		p.Stages = s
	} else if g.known() {
		p.Ratio = g.Ratio.Number
	}
}

// relabel says of fields with a text to fill in at which time they are meant.
func relabel(fields []Field, suffix string) []Field {
	for i := range fields {
		if fields[i].Key != "as" {
			fields[i].Label += suffix
		}
	}
	return fields
}

// Suffixes of the keys of what is there after the swap, and of what stayed.
const (
	suffixNew  = "new"
	suffixKept = "kept"
)
