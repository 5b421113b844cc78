package rate

import "striderule/calc/word"

// A speedKind names a sort of speed: as a label, and within a sentence.
type speedKind struct{ label, name string }

var (
	working    = speedKind{"Working speed", "working speed"}
	travel     = speedKind{"Travel speed", "travel speed"}
	retraction = speedKind{"Retraction speed", "retraction speed"}
)

// What is asked for.
const (
	forRate   = "the step rate"
	forSwap   = "what the swap changes"
	forSteps  = "travel per full step, and torque"
	forTop    = "the top speeds"
	forCorner = "the speed where torque starts to fall"
)

// The answer.
const (
	allAxes = "All axes together"

	headline          word.Template = "{axis} at {speed}"
	headlineOver      word.Template = "{axis} at {speed} (too fast)"
	headlineAfter     word.Template = "{axis} at {speed}, after the swap"
	headlineAfterOver word.Template = "{axis} at {speed}, after the swap (too fast)"

	noLimit                 = "Enter your controller's max. step rate to see which speeds it allows."
	overLimit               = "Too fast for your controller."
	inLimit   word.Template = "OK: {share} of your controller's limit."
	axisOver  word.Template = "{axis} at {speed} needs {rate}, over the limit of {limit}. Use fewer microsteps, or stay at {stay} or less."
	allOver   word.Template = "{axis} at {speed} need {rate}, over the limit of {limit}. Use fewer microsteps, or run at {stay} of these speeds."
	allOK                   = "All your speeds are OK."
)

// What an axis takes, and all of them.
const (
	accelLabel     = "Step-rate increase per second"
	microstepLabel = "Smallest move (one microstep)"
	fullstepLabel  = "One full step"

	rateAt word.Template = "Step rate at {speed}"

	glanceTitle   = "All axes at a glance"
	glanceCaption = "All axes"
	axisColumn    = "Axis"
	atColumn      = "At"
	rateColumn    = "Step rate"

	glanceSpeed word.Template = "{speed}, {value}"

	togetherTitle = "All axes at once"

	togetherAt    word.Template = "All together, each at its {speed}"
	togetherAfter word.Template = "All together, each at its {speed}, after the swap"
	togetherSays                = "Worst case: all axes move at that speed at once. Leave out axes that never move together."
)

// What the limit allows.
const (
	limitTitle      = "What the limit allows"
	limitAfterTitle = "What the limit allows after the swap"
	topLabel        = "Top speed"
	slowerLabel     = "Share of the speeds that the limit allows, all axes together"

	axisTop  word.Template = "{axis}, top speed"
	aloneTop word.Template = "{axis} alone, top speed"
)

// Before and after a swap.
const (
	afterTitle    = "Before and after the swap"
	afterCaption  = "Before and after"
	beforeColumn  = "Before"
	afterColumn   = "After"
	microstepCell = "Microstep"

	axisRateAt   word.Template = "{axis}, step rate at {speed}"
	axisSmallest word.Template = "{axis}, smallest move"
)

// Microsteps and torque.
const (
	torqueTitle = "What microsteps do to torque"
	torqueSays  = "Torque behind one microstep, as a share of the holding torque."
	torqueMeans = "No holding torque is lost: under load the motor lags a few more microsteps behind until the torque is there. Finer microsteps make motion smoother, not much more accurate."

	axisHolds      word.Template = "{axis}, torque of one microstep"
	axisHoldsAfter word.Template = "{axis}, torque of one microstep after the swap"
)

var (
	axisMicrosteps      = word.Counted{One: "{axis}, 1 microstep", Other: "{axis}, {n} microsteps"}
	axisMicrostepsAfter = word.Counted{One: "{axis}, 1 microstep after the swap", Other: "{axis}, {n} microsteps after the swap"}
)

// Where the current can't follow.
const (
	cornerTitle   = "Where torque falls off (rule of thumb)"
	cornerCaption = "Speed where torque starts to fall"
	motorColumn   = "Motor"
	movesColumn   = "Axis moves"
	motorCell     = "Motor speed"
	axisCell      = "Axis speed"
	swingLabel    = "Time for the current to reverse"
	fullrateLabel = "Full steps per second at that point"

	ruleOfThumb                      = "A rule of thumb, for an ideal winding whose current swings from one peak to the other within one full step. Resistance, back-EMF and load are left out, so torque starts to fall before this speed."
	ruleWithResistance               = "A rule of thumb: the current swings from one peak to the other within one full step, against the winding's inductance and resistance. Back-EMF and load are left out, so torque starts to fall before this speed."
	beyondCorner       word.Template = "{axis} at {speed} is faster than that: expect much less torque there."
	sameMotor                        = "Motor, supply and current are assumed to be the same on every axis."
	sameMotorAfter                   = "Motor, supply and current are assumed to be the same on every axis, as after the swap."
)

const supplyTooLow word.Template = "“{typed}” can't drive {current} through {resistance}: that takes more than {takes}. Enter the supply's voltage, not the motor's rated one. If it's right, enter a peak phase current below {most}."

// What is counted.
const (
	aboutTitle = "What is counted here"
	onePulse   = "The controller sends one pulse for each microstep: the step rate is speed times steps per mm."
	itsLimit   = "Its limit is in its documentation, for each axis or for all together. Above that it skips steps, or moves slower than commanded."
	yourSpeeds = "Enter the speeds that you really use."
)
