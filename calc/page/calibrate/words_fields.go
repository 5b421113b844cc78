package calibrate

import (
	"striderule/calc/sheet"
	"striderule/calc/word"
)

// The sections of the form.
var (
	secAxis    = &sheet.Section{Title: "Axis and setting in this test"}
	secTest    = &sheet.Section{Title: "The test"}
	secBefore  = &sheet.Section{Title: "Checks before you start", Folded: true}
	secRuns    = &sheet.Section{Title: "The readings"}
	secTool    = &sheet.Section{Title: "Measuring tool"}
	secEarlier = &sheet.Section{Title: "From a plan or earlier tests", Folded: true}
	secAgain   = &sheet.Section{Title: "Check runs after the change", Folded: true, First: true}
	secParts   = &sheet.Section{Title: "Motor and gears", Folded: true}
	secLine    = &sheet.Section{Title: "Command to set it", Folded: true}
)

// Labels of the fields, and what to type there.
const (
	axisLabel   = "Axis"
	settingHint = "In use during the first runs, at the microsteps set then, with all its digits. Keep it for check runs."

	driveLabel     = "Extruder type"
	pathLabel      = "Test"
	trialLabel     = "Runs at"
	tripLabel      = "Moves"
	askedLabel     = "Commanded length"
	askedHint      = "What you told it to move in one run."
	askedDegLabel  = "Commanded angle"
	askedDegHint   = "What you told the machine to turn in one run."
	speedLabel     = "Feed speed"
	testSpeedLabel = "Speed"
	speedHint      = "F in G-code is in mm/min."
	doneLabel      = "Checks done"

	readingLabel  = "Method"
	marksLabel    = "Mark distance"
	markLabel     = "Mark at"
	markHint      = "Inlet to mark, before the run. Longer than the commanded length."
	atHint        = "F in G-code is in mm/min."
	wantLabel     = "Commanded"
	targetLabel   = "Target position"
	targetHint    = "At least twice from each side, one row for each time."
	upLabel       = "Reached, moving +"
	downLabel     = "Reached, moving −"
	toolLabel     = "Measured with"
	markToolLabel = "Mark measured with"
	tolLabel      = "Acceptable error, ±"
	tolHint       = "Blank: 0.5% for the extruder, 0.2% for other axes."
	countedLabel  = "Extruder counts in"

	lineLabel  = "Command for your controller"
	lineHint   = "Write {value} in place of the number."
	entryLabel = "Line in the config file"
	entryHint  = "Write {value} in place of the number."
	lineTakes  = "a command, with {value} where the number goes"
	entryTakes = "a line of a config file, with {value} where the number goes"
)

// Rows of readings; the page's ids are made of these names.
const (
	runNoun = "run"
)

// Examples of a line with a place for the number: a line names its axis, so that of one must
// not be offered for another.
const (
	extruderLine = "M92 E{value}"
	linearLine   = "M92 X{value}"
	linearLineY  = "M92 Y{value}"
	linearLineZ  = "M92 Z{value}"
	rotaryLine   = "M92 A{value}"
	configLine   = "name = {value}"
)

// The options of the choices.
var (
	rotaryOption = sheet.Option{Word: "rotary", Label: "Rotary", Hint: "any axis that turns, in degrees"}

	driveNear = sheet.Option{Word: "near", Brief: "direct", Label: "Direct", Hint: "the extruder sits on the hot end"}
	driveTube = sheet.Option{Word: "tube", Label: "Bowden", Hint: "a tube runs from the extruder to the hot end"}

	readRest = sheet.Option{Word: "rest", Label: "Mark the filament", Hint: "measure what remains to the mark", Brief: "mark test"}
	readFed  = sheet.Option{Word: "fed", Label: "Measure the fed length", Hint: "measure what went in, or came out", Brief: "fed length read"}

	marksSet  = sheet.Option{Word: "set", Label: "Same every run", Hint: "mark again at this distance", Brief: "same mark distance"}
	marksEach = sheet.Option{Word: "each", Label: "Different each run", Hint: "enter it for each run", Brief: "mark distance differs"}

	toolUnknown = sheet.Option{Word: "none", Label: "Not said", Hint: "then only the scatter of the runs counts"}
	toolSame    = sheet.Option{Word: "same", Label: "The same tool", Hint: "a zero error cancels out", Brief: "one tool"}

	countedMM     = sheet.Option{Word: "mm", Label: "mm", Hint: "the usual way"}
	countedVolume = sheet.Option{Word: "volume", Label: "mm³ (volumetric)", Hint: "then the filament's diameter counts too"}
)

// What is wrong with an entry.
const (
	noPlace word.Template = "“{line}” has no {value}. Write {value} where the number goes, as in {example}."
)
