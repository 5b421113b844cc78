package swap

import (
	"striderule/calc/sheet"
	"striderule/calc/word"
)

const (
	pageMenu     = "Swap"
	pageTitle    = "Swap a part"
	pageQuestion = "I fitted a new motor, driver or other part. Which settings change?"
)

var pageTasks = []sheet.Task{
	{Occasion: sheet.Changed, Situation: "I fitted a new motor", Help: "For example 0.9° instead of 1.8°: see which settings change.", Fragment: "v=1&changed=angle"},
	{Occasion: sheet.Changed, Situation: "I changed the driver or its microsteps", Help: "See what changes with the microsteps, and what stays.", Fragment: "v=1&changed=micro"},
	{Occasion: sheet.Changed, Situation: "I changed gears", Help: "Enter the old and the new teeth, get the new setting.", Fragment: "v=1&changed=gears"},
	{Occasion: sheet.Changed, Situation: "I changed a pulley, belt, screw or drive gear", Help: "Compare the old part with the new one, get the new setting.", Fragment: "v=1&changed=out"},
}

var pageOutputs = []sheet.Output{
	{ID: "steps", Label: "Steps per mm after the swap", Unit: "steps/mm, steps/°"},
	{ID: "turn", Label: "Travel per motor turn after the swap", Unit: "mm/rev, °/rev"},
	{ID: "output", Label: "Travel per output turn after the swap", Unit: "mm/rev, °/rev"},
	{ID: "was-steps", Label: "Steps per mm before the swap", Unit: "steps/mm, steps/°"},
	{ID: "was-turn", Label: "Travel per motor turn before the swap", Unit: "mm/rev, °/rev"},
	{ID: "was-output", Label: "Travel per output turn before the swap", Unit: "mm/rev, °/rev"},
	{ID: "x-steps", Label: "Factor of steps per mm", Unit: "1"},
	{ID: "x-turn", Label: "Factor of travel per motor turn", Unit: "1"},
	{ID: "x-output", Label: "Factor of travel per output turn", Unit: "1"},
}

// The form.
var (
	secChanged = sheet.Section{Title: "What did you swap?"}
	secSetting = sheet.Section{Title: "Setting before the swap"}
	secParts   = sheet.Section{Title: "Old part and new part"}
	secKept    = sheet.Section{Title: "Unchanged parts", Folded: true}
)

const (
	changedLabel = "Swapped parts"
	movesLabel   = "Axis"
	settingHint  = "The value in use with the old motor, microsteps and parts, with all its digits."
)

var changedOptions = []sheet.Option{
	{Word: "angle", Label: "Motor", Hint: "different step angle"},
	{Word: "micro", Label: "Driver", Hint: "different microsteps"},
	{Word: "gears", Label: "Gears", Hint: "different teeth, or a whole geared extruder"},
	{Word: "out", Label: "Pulley, belt, screw or drive gear", Brief: "Belt, screw, drive gear"},
}

var movesOptions = []sheet.Option{
	{Word: "linear", Label: "Linear", Hint: "X, Y, Z or any axis that moves in mm"},
	{Word: "feed", Label: "Extruder", Hint: "feeds filament"},
	{Word: "rotary", Label: "Rotary", Hint: "any axis that turns, in degrees"},
}

// labels are those of the fields by their keys: each tells the old part from the new one by
// itself, as it stands alone where it is asked for.
var labels = word.Table{
	{"steps", "Old steps per mm"}, {"stepsdeg", "Old steps per degree"},
	{"turn", "Old travel per motor turn"}, {"turndeg", "Old degrees per motor turn"},
	{"output", "Old travel per output turn"}, {"outputdeg", "Old degrees per output turn"},

	{"angle", "Old step angle"}, {"anglenew", "New step angle"}, {"anglekept", "Step angle"},
	{"micro", "Old microsteps"}, {"micronew", "New microsteps"}, {"microkept", "Microsteps"},

	{"gears", "Old gears"}, {"gearsnew", "New gears"}, {"gearskept", "Gears"},
	{"driving", "Old teeth, motor side"}, {"drivingnew", "New teeth, motor side"}, {"drivingkept", "Teeth, motor side"},
	{"driven", "Old teeth, driven side"}, {"drivennew", "New teeth, driven side"}, {"drivenkept", "Teeth, driven side"},
	{"ratio", "Old gear ratio"}, {"rationew", "New gear ratio"}, {"ratiokept", "Gear ratio"},

	{"out", "Driven by (old)"}, {"outnew", "Driven by (new)"},
	{"pitch", "Old belt pitch"}, {"pitchnew", "New belt pitch"},
	{"teeth", "Old pulley teeth"}, {"teethnew", "New pulley teeth"},
	{"screw", "Old screw"}, {"screwnew", "New screw"},
	{"roller", "Old drive gear, effective diameter"}, {"rollernew", "New drive gear, effective diameter"},
	{"module", "Old rack, module"}, {"modulenew", "New rack, module"},
	{"pinion", "Old pinion teeth"}, {"pinionnew", "New pinion teeth"},
	{"drum", "Old drum, diameter"}, {"drumnew", "New drum, diameter"},
	{"cable", "Old cable, diameter"}, {"cablenew", "New cable, diameter"},
	{"first", "Old first thread"}, {"firstnew", "New first thread"},
	{"second", "Old second thread"}, {"secondnew", "New second thread"},
}

const notOfOneKind = "A linear axis can't become a rotary one, or the other way round. Use the Parts page for a new kind of axis."
