package axis

import (
	"strings"

	"striderule/calc/drive"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// Words of the conventions, in links and as output IDs.
const (
	AsSteps  = "steps"
	AsTurn   = "turn"
	AsOutput = "output"
)

// ConventionWords are the words by drive.Convention.
var ConventionWords = []string{AsSteps, AsTurn, AsOutput}

func conventionChoice() sheet.Choice {
	return sheet.Choose(asSteps, asTurn, asOutput)
}

func conventionOf(c sheet.Choice) drive.Convention {
	for i, w := range ConventionWords {
		if w == c.Word {
			return drive.Convention(i)
		}
	}
	panic("calc: no convention " + c.Word)
}

// SettingKey is the key of the field for a setting.
func SettingKey(c drive.Convention, rotary bool) string {
	if rotary {
		return ConventionWords[c] + "deg"
	}
	return ConventionWords[c]
}

// SettingUnit is the unit of a setting's full-precision value.
func SettingUnit(c drive.Convention, rotary bool) string {
	units := [...]string{"steps/mm", "mm/rev", "mm/rev"}
	if rotary {
		units = [...]string{"steps/°", "°/rev", "°/rev"}
	}
	return units[c]
}

// SettingName is what a setting in a convention is called.
func SettingName(c drive.Convention, rotary bool) string {
	if c == drive.StepsPerUnit && rotary {
		return stepsPerDegree
	}
	return settingNames[c]
}

// SettingNameWithin is what it is called within a sentence.
func SettingNameWithin(c drive.Convention, rotary bool) string {
	if c == drive.StepsPerUnit && rotary {
		return stepsPerDegreeWithin
	}
	return settingNamesWithin[c]
}

// SettingOutputs declares the figures that SettingFigure makes.
func SettingOutputs() []sheet.Output {
	var out []sheet.Output
	for _, c := range drive.Conventions {
		out = append(out, sheet.Output{ID: ConventionWords[c], Label: settingNames[c],
			Unit: linearOrRotary.Fill("linear", SettingUnit(c, false), "rotary", SettingUnit(c, true))})
	}
	return out
}

// SettingFigure is a setting as a figure, of so many significant digits; keep keeps zeros at the
// end.
func SettingFigure(id string, s drive.Setting, rotary bool, digits int, keep bool) *report.Figure {
	return &report.Figure{
		ID: id, Label: SettingName(s.Convention, rotary), Value: s.Value,
		Unit: SettingUnit(s.Convention, rotary), Digits: digits, Keep: keep,
	}
}

// A ScaleEntry asks for a setting in whichever convention it is stored.
type ScaleEntry struct {
	As        sheet.Choice
	Steps     unit.Input[unit.StepsPerLength]
	Turn      unit.Input[unit.LengthPerTurn]
	Output    unit.Input[unit.LengthPerTurn]
	StepsDeg  unit.Input[unit.StepsPerAngle]
	TurnDeg   unit.Input[unit.AnglePerTurn]
	OutputDeg unit.Input[unit.AnglePerTurn]
}

// Ranges of settings: wide enough for any small machine, narrow enough to
// catch a slip of the finger.
func StepsInput() unit.Input[unit.StepsPerLength] {
	return unit.StepsPerLengths.Input("steps/mm", 0.001, unit.Million)
}
func StepsDegInput() unit.Input[unit.StepsPerAngle] {
	return unit.StepsPerAngles.Input("steps/°", 0.001, unit.Million)
}
func turnInput() unit.Input[unit.LengthPerTurn] {
	return unit.LengthsPerTurn.Input("mm/rev", 0.0001, 10_000)
}
func turnDegInput() unit.Input[unit.AnglePerTurn] {
	return unit.AnglesPerTurn.Input("°/rev", 0.0001, 36_000)
}

// NewScaleEntry is one with nothing given.
func NewScaleEntry() ScaleEntry {
	return ScaleEntry{
		As: conventionChoice(), Steps: StepsInput(), Turn: turnInput(), Output: turnInput(),
		StepsDeg: StepsDegInput(), TurnDeg: turnDegInput(), OutputDeg: turnDegInput(),
	}
}

// Fields declares the entry. axis is the key of the choice of a sort of axis; its
// words in linear are those of axes that move in mm.
func (s *ScaleEntry) Fields(section *sheet.Section, hint, axis string, linear ...string) []sheet.Field {
	rotary := func(as string) []sheet.When { return sheet.And(sheet.If(axis, "rotary"), "as", as) }
	return append(s.LinearFields(section, hint, sheet.If(axis, linear...)),
		sheet.Field{Key: "stepsdeg", Label: stepsDegLabel, Hint: hint, Section: section, When: rotary(AsSteps), Cells: sheet.Input(&s.StepsDeg)},
		sheet.Field{Key: "turndeg", Label: turnDegLabel, Hint: hint, Section: section, When: rotary(AsTurn), Cells: sheet.Input(&s.TurnDeg)},
		sheet.Field{Key: "outputdeg", Label: outputDegLabel, Hint: hint, Section: section, When: rotary(AsOutput), Cells: sheet.Input(&s.OutputDeg)},
	)
}

// LinearFields declares the entry for axes that move in mm; on is when the
// axis is one.
func (s *ScaleEntry) LinearFields(section *sheet.Section, hint string, on []sheet.When) []sheet.Field {
	return []sheet.Field{
		{Key: "as", Label: asLabel, Section: section, Cells: sheet.One(&s.As)},
		{Key: "steps", Label: stepsLabel, Hint: hint, Section: section, When: sheet.And(on, "as", AsSteps), Cells: sheet.Input(&s.Steps)},
		{Key: "turn", Label: turnLabel, Hint: hint, Section: section, When: sheet.And(on, "as", AsTurn), Cells: sheet.Input(&s.Turn)},
		{Key: "output", Label: outputLabel, Hint: hint, Section: section, When: sheet.And(on, "as", AsOutput), Cells: sheet.Input(&s.Output)},
	}
}

// in is the entry that holds a setting.
func (s *ScaleEntry) in(c drive.Convention, rotary bool) *unit.Entry {
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

// Setting returns the setting and the key of the field that holds it; ok is
// false while it is not given.
func (s *ScaleEntry) Setting(rotary bool) (setting drive.Setting, key string, ok bool) {
	c := conventionOf(s.As)
	key = SettingKey(c, rotary)
	in := s.in(c, rotary)
	return drive.Setting{Convention: c, Value: in.Number}, key, in.Given
}

// Filled fills the same entry of another page in; where it is not given, with
// the convention only.
func (s *ScaleEntry) Filled(rotary bool) []Filling {
	c := conventionOf(s.As)
	return Fills("as", s.As.Chosen(), SettingKey(c, rotary), s.in(c, rotary).Bare())
}

// fewSteps is fewer steps per mm than machines have.
const fewSteps = 5

// DoubtThousands asks about a setting like 1.234, which may be one thousand and more; key is that
// of the field it stands in.
func (s *ScaleEntry) DoubtThousands(key string) (note report.Note, ok bool) {
	typed := s.Steps.Entry().Bare()
	ones, rest, _ := strings.Cut(typed, ".")
	if key != AsSteps || s.Steps.Number >= fewSteps || len(rest) != 3 {
		return note, false
	}
	in := func(number string) string { return number + " " + s.Steps.Entry().Unit() }
	return report.DoubtNote(thousandsDoubt, "typed", typed, "read", in(typed), "rather", in(ones+rest)), true
}
