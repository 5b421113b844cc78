package parts

import (
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/sheet"
)

// Page works a first setting out from the parts, and the way back.
var Page = sheet.Page{
	Slug:     "parts",
	Menu:     pageMenu,
	Title:    pageTitle,
	Question: pageQuestion,
	New:      func() sheet.Sheet { return newEntries() },
	Example: "v=1&name=Heron%20extruder,Plover%20X,Plover%20Y,Plover%20Z&out=roller,,,screw&angle=1.8,1.8,1.8,1.8&micro=16,16,16,16" +
		"&gears=pairs&driving=12&driven=54&pitch=,2,2&teeth=,18,18&screw=,,,Tr10x4%28P2%29&roller=8.5",
	Outputs: lists.Concat(axis.SettingOutputs(), axis.Outputs, pageOutputs),
	Tasks:   pageTasks,
}

// What can be found.
const (
	findSetting = "setting"
	findElement = "element"
	findGears   = "gears"
)

// entries are a machine: a row for each axis.
type entries struct {
	axis *sheet.Group
	Name sheet.TextList
	axis.OutputRows
	Find sheet.ChoiceList
	axis.ScaleRows
	axis.MotorRows
	Gears   sheet.ChoiceList
	Driving sheet.List[axis.Teeth, *axis.Teeth]
	Driven  sheet.List[axis.Teeth, *axis.Teeth]
	Ratio   sheet.RatioList
	Beside  sheet.CountList // the teeth on the motor side, where the ratio is found
}

func newEntries() *entries {
	return &entries{
		axis:       &sheet.Group{Words: axis.AxisRows, Least: 1, Most: sheet.MostRows},
		Name:       axis.NameList(),
		OutputRows: axis.NewOutputRows(),
		Find:       sheet.ListOf(sheet.Choose(findOptions...)),
		ScaleRows:  axis.NewScaleRows(),
		MotorRows:  axis.NewMotorRows(),
		Gears:      sheet.ListOf(sheet.Choose(axis.GearsNone, axis.GearsPairs, axis.GearsRatio)),
		Driving:    sheet.ListOf(axis.Teeth{}), Driven: sheet.ListOf(axis.Teeth{}),
		Ratio:  axis.RatioRows(),
		Beside: sheet.ColumnOf(axis.TeethInput()),
	}
}

func (s *entries) Fields() []sheet.Field {
	col := func(key, label, hint string, on []sheet.When, cells sheet.Cells) sheet.Field {
		return sheet.Field{Key: key, Label: label, Hint: hint, Section: &secAxes, When: on, Group: s.axis, Cells: cells}
	}
	known := sheet.If("find", findSetting, findGears) // the output element is
	unless := func(key string, words ...string) []sheet.When {
		return []sheet.When{{Key: key, Words: words, Not: true}}
	}
	element := axis.OutputFields(&secAxes, s.axis, "", nil, known, s.OutputRows.Cells())
	geared := func(kind string) []sheet.When { return sheet.And(unless("find", findGears), "gears", kind) }
	return sheet.Need(lists.Concat(
		[]sheet.Field{col("name", nameLabel, "", nil, &s.Name), element[0], col("find", findLabel, "", nil, &s.Find)},
		s.ScaleRows.Fields(&secAxes, s.axis, knownLabel, sheet.If("find", findElement, findGears), unless("out", "rotary"), sheet.If("out", "rotary")),
		s.MotorRows.Fields(&secAxes, s.axis, nil),
		[]sheet.Field{
			col("gears", gearsLabel, "", unless("find", findGears), &s.Gears),
			col("driving", drivingLabel, drivingHint, geared("pairs"), &s.Driving),
			col("driven", drivenLabel, drivenHint, geared("pairs"), &s.Driven),
			col("ratio", ratioLabel, ratioHint, geared("ratio"), s.Ratio.Cells()),
			col("beside", besideLabel, besideHint, sheet.If("find", findGears), s.Beside.Cells()),
		},
		element[1:],
	), "out")
}
