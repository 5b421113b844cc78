package trial

import (
	"striderule/calc/sheet"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// The sorts of axes that are tested in mm.
var (
	Feed   = sheet.Option{Word: "feed", Label: "Extruder", Hint: "feeds filament"}
	Travel = sheet.Option{Word: "travel", Label: "Linear", Hint: "X, Y, Z or any axis that moves in mm"}
)

// The sorts of tests.
var (
	hotTest  = sheet.Option{Word: "hot", Label: "Hot", Hint: "through the heated hot end", Brief: "hot"}
	coldTest = sheet.Option{Word: "open", Label: "Cold", Hint: "extruder disconnected from the hot end", Brief: "cold"}

	oneSpeed      = sheet.Option{Word: "one", Label: "One speed", Brief: "one speed", Hint: "all runs at the same slow speed"}
	severalSpeeds = sheet.Option{Word: "speeds", Label: "Several speeds", Brief: "several speeds", Hint: "shows slip; repeat each speed a few times"}
)

// The sorts of tests of an axis that moves in mm, and of one that moves or turns.
var (
	LengthTests = []sheet.Option{
		{Word: "one", Label: "One length", Hint: "the same move each time"},
		{Word: "lengths", Label: "Several lengths", Hint: "tells a steps/mm error from a fixed offset; repeat each length"},
		backlashTest,
	}
	MoveTests = []sheet.Option{
		{Word: "one", Brief: "one move, repeated", Label: "One length or angle", Hint: "the same move each time"},
		{Word: "lengths", Label: "Several lengths or angles", Hint: "tells an error of the setting from a fixed offset; repeat each of them"},
		backlashTest,
	}
	backlashTest = sheet.Option{Word: "sides", Label: "Backlash test", Hint: "reach each position from both directions"}
)

// Readiness is what to see to before a reading is worth anything.
var Readiness = []sheet.Option{
	{Word: "filament", Label: "Same filament", Hint: "filament and idler tension as you normally use them"},
	{Word: "path", Label: "Straight path", Hint: "spool free, no drag, no tight bend on the way in"},
	{Word: "clean", Label: "Drive gear clean", Hint: "no plastic dust in its teeth"},
	{Word: "slack", Label: "Slack taken up", Hint: "feed a little forwards before you mark"},
	{Word: "flow", Label: "Flow at 100%", Hint: "a flow override would change the test moves too"},
	{Word: "volume", Label: "Volumetric mode off", Hint: "the extruder counts mm, not mm³"},
	{Word: "relative", Label: "Relative extrusion on", Hint: "or reset the counter to 0 before each run; otherwise run 2 won't move"},
	{Word: "long", Label: "Long extrusions allowed", Hint: "if your controller blocks them, split the move"},
	{Word: "mark", Label: "Fine mark", Hint: "thin and read square-on, filament straight along the ruler"},
	{Word: "driver", Label: "Microsteps match the driver", Hint: "jumpers or firmware; ignore interpolation"},
	{Word: "feeder", Label: "Right extruder selected", Hint: "if there are several"},
	{Word: "guard", Label: "Cold-extrusion protection", Hint: "off for the cold test only; make a note to turn it back on"},
}

// The columns of readings.
const (
	markLabel     = "Mark at"
	restLabel     = "Remaining"
	restHint      = "Inlet to mark, after the run. Paste a column of readings into the first box."
	fedLabel      = "Fed"
	measuredLabel = "Measured"
	movedHint     = "How far the carriage moved, not the size of a printed part."
	asideLabel    = "Leave out"
	asideAbout    = "the reading is left out: it stays in the list but isn't counted"
)

// What is known before the test.
const (
	plannedLabel  = "Runs planned"
	plannedHint   = "From a plan. The first verdict is then given at that number, not before."
	spreadLabel   = "Scatter known from before"
	spreadHint    = "Standard deviation of runs like these on this machine, from an earlier sheet. It counts together with that of the runs above."
	dofEntryLabel = "Its degrees of freedom"
	dofEntryHint  = "The number of runs it comes from, minus one. Blank: 4, as from five runs. With fewer it can't stand in for the scatter of a single run."
)

var (
	runCountWords = unit.Words{Noun: "a number of runs", Like: "Write it like 5."}
	freedomWords  = unit.Words{Noun: "a number of degrees of freedom", Like: "Write it like 4."}
)

// The lines that a controller is moved with. Their places are in braces, as a person types them.
const (
	builtinMove = "G1 {axis}{length} F{speed}"
	builtinStop = "M0"

	singleLabel = "Max. length of one move"
	singleHint  = "Longer moves are split, if your controller blocks them."
	beginLabel  = "Line before the first move"
	beginHint   = "Blank: M83 for an extruder, G91 for a linear axis. Moves are relative from there on."
	beginAbout  = "a line before the first move"
	moveLabel   = "Line for a move"
	moveHint    = "Blank: G1 {axis}{length} F{speed}. {speed} is in mm/min."
	moveAbout   = "the line for a move, with {length}, {speed} in mm/min and {axis} where they go"
	stopLabel   = "Line that waits while you read"
	stopHint    = "Blank: M0. If your controller doesn't know it, type one that makes it wait."
	stopAbout   = "the line that waits while you read"
	finishLabel = "Line after the last move"
	finishHint  = "Blank: M82 for an extruder, G90 for a linear axis. Moves are absolute again."
	finishAbout = "a line after the last move"

	// Of its braces only {line} is a part; the others stand as a person types them.
	lengthMissing word.Template = "“{line}” has no {place}. Write {place} where the length goes, as in {example}."
)

// Remarks in the lines for a controller: printable ASCII.
const (
	relativeRemark  = "moves are relative from here on"
	absoluteRemark  = "back to absolute moves; leave it out if yours are always relative"
	continuedRemark = "continued"

	// Behind lines that are not the page's own.
	customBegin                = "custom line before the first move"
	customFinish               = "custom line after the last move"
	customRemark word.Template = "custom line: {for}"
)
