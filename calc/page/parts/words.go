package parts

import "striderule/calc/sheet"

const (
	pageMenu     = "Parts"
	pageTitle    = "From the parts"
	pageQuestion = "Which setting do I start with, and what does a setting say about the parts?"
)

var pageTasks = []sheet.Task{
	{Occasion: sheet.SettingUp, Situation: "I'm setting up a machine from scratch", Help: "Enter motors, gears, pulleys and screws, get a starting value for every axis.", Fragment: ""},
	{Occasion: sheet.SettingUp, Situation: "I know the setting, not the part", Help: "Work back from the setting to the pulley, screw, drive gear or gear ratio.", Fragment: "v=1&find=element"},
}

var pageOutputs = []sheet.Output{
	{ID: "ratio", Label: "Gear ratio", Unit: "1"},
	{ID: "teeth", Label: "Teeth of the pulley or pinion", Unit: "1"},
	{ID: "lead", Label: "Lead of the screw", Unit: "mm"},
	{ID: "diameter", Label: "Effective diameter of the drive gear, or of the drum plus the cable", Unit: "mm"},
	{ID: "driven", Label: "Teeth on the driven side", Unit: "1"},
	{ID: "nearest", Label: "Nearest real part", Unit: "1, mm"},
	{ID: "off", Label: "Difference from the nearest part", Unit: "%"},
	{ID: "fitting", Label: "Setting for the nearest part", Unit: "as the setting"},
}

// The form.
var secAxes = sheet.Section{Title: "Axes"}

const (
	nameLabel  = "Name"
	findLabel  = "Work out"
	knownLabel = "You know"

	gearsLabel   = "Gears"
	drivingLabel = "Teeth on the motor side"
	drivingHint  = "Several stages in order from the motor: 12 x 20. For a worm: its number of starts."
	drivenLabel  = "Teeth on the driven side"
	drivenHint   = "In the same order: 54 x 40. For a worm: the teeth of its wheel."
	ratioLabel   = "Gear ratio"
	ratioHint    = "Motor turns for one output turn: 4.5, or 54:12 for teeth 12 → 54; 1 if there are no gears."
	besideLabel  = "Teeth on the motor side, if known"
	besideHint   = "Gives the teeth on the driven side too. For a worm: its number of starts."
)

var findOptions = []sheet.Option{
	{Word: findSetting, Label: "The setting", Hint: "from the parts"},
	{Word: findElement, Label: "The part's size", Hint: "pulley teeth, screw lead, drive-gear diameter or pinion teeth"},
	{Word: findGears, Label: "The gear ratio", Hint: "from the setting"},
}
