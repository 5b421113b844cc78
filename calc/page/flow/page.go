package flow

import (
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// Other pages hand over by these keys, in this order: scale, by, flow, width,
// layer, walls, lines, spacing, fused, stated, used, planned, included, set, density,
// densitylimits, printed, then the rows thick, weighed, across and aside, then tool,
// step, limits, balance, balancelimits and tol.

// Page tunes the flow by a printed piece.
var Page = sheet.Page{
	Slug:     "flow",
	Menu:     pageMenu,
	Title:    pageTitle,
	Question: pageQuestion,
	New:      func() sheet.Sheet { return newEntries() },
	Example:  "v=1&scale=verified&flow=1.05&width=0.45&layer=0.2&walls=4&printed=after&thick=1.74,1.76,1.74,1.76,1.74,1.76&tool=caliper-0.02",
	Outputs:  lists.Concat(outputs, trial.WhyOutputs),
	Tasks:    []sheet.Task{task},
}

// The ways to the flow.
const (
	byWalls    = "walls"
	byMass     = "mass"
	byDiameter = "diameter"
)

// entries are how much plastic should be there, and how much is.
type entries struct {
	Scale sheet.Choice // whether the extruder is calibrated
	By    sheet.Choice
	Flow  unit.Input[unit.Ratio] // that the piece was printed with

	Width   unit.Input[unit.Length]
	Layer   unit.Input[unit.Length]
	Walls   unit.Input[unit.Count]
	Lines   sheet.Choice // how they are spaced
	Spacing unit.Input[unit.Length]
	Fused   sheet.Choice

	Stated        sheet.Choice // what the slicer says of the filament that the print takes
	Used          unit.Input[unit.Length]
	Planned       unit.Input[unit.Mass]
	Included      sheet.Choice // whether that has the flow in it
	Set           unit.Input[unit.Length]
	Density       unit.Input[unit.Density]
	DensityLimits unit.Input[unit.Percent]

	Printed sheet.Choice // before or after the calibration
	reading *sheet.Group
	Thick   sheet.LengthList
	Weighed massList
	Across  sheet.LengthList
	Aside   sheet.FlagList

	tool          axis.ToolEntry
	Balance       unit.Input[unit.Mass]
	BalanceLimits unit.Input[unit.Mass]
	Tol           unit.Input[unit.Percent]
}

type massList = sheet.Column[unit.Mass]

func newEntries() *entries {
	length := func(least, most unit.Length) unit.Input[unit.Length] { return unit.Lengths.Input("mm", least, most) }
	mass := func(least, most unit.Mass) unit.Input[unit.Mass] { return unit.Masses.Input("g", least, most) }
	return &entries{
		Scale: sheet.Choose(notCalibrated, calibrated),
		By:    sheet.Choose(wayWalls, wayMass, wayDiameter),
		Flow:  unit.FlowFactors.Input("", 0.2, 5),
		Width: length(0.05, 10), Layer: length(0.01, 5), Walls: unit.Lines.Input("", 1, 20), Spacing: length(0.02, 10),
		Lines:  sheet.Choose(linesUnsaid, linesAreOver, linesAreSide),
		Fused:  sheet.Choose(linesFused, linesGaps),
		Stated: sheet.Choose(statedLength, statedMass),
		Used:   length(50, 5*unit.Million), Planned: mass(0.05, 20_000),
		Included: sheet.Choose(withoutFlow, withFlow),
		Set:      length(0.5, 10), Density: unit.Densities.Input("g/cm³", 0.1, 20), DensityLimits: unit.Percents.Input("%", 0, 30),
		Printed: sheet.Choose(printedUnsaid, printedNow, printedOld),
		reading: &sheet.Group{Words: readingRows, Least: 1, Start: 3, Most: sheet.MostRows},
		Thick:   sheet.LengthsOf(length(0.01, 200)),
		Weighed: sheet.ColumnOf(mass(0.01, 20_000)),
		Across:  sheet.LengthsOf(length(0.2, 20)),
		Aside:   sheet.ListOf(sheet.NewFlag(asideMeans)),
		tool:    axis.NewToolEntry(toolNotSaid),
		Balance: mass(0.00001, 100), BalanceLimits: mass(0.00001, 100),
		Tol: unit.Percents.Input("%", 0.001, 50),
	}
}

func (s *entries) Fields() []sheet.Field {
	walls, mass, across := sheet.If("by", byWalls), sheet.If("by", byMass), sheet.If("by", byDiameter)
	aim := func(key, label, hint string, on []sheet.When, v sheet.Value, suggest ...string) sheet.Field {
		return sheet.Field{Key: key, Label: label, Hint: hint, Section: secAim, When: on, Cells: sheet.One(v), Suggest: suggest}
	}
	column := func(key, label, hint string, on []sheet.When, cells sheet.Cells) sheet.Field {
		return sheet.Field{Key: key, Label: label, Hint: hint, Section: secRead, When: on, Group: s.reading, Cells: cells}
	}
	// A choice that is hidden holds its default, so that a diameter counts as
	// one for a stated length.
	length := sheet.And(sheet.If("by", byMass, byDiameter), "stated", "length")
	return sheet.Need(lists.Concat(
		[]sheet.Field{
			{Key: "scale", Label: calibratedLabel, Hint: calibratedHint, Section: secCalibration, Cells: sheet.One(&s.Scale)},
			aim("by", byLabel, "", nil, &s.By),
			aim("flow", flowLabel, flowHint, nil, s.Flow.Entry()),
			aim("width", widthLabel, widthHint, walls, s.Width.Entry(), "0.45"),
			aim("layer", layerLabel, layerHint, walls, s.Layer.Entry(), "0.2"),
			aim("walls", wallsLabel, wallsHint, walls, s.Walls.Entry(), "1", "2", "4"),
			aim("lines", spacedLabel, spacedHint, walls, &s.Lines),
			aim("spacing", spacingLabel, spacingHint, sheet.And(walls, "lines", linesUnsaid.Word, linesOverlap), s.Spacing.Entry()),
			aim("fused", fusedLabel, "", walls, &s.Fused),
			aim("stated", statedLabel, "", mass, &s.Stated),
			aim("used", usedLabel, usedHint, sheet.And(mass, "stated", "length"), s.Used.Entry()),
			aim("planned", plannedLabel, plannedHint, sheet.And(mass, "stated", "mass"), s.Planned.Entry()),
			aim("included", includedLabel, includedHint, mass, &s.Included),
			aim("set", setLabel, setHint, length, s.Set.Entry(), "1.75", "2.85"),
			aim("density", densityLabel, densityHint, sheet.And(mass, "stated", "length"), s.Density.Entry(), "1.24", "1.27"),
			aim("densitylimits", densityLimitsLabel, densityLimitsHint, mass, s.DensityLimits.Entry()),

			{Key: "printed", Label: printedLabel, Section: secRead, When: sheet.If("by", byWalls, byMass), Cells: sheet.One(&s.Printed)},
			column("thick", wallWords.quantity, thickHint, walls, s.Thick.Cells()),
			column("weighed", massWords.quantity, weighedHint, mass, s.Weighed.Cells()),
			column("across", diameterWords.quantity, acrossHint, across, s.Across.Cells()),
			column("aside", asideLabel, "", nil, &s.Aside),
		},
		s.tool.Fields(secTool, "", toolLabel, sheet.If("by", byWalls, byDiameter)),
		[]sheet.Field{
			{Key: "balance", Label: balanceLabel, Hint: balanceHint, Section: secTool, When: mass, Cells: sheet.Input(&s.Balance), Suggest: []string{"0.01", "0.1", "1"}},
			{Key: "balancelimits", Label: balanceLimitsLabel, Hint: balanceLimitsHint, Section: secTool, When: mass, Cells: sheet.Input(&s.BalanceLimits)},
			{Key: "tol", Label: acceptableLabel, Hint: acceptableHint, Section: secTool, Cells: sheet.Input(&s.Tol)},
		},
	), "scale", "flow", "width", "layer", "walls", "used", "planned", "set", "density", "thick", "tool", "step", "balance")
}
