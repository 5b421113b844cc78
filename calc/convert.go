package calc

import (
	"strconv"

	"striderule/calc/lists"
)

var convertPage = Page{
	Slug:     "convert",
	Menu:     "Convert",
	Title:    "Convert between conventions",
	Question: "My new controller wants the other number. What is it?",
	About:    "Turn steps per mm, inch or degree into travel per motor turn or per output turn and back, for one axis or a whole table of them.",
	New:      func() Sheet { return newConvert() },
	Example:  "v=1&name=Heron%20feed,Plover%20X,Plover%20Z&as=,turn&steps=538.0,,800&turn=,36&angle=1.8,1.8,1.8&micro=16,16,16&ratio=54:12,1,1",
	Outputs: lists.Concat(
		settingOutputs("", ""), axisOutputs,
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
	scaleRows
	motorRows
	Ratio ratioList
}

func newConvert() *convertSheet {
	return &convertSheet{
		axis:      &Group{Noun: "axis", Least: 1, Most: MostRows},
		Name:      nameList(),
		Moves:     listOf(choose(Option{"linear", "In mm", "carriage, nut, filament"}, Option{"rotary", "In degrees", "table, spindle"})),
		scaleRows: newScaleRows(),
		motorRows: newMotorRows(),
		Ratio:     ratioRows(),
	}
}

func (s *convertSheet) Fields() []Field {
	section := &Section{Title: "Axes"}
	col := func(key, label, hint string, cells Cells, suggest ...string) Field {
		return Field{Key: key, Label: label, Hint: hint, Section: section, Group: s.axis, Cells: cells, Suggest: suggest}
	}
	return lists.Concat(
		[]Field{col("name", "Name", "", &s.Name), col("moves", "It moves", "", &s.Moves)},
		s.scaleRows.fields(section, s.axis, "Given is", nil, when("moves", "linear"), when("moves", "rotary")),
		s.motorRows.fields(section, s.axis, nil),
		[]Field{col("ratio", "Gear ratio", "Motor turns for one output turn: 1 for a direct drive; for gears the teeth on the driven side first, 54:12, or 4.5.", s.Ratio.cells(), "1")},
	)
}

// A tableRow is an axis of the table, with what is to be said of it.
type tableRow struct{ axisRow }

func (s *convertSheet) row(i int) tableRow {
	r := tableRow{axisRow{n: strconv.Itoa(i + 1), name: axisName(s.Name.Rows[i], i)}}
	r.rotary = s.Moves.Rows[i].Word == "rotary"
	r.setting, r.key, r.given = s.scaleRows.at(i).setting(r.rotary)
	motor := s.motorRows.at(i)
	r.motor = motor.motor()
	r.noMotor = motor.missing()
	r.gears = plainRatio(s.Ratio.rows[i].Number)
	if !s.Ratio.rows[i].Given {
		r.noGears = []string{"ratio"}
	}
	return r
}

func (s *convertSheet) Solve() Report {
	r := Report{Parts: []Part{meaning}}
	var given []tableRow
	var above []string // what the rows before depend on: the headline is of the first that answers
	fields := s.Fields()
	for i := range s.Name.Rows {
		row := s.row(i)
		above = append(above, row.needs()...)
		if i > 0 && blank(fields, i) {
			continue
		}
		if !row.given {
			r.add(&Part{ID: "missing-" + row.n, Title: row.name, Needs: []string{"name"},
				Blocks: []Block{Ask{[]string{row.key}, "its other numbers"}}})
			continue
		}
		given = append(given, row)
		r.add(row.part())
		if r.Answer == nil {
			r.Answer = row.answer(above)
		}
	}
	r.insert(1, s.overview(given))
	return r
}
