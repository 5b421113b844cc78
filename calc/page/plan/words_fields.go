package plan

import "striderule/calc/sheet"

// The page.
const (
	menu     = "Plan"
	title    = "Plan a test"
	question = "How far, how slow and how many runs for a good enough answer?"
)

var tasks = []sheet.Task{{
	Occasion:  sheet.SettingUp,
	Situation: "I want to plan a test",
	Help:      "See how far, how many runs and where to put the mark, with the moves ready to send.",
}}

var outputs = []sheet.Output{
	{ID: "length", Label: "Length of a run", Unit: "mm"},
	{ID: "runs", Label: runsLabel, Unit: "1"},
	{ID: "expanded", Label: errorLabel, Unit: "%"},
	{ID: "mark", Label: "Mark at", Unit: "mm"},
	{ID: "speed", Label: "Speed", Unit: "mm/s"},
	{ID: "word", Label: fLabel, Unit: "mm/min"},
	{ID: "melt", Label: "Melt rate needed", Unit: "mm³/s"},
	{ID: "filament", Label: usedLabel, Unit: "mm"},
	{ID: "time", Label: "Time, including measuring", Unit: "min"},
	{ID: "needs", Label: "Length that so many runs need", Unit: "mm"},
	{ID: "slip", Label: slipLabel, Unit: "%"},
	{ID: "lost", Label: lostLabel, Unit: "mm"},
	{ID: "target", Label: "Target position", Unit: "mm"},
}

// Sections of the form.
const (
	testSection    = "The test"
	goodSection    = "Uncertainty and tool"
	roomSection    = "Available space"
	fixedSection   = "Override the plan"
	linesSection   = "Custom G-code"
	settingSection = "Current setting (passed on to Calibrate)"
)

var (
	toolUnknown = sheet.Option{Word: "none", Label: "Not chosen"}
	letterX     = sheet.Option{Word: "x", Label: "X"}
	letterY     = sheet.Option{Word: "y", Label: "Y"}
	letterZ     = sheet.Option{Word: "z", Label: "Z", Hint: "mind the bed"}
)

// The fields.
const (
	axisLabel     = "Axis"
	pathLabel     = "Test"
	trialLabel    = "Runs at"
	tripLabel     = "Moves"
	wantedLabel   = "Wanted uncertainty, ±"
	wantedHint    = "Blank: 0.25% for the extruder, 0.1% for a linear axis."
	toolLabel     = "Measuring tool"
	scatterLabel  = "Scatter of the runs"
	scatterHint   = "From an earlier test. Blank: 0.15 mm for a mark on filament, 0.05 mm for a linear axis."
	letterLabel   = "Axis letter"
	fromLabel     = "Lowest safe position"
	fromHint      = "Where the axis can go without hitting anything."
	toLabel       = "Highest safe position"
	longestLabel  = "Max. feed length"
	longestHint   = "Blank: as far as the measuring tool reaches."
	countLabel    = "Runs"
	countHint     = "Per length, speed or target. Blank: as many as it takes (usually five, or three at each)."
	askedLabel    = "Commanded length"
	askedHint     = "Blank: as long as it takes."
	marginLabel   = "Extra distance to the mark"
	marginHint    = "In case too much is fed. Blank: a quarter of the length, at least 25 mm."
	speedHint     = "Blank: 60 mm/min for the extruder, 120 mm/min for Z, 600 mm/min for X and Y."
	atLabel       = "Feed speed"
	atHint        = "All blank: 60, 180 and 360 mm/min."
	filamentLabel = "Filament diameter"
	filamentHint  = "For the melt rate."
	maxMeltLabel  = "Max. melt rate"
	maxMeltHint   = "What the hot end can melt, if you know it."
	eachLabel     = "Time per run to measure and re-mark"
	eachHint      = "Blank: one minute."
	settingHint   = "The value in use, with all its digits."
)
