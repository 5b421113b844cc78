package flow

import (
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// Other pages hand over by these keys, in this order: scale, by, flow, width,
// layer, walls, spacing, fused, stated, used, planned, included, set, density,
// densitylimits, then the rows thick, weighed, across and aside, then tool,
// step, limits, balance, balancelimits and tol.

// Page trims the flow factor from a printed piece.
var Page = sheet.Page{
	Slug:     "flow",
	Menu:     "Flow",
	Title:    "Trim the flow",
	Question: "The scale is right. Are the walls as thick as they should be, and what should the flow factor be?",
	About:    "Once the feed scale is verified: the flow factor from wall thickness, from the mass of a print or from the filament's diameter, and whether the difference is real.",
	New:      func() sheet.Sheet { return newEntries() },
	Example:  "v=1&scale=verified&flow=1.05&width=0.45&layer=0.2&walls=4&thick=1.75,1.75,1.70,1.80,1.75,1.75&tool=caliper-0.05",
	Outputs: []sheet.Output{
		{ID: "flow", Label: "Flow factor, new", Unit: "1"},
		{ID: "percent", Label: "Flow factor, new, in percent", Unit: "%"},
		{ID: "was", Label: "Flow factor, before", Unit: "1"},
		{ID: "plastic", Label: "Error of the plastic: what is there over what should be, less one", Unit: "%"},
		{ID: "mean", Label: "Mean of the readings", Unit: "mm or g"},
		{ID: "wanted", Label: "What the readings should be", Unit: "mm or g"},
		{ID: "spread", Label: "Spread of the readings (standard deviation)", Unit: "mm or g"},
		{ID: "bead", Label: "Section of one line as it should be", Unit: "mm²"},
		{ID: "read", Label: "One reading", Unit: "mm or g"},
		{ID: "off", Label: "Error of the plastic by one reading", Unit: "%"},
		{ID: "diameter", Label: "Filament diameter to enter instead of a new flow factor", Unit: "mm"},
		{ID: "low", Label: "Lower end of the interval that the mean of as many new readings should fall in", Unit: "mm or g"},
		{ID: "high", Label: "Upper end of it", Unit: "mm or g"},
		{ID: "walls", Label: "Lines side by side that would settle it", Unit: "1"},
		{ID: "within", Label: "Probability that the error is within the tolerance", Unit: "%"},
		{ID: "above", Label: "Probability that there is too much plastic, beyond the tolerance", Unit: "%"},
		{ID: "below", Label: "Probability that there is too little plastic, beyond the tolerance", Unit: "%"},
		{ID: "part", Label: "Standard uncertainty of the error from one cause", Unit: "%"},
		{ID: "combined", Label: "Combined standard uncertainty of the error", Unit: "%"},
		{ID: "dof", Label: "Effective degrees of freedom", Unit: "1"},
		{ID: "k", Label: "Coverage factor of 95 %", Unit: "1"},
	},
	Tasks: []sheet.Task{
		{Situation: "The scale is right, but walls are too thick or too thin", Help: "Measure a printed wall, and get the flow factor with its uncertainty.", Fragment: ""},
	},
}

// The ways to the flow factor.
const (
	byWalls    = "walls"
	byMass     = "mass"
	byDiameter = "diameter"
)

// entries are how much plastic should be there, and how much is.
type entries struct {
	Scale sheet.Choice // whether the feed scale is verified
	By    sheet.Choice
	Flow  unit.Input[unit.Ratio] // that the piece was printed with

	Width   unit.Input[unit.Length]
	Layer   unit.Input[unit.Length]
	Walls   unit.Input[unit.Count]
	Spacing unit.Input[unit.Length]
	Fused   sheet.Choice

	Stated        sheet.Choice // what the slicing step says of the filament it takes
	Used          unit.Input[unit.Length]
	Planned       unit.Input[unit.Mass]
	Included      sheet.Choice // whether that has the flow factor in it
	Set           unit.Input[unit.Length]
	Density       unit.Input[unit.Density]
	DensityLimits unit.Input[unit.Percent]

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
		Scale: sheet.Choose(
			sheet.Option{Word: "unsure", Label: "No, or not sure", Hint: "then measure the scale first"},
			sheet.Option{Word: axis.ScaleVerified, Label: "Yes, it is right", Hint: "a length asked for is the length that is fed"},
		),
		By: sheet.Choose(
			sheet.Option{Word: byWalls, Label: "Wall thickness", Hint: "of a printed wall"},
			sheet.Option{Word: byMass, Label: "Mass", Hint: "of a printed piece"},
			sheet.Option{Word: byDiameter, Label: "Filament diameter", Hint: "before anything is printed"},
		),
		Flow:  unit.FlowFactors.Input("", 0.2, 5),
		Width: length(0.05, 10), Layer: length(0.01, 5), Walls: unit.Lines.Input("", 1, 20), Spacing: length(0.02, 10),
		Fused: sheet.Choose(
			sheet.Option{Word: "fused", Label: "Grown together", Hint: "no gap shows where the wall is broken open"},
			sheet.Option{Word: "gaps", Label: "With gaps", Hint: "the lines can be told apart"},
		),
		Stated: sheet.Choose(
			sheet.Option{Word: "length", Label: "A length", Hint: "of filament"},
			sheet.Option{Word: "mass", Label: "A mass", Hint: "of plastic"},
		),
		Used: length(50, 5*unit.Million), Planned: mass(0.05, 20_000),
		Included: sheet.Choose(
			sheet.Option{Word: "without", Label: "Without the flow factor", Hint: "it stays the same when you change the factor there"},
			sheet.Option{Word: "with", Label: "With it", Hint: "it grows when you raise the factor there"},
		),
		Set: length(0.5, 10), Density: unit.Densities.Input("g/cm³", 0.1, 20), DensityLimits: unit.Percents.Input("%", 0, 30),
		reading: &sheet.Group{Noun: "reading", Least: 1, Start: 3, Most: sheet.MostRows},
		Thick:   sheet.LengthsOf(length(0.01, 200)),
		Weighed: sheet.ColumnOf(mass(0.01, 20_000)),
		Across:  sheet.LengthsOf(length(0.2, 20)),
		Aside:   sheet.ListOf(sheet.NewFlag("the reading is set aside: it stays on view, and does not count")),
		tool:    axis.NewToolEntry(sheet.Option{Word: "none", Label: "Not known", Hint: "then only the scatter of the readings counts"}),
		Balance: mass(0.00001, 100), BalanceLimits: mass(0.00001, 100),
		Tol: unit.Percents.Input("%", 0.001, 50),
	}
}

// The sections of the form.
var (
	secFlowScale = &sheet.Section{Title: "First the scale"}
	secFlowAim   = &sheet.Section{Title: "What should be there"}
	secFlowRead  = &sheet.Section{Title: "What is there"}
	secFlowTool  = &sheet.Section{Title: "What you read with"}
)

func (s *entries) Fields() []sheet.Field {
	walls, mass, across := sheet.If("by", byWalls), sheet.If("by", byMass), sheet.If("by", byDiameter)
	aim := func(key, label, hint string, on []sheet.When, v sheet.Value, suggest ...string) sheet.Field {
		return sheet.Field{Key: key, Label: label, Hint: hint, Section: secFlowAim, When: on, Cells: sheet.One(v), Suggest: suggest}
	}
	column := func(key, label, hint string, on []sheet.When, cells sheet.Cells) sheet.Field {
		return sheet.Field{Key: key, Label: label, Hint: hint, Section: secFlowRead, When: on, Group: s.reading, Cells: cells}
	}
	// A choice that is hidden holds its default, so that a diameter counts as
	// one for a stated length.
	length := sheet.And(sheet.If("by", byMass, byDiameter), "stated", "length")
	return lists.Concat(
		[]sheet.Field{
			{Key: "scale", Label: "Has the feed scale been checked?", Hint: "A wrong scale would be hidden by the flow factor, so there is none before that.", Section: secFlowScale, Cells: sheet.One(&s.Scale)},
			aim("by", "Find it by", "", nil, &s.By),
			aim("flow", "Flow factor now", "The one that the piece was printed with: 0.97 or 97 %. Empty: 1.00.", nil, s.Flow.Entry()),
			aim("width", "Line width", "As set in the slicing step.", walls, s.Width.Entry(), "0.45"),
			aim("layer", "Layer height", "Of the layers that you measure, not the first one.", walls, s.Layer.Entry(), "0.2"),
			aim("walls", "Lines side by side", "How many make the wall. Empty: 1.", walls, s.Walls.Entry(), "1", "2", "4"),
			aim("spacing", "Spacing of the lines", "Only if your slicing step states it. Empty: worked out from line width and layer height.", walls, s.Spacing.Entry()),
			aim("fused", "Lines side by side are", "", walls, &s.Fused),
			aim("stated", "The slicing step states", "", mass, &s.Stated),
			aim("used", "Filament that the piece takes", "As stated there, for all that you weigh. In mm, or write 4.12 m.", sheet.And(mass, "stated", "length"), s.Used.Entry()),
			aim("planned", "Mass of the piece", "As stated there, for all that you weigh.", sheet.And(mass, "stated", "mass"), s.Planned.Entry()),
			aim("included", "The amount is stated", "Change the factor there and see whether the number moves.", mass, &s.Included),
			aim("set", "Filament diameter as set", "In the slicing step, not as measured.", length, s.Set.Entry(), "1.75", "2.85"),
			aim("density", "Density of the filament", "From its label or data sheet, in g/cm³.", sheet.And(mass, "stated", "length"), s.Density.Entry(), "1.24", "1.27"),
			aim("densitylimits", "The density is right within ±", "Empty: 1 %. Labels are often no better than 1 to 2 %.", mass, s.DensityLimits.Entry()),

			column("thick", "Thickness", "At several places of flat sides: not at a corner, the seam or the first layers.", walls, s.Thick.Cells()),
			column("weighed", "Mass", "Each of a piece printed anew from the same file.", mass, s.Weighed.Cells()),
			column("across", "Diameter", "At several places along the filament, in two directions at each.", across, s.Across.Cells()),
			column("aside", "Set aside", "", nil, &s.Aside),
		},
		s.tool.Fields(secFlowTool, "", "Read with", sheet.If("by", byWalls, byDiameter)),
		[]sheet.Field{
			{Key: "balance", Label: "Step of the balance", Hint: "The step of its display.", Section: secFlowTool, When: mass, Cells: sheet.Input(&s.Balance), Suggest: []string{"0.01", "0.1", "1"}},
			{Key: "balancelimits", Label: "Its accuracy, ±", Hint: "The limits of error that its maker states. Empty: only its step counts.", Section: secFlowTool, When: mass, Cells: sheet.Input(&s.BalanceLimits)},
			{Key: "tol", Label: "Tolerance on the plastic, ±", Hint: "Empty: 2 %. Walls differ by about as much from place to place.", Section: secFlowTool, Cells: sheet.Input(&s.Tol)},
		},
	)
}
