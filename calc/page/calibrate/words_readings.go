package calibrate

import "striderule/calc/word"

// The readings.
const (
	runsTitle                   = "What the readings say"
	runsCaption                 = "Runs"
	runHead                     = "Run"
	markHead      word.Template = "Mark, {unit}"
	remainingHead word.Template = "Remaining, {unit}"
	errorHead                   = "Error, %"
	leftOut       word.Template = "{run}, left out"

	meanLabel       = "Mean"
	errorLabel      = "Error"
	correctionLabel = "Correction (commanded / measured)"
	scatterLabel    = "Scatter (standard deviation)"

	runLabel   word.Template = "run {n}"
	checkLabel word.Template = "check run {n}"
)

// What makes the answer doubtful, each with its cure.
const (
	markInsideDoubt               = "The mark is within the commanded length, so it would go into the extruder. Put it at least 25 mm beyond that."
	alikeDoubt                    = "The mark was at about twice the length, where what was fed and what remained look alike. Be sure that you entered what remained."
	carriageDoubt                 = "This holds for how far the carriage moved. A printed part has shrinkage and line width in it too."
	handMadeDoubt                 = "Hand-made marks are rarely that consistent."
	farOffDoubt                   = "That's more than 20% off, which is rarely wear. Check the readings first, then step angle, microsteps, gears, pulley and units."
	farOffKnown                   = "That's more than 20% off, which is rarely wear. Was a part changed after this setting was made? Then work that change out first."
	toolDoubt                     = "Choose your measuring tool: its uncertainty isn't included yet."
	outlierBeside   word.Template = "Run {n} stands out. A typo, or misread?"
	outlierDoubt    word.Template = "Run {n} is an outlier. A typo, or misread? If you know why, tick “Leave out” there; if not, make more runs."
	offsetTip       word.Template = "Fixed offset: {offset}."
)

// Runs at several speeds.
const (
	speedsTitle   = "Error and feed speed"
	speedsCaption = "Mean error at each speed"
	speedHead     = "Speed, mm/s"
	slopeLabel    = "Change in error per mm/s"
	holdsLabel    = "Error acceptable up to"

	speedChartTitle = "Error against feed speed"
	speedChartSays  = "The error of each run against its speed."
	speedName       = "Speed"
	lineName        = "line through the runs"
	slowLineName    = "line through the two slowest speeds"
	bandName        = "acceptable"

	zeroSpeedKey  = "the line at zero speed, with its interval"
	zeroSpeedName = "at zero speed"
)

// Runs of several lengths.
const (
	noOffset    = "There's no visible fixed offset."
	offsetLabel = "Fixed offset"

	lengthChartTitle = "Measured minus commanded"
	commandedName    = "Commanded"
	differenceName   = "Difference"
	offsetKey        = "fixed offset, with its interval"
	offsetName       = "fixed offset"

	residualTitle = "Distance of each run from the line"
	aboveName     = "Above the line"
	theLine       = "the line"
)

// Positions from both sides.
const (
	sidesTitle    = "Backlash"
	reversalLabel = "Backlash, largest (reversal value)"
	lostLabel     = "Backlash, mean (moving + minus moving −)"

	sideChartTitle = "Deviation from the target"
	sideChartSays  = "Position reached minus target. The gap between the two directions is the backlash."
	targetName     = "Target"
	deviationName  = "Deviation"
	upName         = "moving +"
	downName       = "moving −"
)

// Repeatability and accuracy, in the terms of ISO 230-2.
const (
	accuracyTitle = "Repeatability and accuracy (ISO 230-2)"

	accuracyLabel       = "Bidirectional accuracy A"
	repeatLabel         = "Bidirectional repeatability R"
	repeatUpLabel       = "Repeatability moving + (R↑)"
	repeatDownLabel     = "Repeatability moving − (R↓)"
	systematicLabel     = "Bidirectional systematic deviation E"
	systematicUpLabel   = "Systematic deviation moving + (E↑)"
	systematicDownLabel = "Systematic deviation moving − (E↓)"
	meanRangeLabel      = "Range of the mean bidirectional deviation M"

	deviationsCaption               = "Deviations at each target"
	meanUpHead        word.Template = "Mean +, {unit}"
	meanDownHead      word.Template = "Mean −, {unit}"
	scatterUpHead     word.Template = "s +, {unit}"
	scatterDownHead   word.Template = "s −, {unit}"

	accuracySays      = "A is the band of all deviations from the targets, from either side: means ± 2 standard deviations s. R is the widest such band at one target. E is the band of the means alone, M that of the means of both sides, without backlash."
	settingInThem     = "An error of the setting is part of A, E and M: correct it first, then repeat the test."
	needsApproaches   = "R and A need two approaches or more of every target from each side."
	onlyItsArithmetic = "The standard itself asks for five approaches from each side, at given targets and conditions: this is its arithmetic, not a certificate."
)

// More about the setting.
const (
	conventionsTitle = "As other controllers store it"
	diameterLabel    = "Effective diameter of the drive gear that this implies"
	oddGear          = "Drive gears of that size are rare: check the motor, microsteps and gears that you entered."
	whyTitle         = "Where the ± comes from"
)
