package convert

import (
	"striderule/calc/sheet"
	"striderule/calc/word"
)

// The page.
const (
	pageMenu     = "Convert"
	pageTitle    = "Convert a setting"
	pageQuestion = "My new controller stores the setting differently: what do I enter there?"
)

var task = sheet.Task{
	Occasion:  sheet.Changed,
	Situation: "My new controller stores the setting differently",
	Help:      "Turn steps per mm into travel per motor turn, or back, for all axes at once.",
}

// The form.
var (
	secAxes = &sheet.Section{Title: "Axes"}
	secNew  = &sheet.Section{Title: "The new controller"}

	linear = sheet.Option{Word: "linear", Label: "Linear", Hint: "in mm; an extruder too"}
	rotary = sheet.Option{Word: "rotary", Label: "Rotary", Hint: "in degrees"}
)

const (
	nameLabel  = "Name"
	movesLabel = "Axis type"
	asLabel    = "You have"
	ratioLabel = "Gear ratio"
	wantsLabel = "Your new controller stores"
	ratioHint  = "Motor turns for one output turn: 4.5, or 54:12 for teeth 12 → 54; 1 if there are no gears."
)

// The answer.
const (
	theOther                  = "the converted setting"
	answerLabel word.Template = "{setting}, {axis}"
	sameAs      word.Template = "Same as {setting}."
	sameAt      word.Template = "Same as {setting} with a {angle}° motor at {micro} microsteps."
	sameKind                  = "It stores the same: keep the number as long as motor, microsteps and gears stay."
	tellWhich                 = "Choose what your new controller stores, and only that is shown."

	ifGeared = "If there are gears, and the new controller stores their ratio separately, fill in the gear ratio: that needs another number."

	dependsTitle  word.Template = "{axis}: depends on the new controller"
	togetherTitle word.Template = "{axis}: enter these together"
	ifItStores    word.Template = "If it stores {setting}, enter:"
	ratioTyped    word.Template = "Gear ratio, {typed}"

	ratioUnused word.Template = "The gear ratio isn't used for {setting}: the travel per motor turn you entered has the gears in it."
	wholeTurn                 = "One output turn of a rotary axis is 360°, unless more gears follow."
	ifPerOutput word.Template = "If {travel} is per output turn, it's {fit}."
	ifPerMotor  word.Template = "If {travel} is per motor turn, it's {fit}."

	allTitle   = "All axes at a glance"
	allCaption = "All axes"
	unknown    = "–"
)

// What heads the columns of the table of all axes: where one number is wanted of each, where
// the gear ratio belongs to it, and where nobody has told which.
var (
	oneHead   = []string{"Axis", "You have", "Converted"}
	ratioHead = []string{"Axis", "You have", "Travel per output turn", "Gear ratio"}
	eachHead  = []string{"Axis", "Steps per mm or degree", "Travel per motor turn", "Travel per output turn", "Gear ratio"}
)

// rowBrief is what the folded part of an axis holds.
const rowBrief = "all that belongs together"
