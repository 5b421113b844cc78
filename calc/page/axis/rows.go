package axis

import (
	"strconv"

	"striderule/calc/lists"
	"striderule/calc/sheet"
)

// The columns by which a table of axes asks what an entry asks of one.

// NameList are names of axes.
func NameList() sheet.TextList {
	return sheet.ListOf(sheet.NewText(40, nameAbout))
}

// NameOf is how a report calls an axis of a table.
func NameOf(name sheet.Text, i int) string {
	if name.Value != "" {
		return name.Value
	}
	return axisOf.Fill("n", strconv.Itoa(i+1))
}

// ScaleRows is a scaleEntry for each row.
type ScaleRows struct {
	As        sheet.ChoiceList
	Steps     sheet.PerLength
	StepsDeg  sheet.PerAngle
	Turn      sheet.LengthByTurn
	TurnDeg   sheet.AngleByTurn
	Output    sheet.LengthByTurn
	OutputDeg sheet.AngleByTurn
}

// NewScaleRows is a table without rows.
func NewScaleRows() ScaleRows {
	turn := func() sheet.LengthByTurn {
		return sheet.ColumnOf(turnInput())
	}
	turnDeg := func() sheet.AngleByTurn {
		return sheet.ColumnOf(turnDegInput())
	}
	return ScaleRows{
		As:       sheet.ListOf(conventionChoice()),
		Steps:    sheet.ColumnOf(StepsInput()),
		StepsDeg: sheet.ColumnOf(StepsDegInput()),
		Turn:     turn(), TurnDeg: turnDeg(), Output: turn(), OutputDeg: turnDeg(),
	}
}

// At is the entry of one row.
func (s *ScaleRows) At(i int) *ScaleEntry {
	return &ScaleEntry{
		As: s.As.Rows[i], Steps: s.Steps.Row(i), Turn: s.Turn.Row(i), Output: s.Output.Row(i),
		StepsDeg: s.StepsDeg.Row(i), TurnDeg: s.TurnDeg.Row(i), OutputDeg: s.OutputDeg.Row(i),
	}
}

// Fields declares the columns: on is when there is a setting at all, linear and
// rotary when it is one in mm or in degrees.
func (s *ScaleRows) Fields(section *sheet.Section, group *sheet.Group, label string, on, linear, rotary []sheet.When) []sheet.Field {
	col := func(key, label, hint string, on []sheet.When, cells sheet.Cells) sheet.Field {
		return sheet.Field{Key: key, Label: label, Hint: hint, Section: section, When: on, Group: group, Cells: cells}
	}
	mm := func(as string) []sheet.When { return sheet.And(lists.Concat(on, linear), "as", as) }
	deg := func(as string) []sheet.When { return sheet.And(lists.Concat(on, rotary), "as", as) }
	return []sheet.Field{
		col("as", label, "", on, &s.As),
		col("steps", stepsLabel, stepsInches, mm(AsSteps), s.Steps.Cells()),
		col("stepsdeg", stepsDegLabel, stepsDegrees, deg(AsSteps), s.StepsDeg.Cells()),
		col("turn", turnLabel, turnInches, mm(AsTurn), s.Turn.Cells()),
		col("turndeg", turnDegLabel, "", deg(AsTurn), s.TurnDeg.Cells()),
		col("output", outputLabel, outputInches, mm(AsOutput), s.Output.Cells()),
		col("outputdeg", outputDegLabel, "", deg(AsOutput), s.OutputDeg.Cells()),
	}
}

// MotorRows is a motorEntry for each row; a row that is added starts with the
// motor of the row above.
type MotorRows struct {
	Angle sheet.AngleList
	Micro sheet.CountList
}

// NewMotorRows is a table without rows.
func NewMotorRows() MotorRows {
	return MotorRows{
		Angle: sheet.ColumnOf(angleInput()),
		Micro: sheet.ColumnOf(microInput()),
	}
}

// At is the entry of one row.
func (m *MotorRows) At(i int) *MotorEntry { return &MotorEntry{m.Angle.Row(i), m.Micro.Row(i)} }

// Fields declares the columns; on is when there is a motor.
func (m *MotorRows) Fields(section *sheet.Section, group *sheet.Group, on []sheet.When) []sheet.Field {
	return []sheet.Field{
		{Key: "angle", Label: stepAngleLabel, Hint: AngleHint, Section: section, When: on, Group: group, Cells: m.Angle.Cells(), Suggest: UsualAngles, Carry: true},
		{Key: "micro", Label: microstepsLabel, Hint: MicroHint, Section: section, When: on, Group: group, Cells: m.Micro.Cells(), Suggest: UsualMicro, Carry: true},
	}
}

// RatioRows are gear ratios, a row each.
func RatioRows() sheet.RatioList {
	return sheet.ColumnOf(ratioInput())
}

// Blank reports whether nothing is given in a row of a sheet's table.
func Blank(fields []sheet.Field, row int) bool {
	for _, f := range fields {
		if f.Group == nil {
			continue
		}
		v := f.Cells.At(row)
		if c, ok := v.(*sheet.Choice); ok && !c.IsDefault() || !ok && v.String() != "" {
			return false
		}
	}
	return true
}
