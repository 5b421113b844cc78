package rate

import "striderule/calc/sheet"

// The page.
const (
	menu     = "Step rate"
	title    = "Step rate"
	question = "What step rate do my speeds need, and can the controller keep up?"
)

var tasks = []sheet.Task{{
	Occasion:  sheet.SettingUp,
	Situation: "Is my controller fast enough?",
	Help:      "See the step rate at your speeds, and the top speed at the limit.",
}}

var outputs = []sheet.Output{
	{ID: "most", Label: "Highest step rate", Unit: "pulses/s"},
	{ID: "work", Label: "Step rate at working speed", Unit: "pulses/s"},
	{ID: "fast", Label: "Step rate at travel speed", Unit: "pulses/s"},
	{ID: "back", Label: "Step rate at retraction speed", Unit: "pulses/s"},
	{ID: "accel", Label: accelLabel, Unit: "pulses/s²"},
	{ID: "microstep", Label: "Travel per microstep", Unit: "mm, °"},
	{ID: "fullstep", Label: "Travel per full step", Unit: "mm, °"},
	{ID: "allwork", Label: "Step rate of all axes together, each at its working speed", Unit: "pulses/s"},
	{ID: "allfast", Label: "Step rate of all axes together, each at its travel speed", Unit: "pulses/s"},
	{ID: "top", Label: "Top speed", Unit: "mm/s, °/s"},
	{ID: "slower", Label: "Share of the speeds that the limit allows, all axes together", Unit: "%"},
	{ID: "new-work", Label: "Step rate at working speed, after the swap", Unit: "pulses/s"},
	{ID: "new-fast", Label: "Step rate at travel speed, after the swap", Unit: "pulses/s"},
	{ID: "new-back", Label: "Step rate at retraction speed, after the swap", Unit: "pulses/s"},
	{ID: "new-top", Label: "Top speed, after the swap", Unit: "mm/s, °/s"},
	{ID: "new-microstep", Label: "Travel per microstep, after the swap", Unit: "mm, °"},
	{ID: "torque", Label: "Torque behind one microstep, as a share of the holding torque", Unit: "%"},
	{ID: "holds", Label: "Torque behind one microstep", Unit: "N·m"},
	{ID: "new-torque", Label: "Torque behind one microstep, as a share of the holding torque, after the swap", Unit: "%"},
	{ID: "new-holds", Label: "Torque behind one microstep, after the swap", Unit: "N·m"},
	{ID: "swing", Label: swingLabel, Unit: "ms"},
	{ID: "fullrate", Label: "Full steps per second where torque starts to fall", Unit: "steps/s"},
	{ID: "corner", Label: "Motor speed where torque starts to fall", Unit: "rev/s"},
	{ID: "rpm", Label: "Motor speed where torque starts to fall", Unit: "rev/min"},
	{ID: "follow", Label: "Axis speed where torque starts to fall", Unit: "mm/s, °/s"},
}

// Sections of the form.
const (
	whatSection  = "Compare"
	axesSection  = "Axes"
	limitSection = "The controller's limit"
	motorSection = "Motor data sheet"
)

var (
	asItIs     = sheet.Option{Word: "none", Label: "Current setup"}
	beforeSwap = sheet.Option{Word: "swap", Label: "Before and after a swap", Hint: "another setting, motor or microsteps"}
	linear     = sheet.Option{Word: "linear", Label: "Linear", Hint: "X, Y, Z or any axis that moves in mm"}
	extruder   = sheet.Option{Word: "feed", Label: "Extruder", Hint: "feeds filament"}
	rotary     = sheet.Option{Word: "rotary", Label: "Rotary", Hint: "any axis that turns, in degrees"}
	eachAxis   = sheet.Option{Word: "axis", Label: "Per axis", Hint: "each axis can use all of it"}
	inTotal    = sheet.Option{Word: "all", Label: "In total", Hint: "axes that move at once share it"}
)

// The fields.
const (
	compareLabel    = "Show"
	nameLabel       = "Name"
	movesLabel      = "Axis type"
	asLabel         = "How your controller stores it"
	ratioLabel      = "Gear ratio"
	ratioHint       = "Motor turns for one output turn: 4.5, or 54:12 for teeth 12 → 54; 1 if there are no gears."
	workHint        = "Print or cutting speed."
	fastHint        = "Rapid (travel) moves."
	backHint        = "The fastest an extruder moves."
	accelFieldLabel = "Acceleration"
	accelHint       = "In mm/s², if you know it."
	newStepsLabel   = "Steps per mm after the swap"
	newStepsHint    = "Blank: only the motor or its microsteps change."
	newDegLabel     = "Steps per degree after the swap"
	newAngleLabel   = "Step angle after the swap"
	newMicroLabel   = "Microsteps after the swap"
	limitLabel      = "Max. step rate"
	limitHint       = "What your controller can send."
	shareLabel      = "Limit applies"
	holdLabel       = "Holding torque"
	dataSheetHint   = "From the motor's data sheet."
	supplyLabel     = "Supply voltage of the driver"
	supplyHint      = "From the supply's label."
	inductanceLabel = "Phase inductance"
	inductanceHint  = "From the motor's data sheet, as wired. Without a unit: mH."
	resistanceLabel = "Phase resistance, if known"
	resistanceHint  = "From the motor's data sheet, as wired. Without a unit: Ω."
	currentLabel    = "Peak phase current"
	currentHint     = "As the driver is set. The peak is 1.41 times an RMS value."
)
