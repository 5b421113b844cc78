package flow

import (
	"striderule/calc/measure"
	"striderule/calc/page/trial"
	"striderule/calc/sheet"
	"striderule/calc/word"
)

// The page.
const (
	pageMenu     = "Flow"
	pageTitle    = "Tune the flow"
	pageQuestion = "Steps/mm is right. Are walls the right thickness? What should the flow be?"
)

var task = sheet.Task{
	Occasion:  sheet.Off,
	Situation: "Steps/mm is right, but walls come out too thick or too thin",
	Help:      "Measure a printed wall, get the new flow.",
}

// outputs are the figures that the page can show.
var outputs = []sheet.Output{
	{ID: "flow", Label: "New flow", Unit: "1"},
	{ID: "percent", Label: "New flow in percent", Unit: "%"},
	{ID: "was", Label: "Flow used", Unit: "1"},
	{ID: "plastic", Label: "Extrusion error (measured / expected − 1)", Unit: "%"},
	{ID: "mean", Label: "Mean of the readings", Unit: "mm, g"},
	{ID: "wanted", Label: "Target", Unit: "mm, g"},
	{ID: "spread", Label: "Scatter (standard deviation)", Unit: "mm, g"},
	{ID: "bead", Label: "Target cross-section of one line", Unit: "mm²"},
	{ID: "read", Label: "One reading", Unit: "mm, g"},
	{ID: "off", Label: "Extrusion error of a reading", Unit: "%"},
	{ID: "diameter", Label: "Filament diameter to enter instead of a new flow", Unit: "mm"},
	{ID: "low", Label: "Smallest mean of new readings that is fine", Unit: "mm, g"},
	{ID: "high", Label: "Largest mean of new readings that is fine", Unit: "mm, g"},
	{ID: "sideflow", Label: sideFlowLabel, Unit: "1"},
	{ID: "walls", Label: "Lines in the wall that would settle it", Unit: "1"},
}

// The answer.
const (
	newFlow       = "New flow"
	flowSoFar     = "Flow so far"
	leaveFlowAt   = "Leave the flow at"
	holdFlowAt    = "For now, keep the flow at"
	readingsGive  = "What the readings give"
	notYet        = "Don't enter this yet."
	forTheNewFlow = "the new flow"

	inPercent word.Template = "That's {new}. Currently {used}."

	vagueTitle  = "Not yet"
	nothingSaid = "These readings are so far apart that nothing can be said yet. Check each of them, and take more."

	toolSaysNothing = "Your measuring tool is so coarse for this that nothing can be said yet. Use a finer one."

	outlier      word.Template = "Reading {n} is an outlier. A blob, a burr, the seam, a typo? If you know why, tick “{leaveout}” there; if not, take more readings."
	farOff                     = "That's more than 20% off, which is rarely just flow. Check the line width, the number of lines, the filament diameter and the extruder first."
	diameterOnly               = "That's the effect of the filament's diameter alone. A printed wall shows the total: don't count it twice."
	gapsMayOpen  word.Template = "With too little plastic, gaps can open between the lines. Snap the wall and look: if there are gaps, choose “{gaps}” above."
	densityTaken               = "The density is assumed good to ± 1%, and labels are often worse: enter above how good yours is."
)

// What must be said before the readings mean anything.
const (
	spacedTitle = "How are the lines spaced?"
	widthTitle  = "Line width and spacing disagree"

	linesTitle     word.Template = "Is this a wall of {n} lines?"
	linesOtherwise word.Template = "The readings fit {n} lines far better than {given}: then the wall should be {target} thick, and the new flow is {flow}. Count the lines, and fill in “{lines}”."

	spacedTwoWays word.Template = "If they overlap, the wall should be {target} thick, and the new flow is {flow}. If they lie side by side, it should be {sidetarget}, and the new flow is {sideflow}. The readings fit the second far better: see how your slicer spaces lines, and choose above."
	widthUnused   word.Template = "Lines {spacing} apart that overlap are {wide} wide, not {width}: the line width isn't used. Clear one of the two. Or, if the lines lie side by side, choose “{side}” above."

	sideFlowLabel = "New flow if the lines lie side by side"

	printedWhen   = "This counts for a piece printed after the extruder was calibrated: choose above when it was."
	oldPieceTitle = "Print it again first"
	oldPieceSays  = "It was printed with the old steps/mm, so it says nothing about the flow with the new one. Print it again, and measure that."
)

// wayWords are what is said of one way to the flow.
type wayWords struct {
	quantity string // what is read
	head     string // of its column
}

var (
	wallWords     = wayWords{quantity: "Thickness", head: "Thickness, mm"}
	massWords     = wayWords{quantity: "Weight", head: "Weight, g"}
	diameterWords = wayWords{quantity: "Diameter", head: "Diameter, mm"}
)

// verdicts are of the plastic in a wall, in a print, or that a filament gives.
var verdicts = trial.Wording{
	Exactly:    "By these readings there's exactly as much plastic as there should be.",
	Little:     "There's {size} too little plastic.",
	Much:       "There's {size} too much plastic.",
	LittleFrom: "There's {low} to {high} too little plastic (95% confidence).",
	MuchFrom:   "There's {low} to {high} too much plastic (95% confidence).",
	Between:    "There's between {low} too little and {high} too much plastic (95% confidence).",
	Once:       "One reading can't show the scatter: take at least three.",
}

// Before there is an answer.
const (
	calibrateFirstTitle = "Calibrate the extruder first"
	calibrateFirst      = "Flow would hide an extruder error for this one material, while retraction, loading and every other profile stay wrong."
	calibrateLink       = "Calibrate the extruder"
	missingTitle        = "Still needed"

	tooThin word.Template = "“{read} mm” is too thin. Even with next to no plastic this wall would be {least} mm thick: check the line width and the number of lines."
	tooHigh word.Template = "“{width}” is less than the layer height, {layer}. A line is at least as wide as it is high: check both."
)

// The readings, and why the answer is what it is.
const (
	readingsTitle   = "What the readings say"
	readingsCaption = "Readings"
	readingHead     = "Reading"
	errorHead       = "Extrusion error, %"
	noPlastic       = "too thin"
	errorLabel      = "Extrusion error"
	meanLabel       = "Mean of the readings"
	targetLabel     = "Target"
	scatterLabel    = "Scatter (standard deviation)"
	beadLabel       = "Target cross-section of one line"

	leftOut word.Template = "{n}, left out"

	noTool   = "Fill in “Measuring tool”: its uncertainty isn't included yet."
	whyTitle = "Where the ± comes from"
)

// What the ± comes from: in general, and of a weight.
var (
	parts = word.Table{
		{measure.Scatter, "Scatter of the readings"},
		{measure.Placement, "Typical scatter (one reading only)"},
	}
	massParts = word.Table{
		{densityPart, "Density accuracy"},
		{measure.Resolution, "Balance resolution"},
		{measure.Accuracy, "Balance accuracy"},
	}
)

// warnings are doubts of package measure in the words of this page.
var warnings = word.Table{
	{string(measure.WarnOneRun), "One reading can't show the scatter: take at least three. A typical one is assumed."},
	{string(measure.WarnTwoRuns), "Two readings give only a rough idea of the scatter. One more cuts the ± to about a third."},
}
