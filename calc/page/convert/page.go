package convert

import (
	"strconv"

	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/report"
	"striderule/calc/sheet"
)

// Page tells the same fact in the other conventions.
var Page = sheet.Page{
	Slug:     "convert",
	Menu:     "Convert",
	Title:    "Convert between conventions",
	Question: "My new controller wants the other number. What is it?",
	About:    "Turn steps per mm, inch or degree into travel per motor turn or per output turn and back, for one axis or a whole table of them.",
	New:      func() sheet.Sheet { return newEntries() },
	Example:  "v=1&name=Heron%20feed,Plover%20X,Plover%20Z&as=,turn&steps=538.0,,800&turn=,36&angle=1.8,1.8,1.8&micro=16,16,16&ratio=54:12,1,1",
	Outputs: lists.Concat(
		axis.SettingOutputs("", ""), axis.Outputs,
	),
	Tasks: []sheet.Task{
		{Situation: "My new controller wants the other number", Help: "Steps per mm into travel per motor turn, or back, for all axes at once.", Fragment: ""},
	},
}

// entries are a table of axes, each with its setting in one convention.
type entries struct {
	axis  *sheet.Group
	Name  sheet.TextList
	Moves sheet.ChoiceList
	axis.ScaleRows
	axis.MotorRows
	Ratio sheet.RatioList
}

func newEntries() *entries {
	return &entries{
		axis:      &sheet.Group{Noun: "axis", Least: 1, Most: sheet.MostRows},
		Name:      axis.NameList(),
		Moves:     sheet.ListOf(sheet.Choose(sheet.Option{Word: "linear", Label: "In mm", Hint: "carriage, nut, filament"}, sheet.Option{Word: "rotary", Label: "In degrees", Hint: "table, spindle"})),
		ScaleRows: axis.NewScaleRows(),
		MotorRows: axis.NewMotorRows(),
		Ratio:     axis.RatioRows(),
	}
}

func (s *entries) Fields() []sheet.Field {
	section := &sheet.Section{Title: "Axes"}
	col := func(key, label, hint string, cells sheet.Cells, suggest ...string) sheet.Field {
		return sheet.Field{Key: key, Label: label, Hint: hint, Section: section, Group: s.axis, Cells: cells, Suggest: suggest}
	}
	return lists.Concat(
		[]sheet.Field{col("name", "Name", "", &s.Name), col("moves", "It moves", "", &s.Moves)},
		s.ScaleRows.Fields(section, s.axis, "Given is", nil, sheet.If("moves", "linear"), sheet.If("moves", "rotary")),
		s.MotorRows.Fields(section, s.axis, nil),
		[]sheet.Field{col("ratio", "Gear ratio", "Motor turns for one output turn: 1 for a direct drive; for gears the teeth on the driven side first, 54:12, or 4.5.", s.Ratio.Cells(), "1")},
	)
}

// A row is an axis of the table, with what is to be said of it.
type row struct{ axis.Row }

func (s *entries) row(i int) row {
	r := row{axis.Row{N: strconv.Itoa(i + 1), Name: axis.NameOf(s.Name.Rows[i], i)}}
	r.Rotary = s.Moves.Rows[i].Word == "rotary"
	r.Setting, r.Key, r.Given = s.ScaleRows.At(i).Setting(r.Rotary)
	motor := s.MotorRows.At(i)
	r.Motor = motor.Motor()
	r.NoMotor = motor.Missing()
	r.Gears = axis.PlainRatio(s.Ratio.Rows[i].Number)
	if !s.Ratio.Rows[i].Given {
		r.NoGears = []string{"ratio"}
	}
	return r
}

func (s *entries) Solve() report.Report {
	r := report.Report{Parts: []report.Part{axis.Meaning}}
	var given []row
	var above []string // what the rows before depend on: the headline is of the first that answers
	fields := s.Fields()
	for i := range s.Name.Rows {
		row := s.row(i)
		above = append(above, row.needs()...)
		if i > 0 && axis.Blank(fields, i) {
			continue
		}
		if !row.Given {
			r.Add(&report.Part{ID: "missing-" + row.N, Title: row.Name, Needs: []string{"name"},
				Blocks: []report.Block{report.Ask{Keys: []string{row.Key}, For: "its other numbers"}}})
			continue
		}
		given = append(given, row)
		r.Add(row.part())
		if r.Answer == nil {
			r.Answer = row.answer(above)
		}
	}
	r.AddFirst(s.overview(given))
	return r
}
