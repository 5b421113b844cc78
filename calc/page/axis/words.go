package axis

import "striderule/calc/word"

// What a setting in a convention is called: alone, and within a sentence or behind another word.
var (
	settingNames       = [...]string{"Steps per mm", "Travel per motor turn", "Travel per output turn"}
	settingNamesWithin = [...]string{"steps per mm", "travel per motor turn", "travel per output turn"}
)

const (
	stepsPerDegree       = "Steps per degree"
	stepsPerDegreeWithin = "steps per degree"

	linearTravel                 = "mm or °"
	linearOrRotary word.Template = "{linear} or {rotary}" // units
)

// What is known of an axis beside its setting.
const (
	stepsPerInch    = "Steps per inch"
	travelPerInch   = "Travel per motor turn in inches"
	stepsPerTurn    = "Steps per turn of the axis"
	stepsOfRotary   = "Steps per turn of a rotary axis"
	fullSteps       = "Full steps per motor turn"
	travelFullStep  = "Travel per full step"
	travelMicrostep = "Travel per microstep"
	travelPerStep   = "travel per full step and per microstep"
	gearsInIt       = "The gears are in this number. If the controller has a gear ratio as well, leave that at 1."
	stepsBeside     = "the full steps per turn and microsteps to enter with it"

	nameAbout               = "a name of your own"
	axisOf    word.Template = "Axis {n}"

	beforeAndAfter = "Before and after"
	beforeHead     = "Before"
	afterHead      = "After"

	turnsFaster = "A gear ratio below 1 means that the output turns faster than the motor. If it doesn't, turn the ratio round: 54:12, not 12:54."
)

// What the conventions mean.
const (
	meaningTitle  = "What these numbers mean"
	meaningSteps  = "Steps per mm: the microsteps your controller sends for one millimetre, with motor, microsteps, gears and output in one number."
	meaningTurn   = "Travel per motor turn: how far the axis goes when the motor turns once. Controllers that store it also store full steps per turn and microsteps."
	meaningOutput = "Travel per output turn: how far it goes per turn of the output shaft. The gear ratio is stored separately."
)

// A partWords says what a setting makes of a part: which real one is nearest, and what to check
// where none is. {size} is that of the nearest part.
type partWords struct {
	label     string
	exact     word.Template
	nearest   word.Template
	fewest    float64 // smaller counts are not made
	notMade   word.Template
	otherwise word.Template // what to check where none is near
}

var (
	pulleyWords = partWords{
		label:     "Teeth of the pulley",
		exact:     "A pulley with {size} teeth gives exactly this setting.",
		nearest:   "The nearest real part is a pulley with {size} teeth.",
		fewest:    8,
		notMade:   "No such pulley exists: its tooth count would be {value}.",
		otherwise: "Check the microsteps, step angle, gears (left out or the wrong way round), pitch or module, and inches. Or the setting was never right.",
	}
	pinionWords = partWords{
		label:     "Teeth of the pinion",
		exact:     "A pinion with {size} teeth gives exactly this setting.",
		nearest:   "The nearest real part is a pinion with {size} teeth.",
		fewest:    6,
		notMade:   "No such pinion exists: its tooth count would be {value}.",
		otherwise: "Check the microsteps, step angle, gears (left out or the wrong way round), pitch or module, and inches. Or the setting was never right.",
	}
	gearWords = partWords{
		label:     "Teeth on the driven side",
		exact:     "A gear pair of {driving} → {size} teeth gives exactly this setting.",
		nearest:   "The nearest real part is a gear pair of {driving} → {size} teeth.",
		fewest:    6,
		notMade:   "No such gear exists: its tooth count would be {value}.",
		otherwise: "Check the microsteps, step angle, gears (left out or the wrong way round), pitch or module, and inches. Or the setting was never right.",
	}
	screwWords = partWords{
		label:     "Lead of the screw",
		exact:     "A screw of {size} mm lead gives exactly this setting.",
		nearest:   "The nearest real part is a screw of {size} mm lead.",
		otherwise: "Check the microsteps, step angle, gears (left out or the wrong way round), pitch or module, and inches. Or the setting was never right.",
	}
)

const (
	effectiveDiameter = "Effective diameter of the drive gear"
	drumDiameter      = "Diameter of the drum plus the cable"

	settingLarger  word.Template = "Your setting calls for a part {off}% larger."
	settingSmaller word.Template = "Your setting calls for a part {off}% smaller."
	closeEnough    word.Template = "That's close enough: the part fits, and the rest is rounding or an earlier correction."
	notClose       word.Template = "That's not close."
)

// What an output element is called within a sentence, and as a statement of its own.
var (
	outputNames = outputWords{
		belt:         "a belt of {pitch} pitch on {teeth} teeth",
		movingBelt:   "a belt of {pitch} pitch on {teeth} teeth with a 2:1 moving pulley",
		screw:        "a screw of {lead} lead",
		roller:       "a drive gear of {diameter} effective diameter",
		rack:         "a rack of module {module} on {teeth} teeth",
		drum:         "a drum of {diameter} with a cable of {cable}",
		movingDrum:   "a drum of {diameter} with a cable of {cable} and a 2:1 moving pulley",
		differential: "a differential screw that moves {travel} per turn",
		rotary:       "a rotary table",
	}
	outputFacts = outputWords{
		belt:         "Belt: {pitch} pitch, {teeth} teeth",
		movingBelt:   "Belt: {pitch} pitch, {teeth} teeth, 2:1 pulley",
		screw:        "Screw: {lead} lead",
		roller:       "Drive gear: {diameter} effective diameter",
		rack:         "Rack: module {module}, {teeth} teeth",
		drum:         "Drum: {diameter}, cable {cable}",
		movingDrum:   "Drum: {diameter}, cable {cable}, 2:1 pulley",
		differential: "Differential screw: {travel} per turn",
		rotary:       "Rotary table",
	}
)

// GoodEnough is what a blank acceptable error counts as.
const GoodEnough word.Template = "±{error} is good enough"

const meaningBrief = "per mm, per turn"

const sameLeads word.Template = "“{typed}” has the same lead as the first thread, {lead}: nothing would move. The two leads must differ, or one thread be left-hand (LH)."

// Measuring tools, by their IDs: in a list, and within a sentence.
var (
	toolLabels = word.Table{
		{"tape", "Tape measure, 1 mm"}, {"rule", "Steel ruler, 1 mm"},
		{"caliper-0.1", "Caliper, 0.1 mm"}, {"caliper-0.05", "Caliper, 0.05 mm"},
		{"caliper-0.02", "Caliper, 0.02 mm"}, {"caliper-0.01", "Caliper, 0.01 mm"},
		{"protractor", "Protractor, 1°"}, {"rim", "Index mark on the rim, 0.5°"}, {"gauge-0.1", "Digital angle gauge, 0.1°"},
	}
	toolNames = word.Table{
		{"tape", "a tape measure"}, {"rule", "a steel ruler"},
		{"caliper-0.1", "a 0.1 mm caliper"}, {"caliper-0.05", "a 0.05 mm caliper"},
		{"caliper-0.02", "a 0.02 mm caliper"}, {"caliper-0.01", "a 0.01 mm caliper"},
		{"protractor", "a protractor"}, {"rim", "an index mark on the rim"}, {"gauge-0.1", "a digital angle gauge"},
	}
)

// Teeth of several stages, and a screw, as they are typed.
const (
	betweenStages = " x "
	screwAbout    = "a screw: its designation such as Tr8x8(P2) or M8x1.25, its lead, pitch x starts, or threads per inch such as 20 tpi"
)
