package parts

import "striderule/calc/word"

const (
	readingTitle = "How to read the parts"
	allTitle     = "All axes at a glance"
	firstTitle   = "Before the first move"
)

// Where the parts say what they are.
var readingPoints = []string{
	"Motor: the step angle is on its label. Driver: the microsteps are set by jumpers or in firmware.",
	"Gears and pulleys: mark one tooth and count. The motor side is the wheel on the motor's shaft.",
	"Belt: measure across ten teeth and divide by ten.",
	"Screw: turn it once and measure how far the nut moves. That's the lead; with several starts it's more than the pitch.",
	"Inch screw: count the threads in one inch and enter 20 tpi, or 20 tpi x 2 for two starts.",
	"Drive gear: use the diameter where it grips, slightly less than over its teeth. A test gives the true one.",
	"Rack or gear in inches: the diametral pitch stands for the module, as 24 DP.",
	"Cable drum: measure the drum where the cable lies, and the cable. A second layer moves the axis farther per turn, so no setting is right for both.",
	"Moving pulley: if a belt or cable is fixed at one end and runs round a pulley on the moving part, that part moves half as far. Choose “with 2:1 moving pulley”.",
	"Worm: count the threads that start at its end, and enter that as the teeth on the motor side.",
}

const firstMoveAdvice = "Start with a short, slow move. Check the direction and the rough distance before you go further."

// answerLabels head the answer by what was found: the key of a setting, the ratio, or the
// kind of the output.
var answerLabels = word.Table{
	{"steps", "{axis}, steps per mm"},
	{"stepsdeg", "{axis}, steps per degree"},
	{"ratio", "{axis}, gear ratio"},
	{"belt", "{axis}, pulley teeth"},
	{"screw", "{axis}, screw lead"},
	{"roller", "{axis}, effective diameter of the drive gear"},
	{"rack", "{axis}, pinion teeth"},
	{"drum", "{axis}, diameter of the drum plus the cable"},
}

// What is missing, and for what.
const (
	askSteps    = "steps per mm"
	askStepsDeg = "steps per degree"
	askSize     = "the size of the part"
	askRatio    = "the gear ratio"
	askDriven   = "the nearest teeth on the driven side"
)

const (
	sameWithAnyGears = "Travel per output turn is the same with any gears. Enter steps per mm or travel per motor turn instead."
	noSize           = "A rotary table has no size to find: one output turn is always 360°. Choose “The gear ratio” instead."
	twoLeads         = "A differential screw has two leads, and a setting tells only what they differ by. Choose “Lead screw” to get that."
)

const trustThePart = "Trust this value over a measurement: such parts are made more exactly than you can measure. Test only to catch a mistake, such as wrong microsteps."

const checkThePart = "Check the part in doubt first. Then run a short test."

// trust says what a value from the parts is worth, by the kind of the output.
var trust = word.Table{
	{"belt", trustThePart}, {"screw", trustThePart}, {"rack", trustThePart},
	{"roller", "A starting value only: run a test. Nothing else gives the effective diameter of a drive gear."},
	{"drum", "A starting value only: run a long test. How the cable lies on the drum decides, and it stretches."},
	{"differential", trustThePart},
	{"rotary", "Exact: steps and teeth are counted. Test only to catch a mistake."},
}

// What is said of a part's size that was found, and its labels.
const (
	lessTheCable = "Take the cable's diameter off to get the drum's."
	whereItGrips = "This is where the drive gear grips; its outer diameter is larger."
	ratioMeans   = "Motor turns for one output turn."

	nearestLabel = "Nearest real part"
	offLabel     = "Difference from the nearest part"
	fittingLabel = "Setting for the nearest part"
)

// What is out of the ordinary.
const (
	oddSetting  word.Template = "{setting} is outside the usual range for small machines, {least} to {most}. Check the microsteps and units, and whether the gear ratio is the wrong way round."
	oddDiameter word.Template = "An effective diameter of {diameter} mm is outside the usual range for drive gears, {least} to {most} mm. Is it a radius, or in inches? Are gears left out or the wrong way round?"
)

const fewTeeth word.Template = "A pulley of fewer than {fewest} teeth is rare. Is {setting} the value at other microsteps? At {micro} it would be {teeth} teeth."

const (
	pulleyAtFewer word.Template = "This holds if the setting was made at {micro} microsteps. At {fewer} it would be {size} teeth: count them."
	screwAtFewer  word.Template = "This holds if the setting was made at {micro} microsteps. At {fewer} it would be {size} mm lead: measure it."
)

const unpairedStages word.Template = "The two sides have different numbers of stages, {motor} on the motor side and {here} here. Enter the same stages on both, as 12 x 20 and 54 x 40."

// What an axis was worked out from: short statements in a row.
var motorGiven = word.Counted{
	One:   "Motor: {steps} full steps per turn, 1 microstep",
	Other: "Motor: {steps} full steps per turn, {n} microsteps",
}

const (
	ratioGiven   word.Template = "Gear ratio: {ratio}"
	settingGiven word.Template = "Setting: {setting}"
)

// The table of all axes.
const (
	tableCaption = "All axes"
	axisHead     = "Axis"
	resultHead   = "Result"
	turnHead     = "Travel per motor turn" // where every setting was worked out
	detailsHead  = "Details"
)

// Links on.
const (
	toCalibrate = "Calibrate with this setting"
	toPlan      = "Plan a test"
	toStepRate  = "Check the step rate"
	toSwap      = "Swap a part"
)

// The picture of the drivetrain: captions, which its alternative text says in a row.
const (
	trainTitle                = "The drivetrain as entered"
	motorAlone                = "Motor"
	motorAngled word.Template = "Motor: full step {angle}"
	pairTeeth   word.Template = "{driving} → {driven} teeth"
	pairShort   word.Template = "{driving} → {driven}"
	motorTurn   word.Template = "One motor turn moves {travel}"
)
