package calc

import (
	"slices"

	"striderule/calc/drive"
	"striderule/calc/unit"
)

var convertPage = Page{
	Slug:     "convert",
	Menu:     "Convert",
	Title:    "Convert between conventions",
	Question: "My new controller wants the other number. What is it?",
	About:    "Turn steps per mm, inch or degree into travel per motor turn or per output turn and back, for one axis or a whole table of them.",
	New:      func() Sheet { return newConvert() },
	Example:  "v=1&name=Heron%20feed,Plover%20X,Plover%20Z&as=,turn&steps=538.0,,800&turn=,36&angle=1.8,1.8,1.8&micro=16,16,16&ratio=54:12,1,1",
	Outputs: concat(
		settingOutputs("", ""),
		[]Output{
			{"stepsin", "Steps per inch", "steps/in"},
			{"turnin", "Travel per motor turn in inches", "in/rev"},
			{"stepsrev", "Steps per turn of a rotary axis", "steps/rev"},
			{"fullsteps", "Full steps per motor turn", "steps/rev"},
			{"fullstep", "Travel per full step", "mm or °"},
			{"microstep", "Travel per microstep", "mm or °"},
		},
	),
	Tasks: []Task{
		{"My new controller wants the other number", "Steps per mm into travel per motor turn, or back, for all axes at once.", ""},
	},
}

// A convertSheet is a table of axes, each with its setting in one convention.
type convertSheet struct {
	axis  *Group
	Name  textList
	Moves choiceList
	As    choiceList

	Steps     perLength
	StepsDeg  perAngle
	Turn      lengthByTurn
	TurnDeg   angleByTurn
	Output    lengthByTurn
	OutputDeg angleByTurn

	Angle angleList
	Micro countList
	Ratio ratioList
}

func newConvert() *convertSheet {
	turn := func() lengthByTurn {
		return listOf[unit.Input[unit.LengthPerTurn], *unit.Input[unit.LengthPerTurn]](turnInput())
	}
	turnDeg := func() angleByTurn {
		return listOf[unit.Input[unit.AnglePerTurn], *unit.Input[unit.AnglePerTurn]](turnDegInput())
	}
	return &convertSheet{
		axis:      &Group{Noun: "axis", Least: 1, Most: MostRows},
		Name:      listOf[Text, *Text](Text{most: 40, about: "a name of your own"}),
		Moves:     listOf[Choice, *Choice](choose(Option{"linear", "In mm", "carriage, nut, filament"}, Option{"rotary", "In degrees", "table, spindle"})),
		As:        listOf[Choice, *Choice](conventionChoice()),
		Steps:     listOf[unit.Input[unit.StepsPerLength], *unit.Input[unit.StepsPerLength]](stepsInput()),
		StepsDeg:  listOf[unit.Input[unit.StepsPerAngle], *unit.Input[unit.StepsPerAngle]](stepsDegInput()),
		Turn:      turn(),
		TurnDeg:   turnDeg(),
		Output:    turn(),
		OutputDeg: turnDeg(),
		Angle:     listOf[unit.Input[unit.Angle], *unit.Input[unit.Angle]](angleInput()),
		Micro:     listOf[unit.Input[unit.Count], *unit.Input[unit.Count]](microInput()),
		Ratio:     listOf[unit.Input[unit.Ratio], *unit.Input[unit.Ratio]](ratioInput()),
	}
}

func (s *convertSheet) Fields() []Field {
	section := &Section{Title: "Axes"}
	shown := func(as, moves string) []When { return and(when("as", as), "moves", moves) }
	col := func(key, label, hint string, on []When, cells Cells, suggest ...string) Field {
		return Field{Key: key, Label: label, Hint: hint, Section: section, When: on, Group: s.axis, Cells: cells, Suggest: suggest}
	}
	carried := func(f Field) Field { f.Carry = true; return f }
	return []Field{
		col("name", "Name", "", nil, &s.Name),
		col("moves", "It moves", "", nil, &s.Moves),
		col("as", "Given is", "", nil, &s.As),
		col("steps", "Steps per mm", "For inches write the unit: 13665.2 steps/in.", shown(asSteps, "linear"), &s.Steps),
		col("stepsdeg", "Steps per degree", "", shown(asSteps, "rotary"), &s.StepsDeg),
		col("turn", "Travel per motor turn", "In mm; or write the unit: 0.2342 in.", shown(asTurn, "linear"), &s.Turn),
		col("turndeg", "Degrees per motor turn", "", shown(asTurn, "rotary"), &s.TurnDeg),
		col("output", "Travel per output turn", "In mm; or write the unit: 1.0538 in.", shown(asOutput, "linear"), &s.Output),
		col("outputdeg", "Degrees per output turn", "", shown(asOutput, "rotary"), &s.OutputDeg),
		carried(col("angle", "Step angle", angleHint, nil, &s.Angle, usualAngles...)),
		carried(col("micro", "Microsteps", microHint, nil, &s.Micro, usualMicro...)),
		col("ratio", "Gear ratio", "Motor turns for one output turn: 1 for a direct drive; for gears the teeth on the driven side first, 54:12, or 4.5.", nil, &s.Ratio, "1"),
	}
}

// An axisRow is one row of the table, read.
type axisRow struct {
	fact
	n     string // "1"
	name  string
	key   string // that the setting is typed in
	given bool   // the setting is
}

// A plainRatio is a gearing known as one number.
type plainRatio float64

func (r plainRatio) in(s drive.Setting, to drive.Convention, m drive.Motor) drive.Setting {
	return s.InRatio(to, m, float64(r))
}

func (s *convertSheet) row(i int) axisRow {
	c := conventionOf(s.As.Rows[i])
	r := axisRow{n: itoa(i + 1), name: s.Name.Rows[i].Value}
	r.rotary = s.Moves.Rows[i].Word == "rotary"
	r.key = settingKey(c, r.rotary)
	if r.name == "" {
		r.name = "Axis " + r.n
	}
	r.setting.Convention = c
	r.setting.Value, r.given = pick(r.key, map[string]reading{
		"steps": given(s.Steps.Rows[i]), "turn": given(s.Turn.Rows[i]), "output": given(s.Output.Rows[i]),
		"stepsdeg": given(s.StepsDeg.Rows[i]), "turndeg": given(s.TurnDeg.Rows[i]), "outputdeg": given(s.OutputDeg.Rows[i]),
	})
	motor := motorEntry{s.Angle.Rows[i], s.Micro.Rows[i]}
	r.motor, _ = motor.motor()
	r.noMotor = motor.missing()
	r.gears = plainRatio(s.Ratio.Rows[i].Value)
	if !s.Ratio.Rows[i].Given {
		r.noGears = []string{"ratio"}
	}
	return r
}

// blank reports whether nothing is told about an axis.
func (s *convertSheet) blank(i int) bool {
	cells := []Value{&s.Name.Rows[i], &s.Angle.Rows[i], &s.Micro.Rows[i], &s.Ratio.Rows[i]}
	told := func(v Value) bool { return v.String() != "" }
	return !s.row(i).given && !slices.ContainsFunc(cells, told) &&
		s.Moves.Rows[i].isDefault() && s.As.Rows[i].isDefault()
}

func (s *convertSheet) Solve() Report {
	r := Report{Parts: []Part{meaning}}
	var given []axisRow
	var above []string // what the rows before depend on: the headline is of the first that answers
	for i := range s.Name.Rows {
		row := s.row(i)
		above = append(above, row.needs()...)
		if i > 0 && s.blank(i) {
			continue
		}
		if !row.given {
			r.Parts = append(r.Parts, Part{ID: "missing-" + row.n, Title: row.name, Needs: []string{"name"},
				Blocks: []Block{Ask{[]string{row.key}, "its other numbers"}}})
			continue
		}
		given = append(given, row)
		r.Parts = append(r.Parts, row.part())
		if r.Answer == nil {
			r.Answer = row.answer(above)
		}
	}
	if all, ok := s.overview(given); ok {
		r.Parts = slices.Insert(r.Parts, 1, all)
	}
	return r
}
