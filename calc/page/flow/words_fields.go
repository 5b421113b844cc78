package flow

import (
	"striderule/calc/page/axis"
	"striderule/calc/sheet"
)

// The sections of the form.
var (
	secCalibration = &sheet.Section{Title: "The extruder first"}
	secAim         = &sheet.Section{Title: "Method and slicer settings"}
	secRead        = &sheet.Section{Title: "Your readings"}
	secTool        = &sheet.Section{Title: "Measuring tool"}
)

// The choices.
var (
	notCalibrated = sheet.Option{Word: "unsure", Label: "No, or not sure", Hint: "calibrate it first"}
	calibrated    = sheet.Option{Word: axis.ScaleVerified, Label: "Yes", Hint: "tested: it feeds the length you command"}

	wayWalls    = sheet.Option{Word: byWalls, Label: "Wall thickness", Hint: "of a printed wall"}
	wayMass     = sheet.Option{Word: byMass, Label: "Weight", Hint: "of a printed piece"}
	wayDiameter = sheet.Option{Word: byDiameter, Label: "Filament diameter", Hint: "before you print anything"}

	linesUnsaid  = sheet.Option{Word: "unsaid", Label: "Not sure", Brief: "line spacing not said", Hint: "counted as overlapping"}
	linesAreOver = sheet.Option{Word: linesOverlap, Label: "Overlapping", Brief: "lines overlap", Hint: "closer than their width: the rounded ends overlap"}
	linesAreSide = sheet.Option{Word: linesSide, Label: "Side by side", Brief: "lines side by side", Hint: "a line width apart"}

	printedUnsaid = sheet.Option{Word: "unsaid", Label: "Not sure", Brief: "printed when not said"}
	printedNow    = sheet.Option{Word: "after", Label: "After the calibration", Brief: "printed after the calibration"}
	printedOld    = sheet.Option{Word: printedBefore, Label: "Before it", Brief: "printed before the calibration"}

	linesFused = sheet.Option{Word: "fused", Label: "Fused", Brief: "lines fused", Hint: "no gaps when you snap the wall"}
	linesGaps  = sheet.Option{Word: "gaps", Label: "With gaps", Brief: "gaps between lines", Hint: "you can tell the lines apart"}

	statedLength = sheet.Option{Word: "length", Label: "A length", Brief: "slicer shows a length", Hint: "of filament"}
	statedMass   = sheet.Option{Word: "mass", Label: "A weight", Brief: "slicer shows a weight", Hint: "of plastic"}

	withoutFlow = sheet.Option{Word: "without", Label: "No", Brief: "without flow in it"}
	withFlow    = sheet.Option{Word: "with", Label: "Yes", Brief: "with flow in it"}

	toolNotSaid = sheet.Option{Word: "none", Label: "Not chosen", Hint: "then only the scatter of the readings counts"}
)

// The fields.
const (
	calibratedLabel = "Is the extruder calibrated?"
	calibratedHint  = "Say yes only after a test."

	byLabel   = "Measure by"
	flowLabel = "Flow used"
	flowHint  = "The setting this was printed with, or the current one: 97% or 0.97. Blank: 100%."

	widthLabel   = "Line width"
	widthHint    = "As set in your slicer."
	layerLabel   = "Layer height"
	layerHint    = "Of the layers you measure, not the first one."
	wallsLabel   = "Lines in the wall"
	wallsHint    = "How many lie side by side. Blank: 1."
	spacedLabel  = "How the lines are spaced"
	spacedHint   = "In the slicer's preview of a wall of two lines: if it's two line widths thick, they lie side by side."
	spacingLabel = "Line spacing, centre to centre"
	spacingHint  = "Only if your slicer shows it. Blank: worked out from line width and layer height."
	fusedLabel   = "The lines are"

	statedLabel        = "Your slicer shows"
	usedLabel          = "Filament used"
	usedHint           = "The slicer's figure for everything you weigh. In mm; or write 4.12 m."
	plannedLabel       = "Weight in the slicer"
	plannedHint        = "Its figure for everything you weigh."
	includedLabel      = "Does that figure include flow?"
	includedHint       = "It does if it changes with the flow in the slicer."
	setLabel           = "Filament diameter in the slicer"
	setHint            = "As set, not as measured."
	densityLabel       = "Filament density"
	densityHint        = "From its label or data sheet, in g/cm³."
	densityLimitsLabel = "Density accuracy, ±"
	densityLimitsHint  = "Blank: 1%."

	printedLabel = "This piece was printed"

	thickHint   = "In the middle of the flat sides."
	weighedHint = "One fresh print for each reading, from the same file."
	acrossHint  = "At several places, in two directions at each."
	asideLabel  = "Leave out"
	asideMeans  = "the reading is left out: it stays in the list but isn't counted"

	toolLabel          = "Measured with"
	balanceLabel       = "Balance resolution"
	balanceHint        = "The smallest change its display shows."
	balanceLimitsLabel = "Balance accuracy, ±"
	balanceLimitsHint  = "From its data sheet. Blank: only the resolution counts."
	acceptableLabel    = "Acceptable error, ±"
	acceptableHint     = "Blank: 2%, which walls vary by from place to place."
)
