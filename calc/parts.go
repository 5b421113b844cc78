package calc

import "striderule/calc/lists"

var partsPage = Page{
	Slug:     "parts",
	Menu:     "Parts",
	Title:    "Work it out from the parts",
	Question: "Which value do I start with, and what does a setting say about the parts?",
	About:    "Steps per mm and travel per motor turn of a whole machine from its motors, gears, pulleys, screws and rollers; and the way back, from a setting to the part.",
	New:      func() Sheet { return newParts() },
	Example: "v=1&name=Heron%20feed,Plover%20X,Plover%20Y,Plover%20Z&out=roller,,,screw&angle=1.8,1.8,1.8,1.8&micro=16,16,16,16" +
		"&gears=pairs&driving=12&driven=54&pitch=,2,2&teeth=,18,18&screw=,,,Tr10x4%28P2%29&roller=8.5",
	Outputs: lists.Concat(
		settingOutputs("", ""), axisOutputs,
		[]Output{
			{"ratio", "Gear ratio: motor turns for one output turn", "1"},
			{"teeth", "Teeth of the pulley or pinion that a setting implies", "1"},
			{"lead", "Lead of the screw that a setting implies", "mm"},
			{"diameter", "Effective diameter of the roller that a setting implies", "mm"},
			{"driven", "Teeth on the driven side that a setting implies", "1"},
			{"nearest", "Nearest part that is made: teeth or lead", "1 or mm"},
			{"off", "What the setting implies over the nearest part, less one", "%"},
			{"fitting", "Setting that the nearest part gives", "as the setting"},
		},
	),
	Tasks: []Task{
		{"I am setting up a machine from its parts", "Motors, gears, pulleys, screws and rollers in; the first value of every axis out.", ""},
		{"I know the setting, not the part", "Which pulley, lead, roller or gear ratio a setting implies, and whether such a part is made.", "v=1&find=element"},
	},
}

// What can be found.
const (
	findSetting = "setting"
	findElement = "element"
	findGears   = "gears"
)

// A partsSheet is a machine: a row for each axis.
type partsSheet struct {
	axis *Group
	Name textList
	outputRows
	Find choiceList
	scaleRows
	motorRows
	Gears   choiceList
	Driving List[Teeth, *Teeth]
	Driven  List[Teeth, *Teeth]
	Ratio   ratioList
	Beside  countList // the teeth on the motor side, where the ratio is found
}

func newParts() *partsSheet {
	return &partsSheet{
		axis:       &Group{Noun: "axis", Least: 1, Most: MostRows},
		Name:       nameList(),
		outputRows: newOutputRows(),
		Find: listOf(choose(
			Option{findSetting, "The setting", "from the parts"},
			Option{findElement, "The part's size", "of pulley, screw, roller or pinion, from the setting"},
			Option{findGears, "The gear ratio", "from the setting"},
		)),
		scaleRows: newScaleRows(),
		motorRows: newMotorRows(),
		Gears:     listOf(choose(gearsNone, gearsPairs, gearsRatio)),
		Driving:   listOf(Teeth{}), Driven: listOf(Teeth{}),
		Ratio:  ratioRows(),
		Beside: columnOf(teethInput()),
	}
}

func (s *partsSheet) Fields() []Field {
	section := &Section{Title: "Axes"}
	col := func(key, label, hint string, on []When, cells Cells) Field {
		return Field{Key: key, Label: label, Hint: hint, Section: section, When: on, Group: s.axis, Cells: cells}
	}
	known := when("find", findSetting, findGears) // the output element is
	unless := func(key string, words ...string) []When { return []When{{Key: key, Words: words, Not: true}} }
	element := outputFields(section, s.axis, "", nil, known, s.outputRows.cells())
	geared := func(kind string) []When { return and(unless("find", findGears), "gears", kind) }
	return lists.Concat(
		[]Field{col("name", "Name", "", nil, &s.Name), element[0], col("find", "Wanted is", "", nil, &s.Find)},
		s.scaleRows.fields(section, s.axis, "Known is", when("find", findElement, findGears), unless("out", "rotary"), when("out", "rotary")),
		s.motorRows.fields(section, s.axis, nil),
		[]Field{
			col("gears", "Gears between motor and output", "", unless("find", findGears), &s.Gears),
			col("driving", "Teeth on the motor side", "Several stages in order from the motor, with an x between them: 12 x 20. For a worm: its number of starts.", geared("pairs"), &s.Driving),
			col("driven", "Teeth on the driven side", "As many stages, in the same order: 54 x 40. For a worm: the teeth of its wheel.", geared("pairs"), &s.Driven),
			col("ratio", "Gear ratio", "Motor turns for one output turn, above 1 where the output turns slower: 4.5, or 54:12.", geared("ratio"), s.Ratio.cells()),
			col("beside", "Teeth on the motor side, if known", "Then the driven side is found too. For a worm: its number of starts.", when("find", findGears), s.Beside.cells()),
		},
		element[1:],
	)
}
