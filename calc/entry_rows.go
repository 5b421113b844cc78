package calc

import (
	"strconv"

	"striderule/calc/lists"
)

// The columns by which a table of axes asks what an entry asks of one.

func nameList() textList {
	return listOf(newText(40, "a name of your own"))
}

// axisName is how a report calls an axis of a table.
func axisName(name Text, i int) string {
	if name.Value != "" {
		return name.Value
	}
	return "Axis " + strconv.Itoa(i+1)
}

// scaleRows is a scaleEntry for each row.
type scaleRows struct {
	As        choiceList
	Steps     perLength
	StepsDeg  perAngle
	Turn      lengthByTurn
	TurnDeg   angleByTurn
	Output    lengthByTurn
	OutputDeg angleByTurn
}

func newScaleRows() scaleRows {
	turn := func() lengthByTurn {
		return columnOf(turnInput())
	}
	turnDeg := func() angleByTurn {
		return columnOf(turnDegInput())
	}
	return scaleRows{
		As:       listOf(conventionChoice()),
		Steps:    columnOf(stepsInput()),
		StepsDeg: columnOf(stepsDegInput()),
		Turn:     turn(), TurnDeg: turnDeg(), Output: turn(), OutputDeg: turnDeg(),
	}
}

// at is the entry of one row.
func (s *scaleRows) at(i int) *scaleEntry {
	return &scaleEntry{
		As: s.As.Rows[i], Steps: s.Steps.Row(i), Turn: s.Turn.Row(i), Output: s.Output.Row(i),
		StepsDeg: s.StepsDeg.Row(i), TurnDeg: s.TurnDeg.Row(i), OutputDeg: s.OutputDeg.Row(i),
	}
}

// fields declares the columns: on is when there is a setting at all, linear and
// rotary when it is one in mm or in degrees.
func (s *scaleRows) fields(section *Section, group *Group, label string, on, linear, rotary []When) []Field {
	col := func(key, label, hint string, on []When, cells Cells) Field {
		return Field{Key: key, Label: label, Hint: hint, Section: section, When: on, Group: group, Cells: cells}
	}
	mm := func(as string) []When { return and(lists.Concat(on, linear), "as", as) }
	deg := func(as string) []When { return and(lists.Concat(on, rotary), "as", as) }
	return []Field{
		col("as", label, "", on, &s.As),
		col("steps", "Steps per mm", "For inches write the unit: 13665.2 steps/in.", mm(asSteps), s.Steps.cells()),
		col("stepsdeg", "Steps per degree", "", deg(asSteps), s.StepsDeg.cells()),
		col("turn", "Travel per motor turn", "In mm; or write the unit: 0.2342 in.", mm(asTurn), s.Turn.cells()),
		col("turndeg", "Degrees per motor turn", "", deg(asTurn), s.TurnDeg.cells()),
		col("output", "Travel per output turn", "In mm; or write the unit: 1.0538 in.", mm(asOutput), s.Output.cells()),
		col("outputdeg", "Degrees per output turn", "", deg(asOutput), s.OutputDeg.cells()),
	}
}

// motorRows is a motorEntry for each row; a row that is added starts with the
// motor of the row above.
type motorRows struct {
	Angle angleList
	Micro countList
}

func newMotorRows() motorRows {
	return motorRows{
		Angle: columnOf(angleInput()),
		Micro: columnOf(microInput()),
	}
}

func (m *motorRows) at(i int) *motorEntry { return &motorEntry{m.Angle.Row(i), m.Micro.Row(i)} }

func (m *motorRows) fields(section *Section, group *Group, on []When) []Field {
	return []Field{
		{Key: "angle", Label: "Step angle", Hint: angleHint, Section: section, When: on, Group: group, Cells: m.Angle.cells(), Suggest: usualAngles, Carry: true},
		{Key: "micro", Label: "Microsteps", Hint: microHint, Section: section, When: on, Group: group, Cells: m.Micro.cells(), Suggest: usualMicro, Carry: true},
	}
}

func ratioRows() ratioList {
	return columnOf(ratioInput())
}

// blank reports whether nothing is told in a row of a sheet's table.
func blank(fields []Field, row int) bool {
	for _, f := range fields {
		if f.Group == nil {
			continue
		}
		v := f.Cells.At(row)
		if c, ok := v.(*Choice); ok && !c.isDefault() || !ok && v.String() != "" {
			return false
		}
	}
	return true
}
