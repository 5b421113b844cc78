package parts

import (
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/sheet"
)

// Page works a first setting out from the parts, and the way back.
var Page = sheet.Page{
	Slug:     "parts",
	Menu:     "Parts",
	Title:    "Work it out from the parts",
	Question: "Which value do I start with, and what does a setting say about the parts?",
	About:    "Steps per mm and travel per motor turn of a whole machine from its motors, gears, pulleys, screws and rollers; and the way back, from a setting to the part.",
	New:      func() sheet.Sheet { return newEntries() },
	Example: "v=1&name=Heron%20feed,Plover%20X,Plover%20Y,Plover%20Z&out=roller,,,screw&angle=1.8,1.8,1.8,1.8&micro=16,16,16,16" +
		"&gears=pairs&driving=12&driven=54&pitch=,2,2&teeth=,18,18&screw=,,,Tr10x4%28P2%29&roller=8.5",
	Outputs: lists.Concat(
		axis.SettingOutputs("", ""), axis.Outputs,
		[]sheet.Output{
			{ID: "ratio", Label: "Gear ratio: motor turns for one output turn", Unit: "1"},
			{ID: "teeth", Label: "Teeth of the pulley or pinion that a setting implies", Unit: "1"},
			{ID: "lead", Label: "Lead of the screw that a setting implies", Unit: "mm"},
			{ID: "diameter", Label: "Effective diameter of the roller that a setting implies", Unit: "mm"},
			{ID: "driven", Label: "Teeth on the driven side that a setting implies", Unit: "1"},
			{ID: "nearest", Label: "Nearest part that is made: teeth or lead", Unit: "1 or mm"},
			{ID: "off", Label: "What the setting implies over the nearest part, less one", Unit: "%"},
			{ID: "fitting", Label: "Setting that the nearest part gives", Unit: "as the setting"},
		},
	),
	Tasks: []sheet.Task{
		{Situation: "I am setting up a machine from its parts", Help: "Motors, gears, pulleys, screws and rollers in; the first value of every axis out.", Fragment: ""},
		{Situation: "I know the setting, not the part", Help: "Which pulley, lead, roller or gear ratio a setting implies, and whether such a part is made.", Fragment: "v=1&find=element"},
	},
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
		axis:       &sheet.Group{Noun: "axis", Least: 1, Most: sheet.MostRows},
		Name:       axis.NameList(),
		OutputRows: axis.NewOutputRows(),
		Find: sheet.ListOf(sheet.Choose(
			sheet.Option{Word: findSetting, Label: "The setting", Hint: "from the parts"},
			sheet.Option{Word: findElement, Label: "The part's size", Hint: "of pulley, screw, roller or pinion, from the setting"},
			sheet.Option{Word: findGears, Label: "The gear ratio", Hint: "from the setting"},
		)),
		ScaleRows: axis.NewScaleRows(),
		MotorRows: axis.NewMotorRows(),
		Gears:     sheet.ListOf(sheet.Choose(axis.GearsNone, axis.GearsPairs, axis.GearsRatio)),
		Driving:   sheet.ListOf(axis.Teeth{}), Driven: sheet.ListOf(axis.Teeth{}),
		Ratio:  axis.RatioRows(),
		Beside: sheet.ColumnOf(axis.TeethInput()),
	}
}

func (s *entries) Fields() []sheet.Field {
	section := &sheet.Section{Title: "Axes"}
	col := func(key, label, hint string, on []sheet.When, cells sheet.Cells) sheet.Field {
		return sheet.Field{Key: key, Label: label, Hint: hint, Section: section, When: on, Group: s.axis, Cells: cells}
	}
	known := sheet.If("find", findSetting, findGears) // the output element is
	unless := func(key string, words ...string) []sheet.When {
		return []sheet.When{{Key: key, Words: words, Not: true}}
	}
	element := axis.OutputFields(section, s.axis, "", nil, known, s.OutputRows.Cells())
	geared := func(kind string) []sheet.When { return sheet.And(unless("find", findGears), "gears", kind) }
	return lists.Concat(
		[]sheet.Field{col("name", "Name", "", nil, &s.Name), element[0], col("find", "Wanted is", "", nil, &s.Find)},
		s.ScaleRows.Fields(section, s.axis, "Known is", sheet.If("find", findElement, findGears), unless("out", "rotary"), sheet.If("out", "rotary")),
		s.MotorRows.Fields(section, s.axis, nil),
		[]sheet.Field{
			col("gears", "Gears between motor and output", "", unless("find", findGears), &s.Gears),
			col("driving", "Teeth on the motor side", "Several stages in order from the motor, with an x between them: 12 x 20. For a worm: its number of starts.", geared("pairs"), &s.Driving),
			col("driven", "Teeth on the driven side", "As many stages, in the same order: 54 x 40. For a worm: the teeth of its wheel.", geared("pairs"), &s.Driven),
			col("ratio", "Gear ratio", "Motor turns for one output turn, above 1 where the output turns slower: 4.5, or 54:12.", geared("ratio"), s.Ratio.Cells()),
			col("beside", "Teeth on the motor side, if known", "Then the driven side is found too. For a worm: its number of starts.", sheet.If("find", findGears), s.Beside.Cells()),
		},
		element[1:],
	)
}
