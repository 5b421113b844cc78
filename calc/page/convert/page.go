package convert

import (
	"strconv"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/report"
	"striderule/calc/sheet"
)

// Page tells the same setting as another controller stores it.
var Page = sheet.Page{
	Slug:     "convert",
	Menu:     pageMenu,
	Title:    pageTitle,
	Question: pageQuestion,
	New:      func() sheet.Sheet { return newEntries() },
	Example:  "v=1&name=Heron%20extruder,Plover%20X,Plover%20Z&as=,turn&steps=538.0,,800&turn=,36&angle=1.8,1.8,1.8&micro=16,16,16&ratio=54:12,1,1",
	Outputs:  lists.Concat(axis.SettingOutputs(), axis.Outputs),
	Tasks:    []sheet.Task{task},
}

// entries are a table of axes, each with its setting in one convention.
type entries struct {
	axis  *sheet.Group
	Name  sheet.TextList
	Moves sheet.ChoiceList
	axis.ScaleRows
	axis.MotorRows
	Ratio sheet.RatioList
	Wants sheet.Choice
}

func newEntries() *entries {
	return &entries{
		axis:      &sheet.Group{Words: axis.AxisRows, Least: 1, Most: sheet.MostRows},
		Name:      axis.NameList(),
		Moves:     sheet.ListOf(sheet.Choose(linear, rotary)),
		ScaleRows: axis.NewScaleRows(),
		MotorRows: axis.NewMotorRows(),
		Ratio:     axis.RatioRows(),
		Wants:     axis.WantsChoice(),
	}
}

func (s *entries) Fields() []sheet.Field {
	col := func(key, label, hint string, cells sheet.Cells, suggest ...string) sheet.Field {
		return sheet.Field{Key: key, Label: label, Hint: hint, Section: secAxes, Group: s.axis, Cells: cells, Suggest: suggest}
	}
	return sheet.Need(lists.Concat(
		[]sheet.Field{col("name", nameLabel, "", &s.Name), col("moves", movesLabel, "", &s.Moves)},
		s.ScaleRows.Fields(secAxes, s.axis, asLabel, nil, sheet.If("moves", linear.Word), sheet.If("moves", rotary.Word)),
		s.MotorRows.Fields(secAxes, s.axis, nil),
		[]sheet.Field{
			col("ratio", ratioLabel, ratioHint, s.Ratio.Cells(), "1"),
			{Key: "wants", Label: wantsLabel, Section: secNew, Cells: sheet.One(&s.Wants)},
		},
	), "wants", "steps")
}

// leastTurn is the travel per motor turn, mm, below which a bare number is more likely in inches.
const leastTurn = 0.3

// A row is an axis of the table, with what is to be said of it.
type row struct {
	axis.Row
	ratio string // what the gear ratio is called
	wants drive.Convention
	told  bool // what is wanted
}

func (s *entries) row(i int) row {
	r := row{Row: axis.Row{N: strconv.Itoa(i + 1), Name: axis.NameOf(s.Name.Rows[i], i)}, ratio: ratioLabel}
	r.wants, r.told = axis.Wanted(&s.Wants)
	r.Rotary = s.Moves.Rows[i].Word == rotary.Word
	r.Setting, r.Key, r.Given = s.ScaleRows.At(i).Setting(r.Rotary)
	motor := s.MotorRows.At(i)
	r.Motor = motor.Motor()
	r.NoMotor = motor.Missing()
	r.Gears = axis.PlainRatio(s.Ratio.Rows[i].Number)
	if !s.Ratio.Rows[i].Given {
		r.NoGears = []string{"ratio"}
	}
	if typed := s.Ratio.Rows[i].Typed(); strings.Contains(typed, ":") {
		r.ratio = ratioTyped.Fill("typed", typed)
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
		axis.ReadRatio(&r.Remarks, "ratio", i, &s.Ratio.Rows[i])
		axis.DoubtInches(&r.Remarks, "turn", i, &s.Turn.Rows[i], leastTurn)
		if !row.Given {
			r.Add(&report.Part{ID: "missing-" + row.N, Title: row.Name, Needs: []string{"name"},
				Blocks: []report.Block{report.Ask{Keys: []string{row.Key}, For: theOther}}})
			continue
		}
		given = append(given, row)
		part := row.part()
		if r.Answer == nil {
			r.Answer = row.answer(above)
		}
		if r.Answer == nil || len(given) > 1 { // the headline has its own
			for _, n := range row.doubts() {
				part.Add(n)
			}
		}
		if r.Answer != nil {
			part.Fold(rowBrief)
		}
		r.Add(part)
	}
	r.AddFirst(s.overview(given))
	return r
}
