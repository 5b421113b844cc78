package axis

import (
	"striderule/calc/sheet"
	"striderule/calc/word"
)

// How a controller stores a setting.
var (
	asSteps  = sheet.Option{Word: AsSteps, Label: "Steps per mm", Brief: "stores steps", Hint: "microsteps sent for one millimetre or degree"}
	asTurn   = sheet.Option{Word: AsTurn, Label: "Travel per motor turn", Brief: "stores travel per turn", Hint: "how far the axis goes when the motor turns once"}
	asOutput = sheet.Option{Word: AsOutput, Label: "Travel per output turn", Brief: "stores travel per output turn", Hint: "per turn of the output shaft; the gear ratio is stored separately"}

	wantsUnsaid = sheet.Option{Word: Unsaid, Label: "Don't know yet", Hint: "shows what to enter in each case"}
)

// A setting.
const (
	asLabel        = "How your controller stores it"
	stepsLabel     = "Steps per mm"
	turnLabel      = "Travel per motor turn"
	outputLabel    = "Travel per output turn"
	stepsDegLabel  = "Steps per degree"
	turnDegLabel   = "Degrees per motor turn"
	outputDegLabel = "Degrees per output turn"

	stepsInches  = "At the motor and microsteps below. For inches add the unit: 13665.2 steps/in."
	stepsDegrees = "At the motor and microsteps below."
	turnInches   = "Without a unit: mm. For inches type 0.2342 in."
	outputInches = "Without a unit: mm. For inches type 1.0538 in."
)

// Motor and gears.
const (
	stepAngleLabel  = "Step angle"
	microstepsLabel = "Microsteps"
	motorAngleLabel = "Step angle of the motor"
	motorShort      = "Motor"
	AngleHint       = "On the motor's label or in its data sheet: 1.8° is 200 full steps per turn, 0.9° is 400."
	MicroHint       = "As set on the driver (jumpers or firmware). Steps per mm are right only at these. Ignore interpolation."

	gearsLabel   = "Gears"
	drivingLabel = "Teeth on the motor side"
	drivingHint  = "For a worm: its number of starts."
	drivenLabel  = "Teeth on the driven side"
	drivenHint   = "For a worm: the teeth of its wheel."
	ratioLabel   = "Gear ratio"
	ratioHint    = "Motor turns for one output turn: 4.5, or 54:12 for teeth 12 → 54; 1 if there are no gears."
)

// The kinds of gearing.
var (
	GearsUnknown = sheet.Option{Word: "unknown", Label: "Don't know", Hint: "leaves out what needs it"}
	GearsNone    = sheet.Option{Word: "none", Label: "None", Hint: "no gears between motor and output"}
	GearsPairs   = sheet.Option{Word: "pairs", Label: "By teeth", Hint: "gears, or pulleys with a belt between them"}
	GearsRatio   = sheet.Option{Word: "ratio", Label: "By ratio", Hint: "motor turns for one output turn"}
)

// The output element.
var outputOptions = []sheet.Option{
	{Word: "belt", Label: "Belt", Hint: ""},
	{Word: "screw", Label: "Lead screw", Hint: ""},
	{Word: "roller", Label: "Drive gear", Hint: "for filament"},
	{Word: "rack", Label: "Rack and pinion", Hint: ""},
	{Word: "rotary", Label: "Rotary table", Hint: ""},
	{Word: "belt2", Label: "Belt with 2:1 moving pulley", Hint: "the axis moves half as far as the belt"},
	{Word: "drum", Label: "Cable drum", Hint: ""},
	{Word: "drum2", Label: "Cable drum with 2:1 moving pulley", Hint: "the axis moves half as far as the cable"},
	{Word: "differential", Label: "Differential screw", Hint: "two threads, of which the axis moves by the difference"},
}

const (
	outLabel      = "Driven by"
	pitchLabel    = "Belt pitch"
	pitchHint     = "From tooth to tooth."
	teethLabel    = "Pulley teeth"
	screwLabel    = "Screw"
	screwHint     = "Its designation such as Tr8x8(P2), its lead (8 mm), pitch x starts (2 mm x 4), or threads per inch (20 tpi; 20 tpi x 2 for two starts). Starts: the threads that begin at its end."
	diameterLabel = effectiveDiameter
	diameterHint  = "Where it grips: slightly less than the outside. The catalogue value will do to start with."
	moduleLabel   = "Module of the rack"
	moduleHint    = "In mm; or the diametral pitch of inch gears, 24 DP."
	pinionLabel   = "Pinion teeth"
	drumLabel     = "Drum diameter"
	drumHint      = "Where the cable lies, without it. Only for a single layer."
	cableLabel    = "Cable diameter"
	cableHint     = "Of a flat band: its thickness."
	firstLabel    = "First thread"
	firstHint     = "In the fixed nut, as for a lead screw: M8x1.25 or 20 tpi. Add LH if it's left-hand."
	secondLabel   = "Second thread"
	secondHint    = "In the nut that moves. The axis moves by the difference of the two leads, or by their sum if one thread is left-hand."
)

// The measuring tool.
var (
	ownTool      = sheet.Option{Word: OwnTool, Label: "Another", Hint: "enter its resolution below"}
	ownAngleTool = sheet.Option{Word: OwnTool, Label: "Another", Hint: "such as a dial indicator on an arm; enter its resolution below"}
)

const (
	resolutionLabel   = "Resolution"
	resolutionHint    = "Smallest digit of the display, or line spacing."
	resolutionDegHint = "Smallest digit of the display, or line spacing. A dial on an arm: its resolution ÷ radius × 57.3. So 0.01 mm at 100 mm is 0.006°."
	accuracyLabel     = "Accuracy, ±"
	accuracyHint      = "From its data sheet. Blank: the usual one of such a tool."
)

// What an answer takes for granted of a tool whose accuracy was left blank.
const (
	resolutionOnly               = "Only your tool's resolution counts here. Enter its accuracy too, if you know it."
	usualAccuracy  word.Template = "This assumes that {tool} is accurate to the usual ± {accuracy}."
)

// Why a text is no list of teeth; see unit.Error.
const (
	notTeeth   word.Template = "{field}: “{typed}” isn't a list of teeth. Write it like 12, or 12 x 20 for two stages, in order from the motor."
	teethRange word.Template = "{field}: “{typed}” is out of range. Each number of teeth must be from {least} to {most}."
	manyStages word.Template = "{field}: “{typed}” has more than {n} stages. Write the product of some of them as one stage."
)

const aboutTeeth = "a number of teeth, 1 to 10000; 12 x 20 for two stages, in order from the motor"
