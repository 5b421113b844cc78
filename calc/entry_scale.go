package calc

import (
	"striderule/calc/drive"
	"striderule/calc/unit"
)

// Words of the conventions, in links and as output IDs.
const (
	asSteps  = "steps"
	asTurn   = "turn"
	asOutput = "output"
)

var conventionWords = []string{asSteps, asTurn, asOutput} // by drive.Convention

func conventionChoice() Choice {
	return choose(
		Option{asSteps, "Steps per mm", "microsteps sent for one millimetre (or degree)"},
		Option{asTurn, "Travel per motor turn", "how far the axis moves when the motor turns once"},
		Option{asOutput, "Travel per output turn", "with the gear ratio as an entry of its own"},
	)
}

func conventionOf(c Choice) drive.Convention {
	for i, w := range conventionWords {
		if w == c.Word {
			return drive.Convention(i)
		}
	}
	panic("calc: no convention " + c.Word)
}

// settingKey is the key of the field for a setting.
func settingKey(c drive.Convention, rotary bool) string {
	if rotary {
		return conventionWords[c] + "deg"
	}
	return conventionWords[c]
}

// settingUnit is the unit of a setting's full-precision value.
func settingUnit(c drive.Convention, rotary bool) string {
	units := [...]string{"steps/mm", "mm/rev", "mm/rev"}
	if rotary {
		units = [...]string{"steps/°", "°/rev", "°/rev"}
	}
	return units[c]
}

var settingNames = [...]string{"Steps per mm", "Travel per motor turn", "Travel per output turn"}

func settingName(c drive.Convention, rotary bool) string {
	if c == drive.StepsPerUnit && rotary {
		return "Steps per degree"
	}
	return settingNames[c]
}

// settingOutputs declares the figures that settingFigure makes, with a prefix
// and a wording of their own.
func settingOutputs(prefix, label string) []Output {
	var out []Output
	for _, c := range drive.Conventions {
		u := settingUnit(c, false) + " or " + settingUnit(c, true)
		out = append(out, Output{prefix + conventionWords[c], settingNames[c] + label, u})
	}
	return out
}

func settingFigure(id string, s drive.Setting, rotary bool, digits int, keep bool) *Figure {
	return &Figure{
		ID: id, Label: settingName(s.Convention, rotary), Value: s.Value,
		Unit: settingUnit(s.Convention, rotary), Digits: digits, Keep: keep,
	}
}

// A scaleEntry asks for a setting in whichever convention it is stored.
type scaleEntry struct {
	As        Choice
	Steps     unit.Input[unit.StepsPerLength]
	Turn      unit.Input[unit.LengthPerTurn]
	Output    unit.Input[unit.LengthPerTurn]
	StepsDeg  unit.Input[unit.StepsPerAngle]
	TurnDeg   unit.Input[unit.AnglePerTurn]
	OutputDeg unit.Input[unit.AnglePerTurn]
}

// Ranges of settings: wide enough for any small machine, narrow enough to
// catch a slip of the finger.
func stepsInput() unit.Input[unit.StepsPerLength] {
	return unit.StepsPerLengths.Input("steps/mm", 0.001, unit.Million)
}
func stepsDegInput() unit.Input[unit.StepsPerAngle] {
	return unit.StepsPerAngles.Input("steps/°", 0.001, unit.Million)
}
func turnInput() unit.Input[unit.LengthPerTurn] {
	return unit.LengthsPerTurn.Input("mm/rev", 0.0001, 10_000)
}
func turnDegInput() unit.Input[unit.AnglePerTurn] {
	return unit.AnglesPerTurn.Input("°/rev", 0.0001, 36_000)
}

func newScaleEntry() scaleEntry {
	return scaleEntry{
		As: conventionChoice(), Steps: stepsInput(), Turn: turnInput(), Output: turnInput(),
		StepsDeg: stepsDegInput(), TurnDeg: turnDegInput(), OutputDeg: turnDegInput(),
	}
}

// fields declares the entry. axis is the key of the choice that tells rotary
// axes from linear ones, whose words are linear.
func (s *scaleEntry) fields(section *Section, hint, axis string, linear ...string) []Field {
	rotary := func(as string) []When { return and(when(axis, "rotary"), "as", as) }
	return append(s.linearFields(section, hint, when(axis, linear...)),
		Field{Key: "stepsdeg", Label: "Steps per degree", Hint: hint, Section: section, When: rotary(asSteps), Cells: input(&s.StepsDeg)},
		Field{Key: "turndeg", Label: "Degrees per motor turn", Hint: hint, Section: section, When: rotary(asTurn), Cells: input(&s.TurnDeg)},
		Field{Key: "outputdeg", Label: "Degrees per output turn", Hint: hint, Section: section, When: rotary(asOutput), Cells: input(&s.OutputDeg)},
	)
}

// linearFields declares the entry for axes that move in mm; on is when the
// axis is one.
func (s *scaleEntry) linearFields(section *Section, hint string, on []When) []Field {
	return []Field{
		{Key: "as", Label: "The controller stores", Section: section, Cells: one(&s.As)},
		{Key: "steps", Label: "Steps per mm", Hint: hint, Section: section, When: and(on, "as", asSteps), Cells: input(&s.Steps)},
		{Key: "turn", Label: "Travel per motor turn", Hint: hint, Section: section, When: and(on, "as", asTurn), Cells: input(&s.Turn)},
		{Key: "output", Label: "Travel per output turn", Hint: hint, Section: section, When: and(on, "as", asOutput), Cells: input(&s.Output)},
	}
}

// in is the entry that holds a setting.
func (s *scaleEntry) in(c drive.Convention, rotary bool) *unit.Entry {
	switch {
	case c == drive.StepsPerUnit && rotary:
		return s.StepsDeg.Entry()
	case c == drive.StepsPerUnit:
		return s.Steps.Entry()
	case c == drive.TravelPerTurn && rotary:
		return s.TurnDeg.Entry()
	case c == drive.TravelPerTurn:
		return s.Turn.Entry()
	case rotary:
		return s.OutputDeg.Entry()
	}
	return s.Output.Entry()
}

// setting returns the setting and the key of the field that holds it; ok is
// false while it is not given.
func (s *scaleEntry) setting(rotary bool) (setting drive.Setting, key string, ok bool) {
	c := conventionOf(s.As)
	key = settingKey(c, rotary)
	in := s.in(c, rotary)
	return drive.Setting{Convention: c, Value: in.Number}, key, in.Given
}

// handed fills the same entry of another page in; where it is not given, with
// the convention alone.
func (s *scaleEntry) handed(rotary bool) []entry {
	c := conventionOf(s.As)
	return fills("as", s.As.told(), settingKey(c, rotary), s.in(c, rotary).Bare())
}
