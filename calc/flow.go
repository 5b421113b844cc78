package calc

import (
	"striderule/calc/lists"
	"striderule/calc/unit"
)

// Other pages hand over by these keys, in this order: scale, by, flow, width,
// layer, walls, spacing, fused, stated, used, planned, included, set, density,
// densitylimits, then the rows thick, weighed, across and aside, then tool,
// step, limits, balance, balancelimits and tol.

var flowPage = Page{
	Slug:     "flow",
	Menu:     "Flow",
	Title:    "Trim the flow",
	Question: "The scale is right. Are the walls as thick as they should be, and what should the flow factor be?",
	About:    "Once the feed scale is verified: the flow factor from wall thickness, from the mass of a print or from the filament's diameter, and whether the difference is real.",
	New:      func() Sheet { return newFlow() },
	Example:  "v=1&scale=verified&flow=1.05&width=0.45&layer=0.2&walls=4&thick=1.75,1.75,1.70,1.80,1.75,1.75&tool=caliper-0.05",
	Outputs: []Output{
		{"flow", "Flow factor, new", "1"},
		{"percent", "Flow factor, new, in percent", "%"},
		{"was", "Flow factor, before", "1"},
		{"plastic", "Error of the plastic: what is there over what should be, less one", "%"},
		{"mean", "Mean of the readings", "mm or g"},
		{"wanted", "What the readings should be", "mm or g"},
		{"spread", "Spread of the readings (standard deviation)", "mm or g"},
		{"bead", "Section of one line as it should be", "mm²"},
		{"read", "One reading", "mm or g"},
		{"off", "Error of the plastic by one reading", "%"},
		{"diameter", "Filament diameter to enter instead of a new flow factor", "mm"},
		{"low", "Lower end of the interval that the mean of as many new readings should fall in", "mm or g"},
		{"high", "Upper end of it", "mm or g"},
		{"walls", "Lines side by side that would settle it", "1"},
		{"within", "Probability that the error is within the tolerance", "%"},
		{"above", "Probability that there is too much plastic, beyond the tolerance", "%"},
		{"below", "Probability that there is too little plastic, beyond the tolerance", "%"},
		{"part", "Standard uncertainty of the error from one cause", "%"},
		{"combined", "Combined standard uncertainty of the error", "%"},
		{"dof", "Effective degrees of freedom", "1"},
		{"k", "Coverage factor of 95 %", "1"},
	},
	Tasks: []Task{
		{"The scale is right, but walls are too thick or too thin", "Measure a printed wall, and get the flow factor with its uncertainty.", ""},
	},
}

// The ways to the flow factor.
const (
	byWalls    = "walls"
	byMass     = "mass"
	byDiameter = "diameter"
)

// A flowSheet is how much plastic should be there, and how much is.
type flowSheet struct {
	Scale Choice // whether the feed scale is verified
	By    Choice
	Flow  unit.Input[unit.Ratio] // that the piece was printed with

	Width   unit.Input[unit.Length]
	Layer   unit.Input[unit.Length]
	Walls   unit.Input[unit.Count]
	Spacing unit.Input[unit.Length]
	Fused   Choice

	Stated        Choice // what the slicing step says of the filament it takes
	Used          unit.Input[unit.Length]
	Planned       unit.Input[unit.Mass]
	Included      Choice // whether that has the flow factor in it
	Set           unit.Input[unit.Length]
	Density       unit.Input[unit.Density]
	DensityLimits unit.Input[unit.Percent]

	reading *Group
	Thick   lengthList
	Weighed massList
	Across  lengthList
	Aside   flagList

	tool          toolEntry
	Balance       unit.Input[unit.Mass]
	BalanceLimits unit.Input[unit.Mass]
	Tol           unit.Input[unit.Percent]
}

type massList = Column[unit.Mass]

func newFlow() *flowSheet {
	length := func(least, most unit.Length) unit.Input[unit.Length] { return unit.Lengths.Input("mm", least, most) }
	mass := func(least, most unit.Mass) unit.Input[unit.Mass] { return unit.Masses.Input("g", least, most) }
	return &flowSheet{
		Scale: choose(
			Option{"unsure", "No, or not sure", "then measure the scale first"},
			Option{scaleVerified, "Yes, it is right", "a length asked for is the length that is fed"},
		),
		By: choose(
			Option{byWalls, "Wall thickness", "of a printed wall"},
			Option{byMass, "Mass", "of a printed piece"},
			Option{byDiameter, "Filament diameter", "before anything is printed"},
		),
		Flow:  unit.FlowFactors.Input("", 0.2, 5),
		Width: length(0.05, 10), Layer: length(0.01, 5), Walls: unit.Lines.Input("", 1, 20), Spacing: length(0.02, 10),
		Fused: choose(
			Option{"fused", "Grown together", "no gap shows where the wall is broken open"},
			Option{"gaps", "With gaps", "the lines can be told apart"},
		),
		Stated: choose(
			Option{"length", "A length", "of filament"},
			Option{"mass", "A mass", "of plastic"},
		),
		Used: length(50, 5*unit.Million), Planned: mass(0.05, 20_000),
		Included: choose(
			Option{"without", "Without the flow factor", "it stays the same when you change the factor there"},
			Option{"with", "With it", "it grows when you raise the factor there"},
		),
		Set: length(0.5, 10), Density: unit.Densities.Input("g/cm³", 0.1, 20), DensityLimits: unit.Percents.Input("%", 0, 30),
		reading: &Group{Noun: "reading", Least: 1, Start: 3, Most: MostRows},
		Thick:   lengthsOf(length(0.01, 200)),
		Weighed: columnOf(mass(0.01, 20_000)),
		Across:  lengthsOf(length(0.2, 20)),
		Aside:   listOf(newFlag("the reading is set aside: it stays on view, and does not count")),
		tool:    newToolEntry(Option{"none", "Not known", "then only the scatter of the readings counts"}),
		Balance: mass(0.00001, 100), BalanceLimits: mass(0.00001, 100),
		Tol: unit.Percents.Input("%", 0.001, 50),
	}
}

// The sections of the form.
var (
	secFlowScale = &Section{Title: "First the scale"}
	secFlowAim   = &Section{Title: "What should be there"}
	secFlowRead  = &Section{Title: "What is there"}
	secFlowTool  = &Section{Title: "What you read with"}
)

func (s *flowSheet) Fields() []Field {
	walls, mass, across := when("by", byWalls), when("by", byMass), when("by", byDiameter)
	aim := func(key, label, hint string, on []When, v Value, suggest ...string) Field {
		return Field{Key: key, Label: label, Hint: hint, Section: secFlowAim, When: on, Cells: one(v), Suggest: suggest}
	}
	column := func(key, label, hint string, on []When, cells Cells) Field {
		return Field{Key: key, Label: label, Hint: hint, Section: secFlowRead, When: on, Group: s.reading, Cells: cells}
	}
	// A choice that is hidden holds its default, so that a diameter counts as
	// one for a stated length.
	length := and(when("by", byMass, byDiameter), "stated", "length")
	return lists.Concat(
		[]Field{
			{Key: "scale", Label: "Has the feed scale been checked?", Hint: "A wrong scale would be hidden by the flow factor, so there is none before that.", Section: secFlowScale, Cells: one(&s.Scale)},
			aim("by", "Find it by", "", nil, &s.By),
			aim("flow", "Flow factor now", "The one that the piece was printed with: 0.97 or 97 %. Empty: 1.00.", nil, s.Flow.Entry()),
			aim("width", "Line width", "As set in the slicing step.", walls, s.Width.Entry(), "0.45"),
			aim("layer", "Layer height", "Of the layers that you measure, not the first one.", walls, s.Layer.Entry(), "0.2"),
			aim("walls", "Lines side by side", "How many make the wall. Empty: 1.", walls, s.Walls.Entry(), "1", "2", "4"),
			aim("spacing", "Spacing of the lines", "Only if your slicing step states it. Empty: worked out from line width and layer height.", walls, s.Spacing.Entry()),
			aim("fused", "Lines side by side are", "", walls, &s.Fused),
			aim("stated", "The slicing step states", "", mass, &s.Stated),
			aim("used", "Filament that the piece takes", "As stated there, for all that you weigh. In mm, or write 4.12 m.", and(mass, "stated", "length"), s.Used.Entry()),
			aim("planned", "Mass of the piece", "As stated there, for all that you weigh.", and(mass, "stated", "mass"), s.Planned.Entry()),
			aim("included", "The amount is stated", "Change the factor there and see whether the number moves.", mass, &s.Included),
			aim("set", "Filament diameter as set", "In the slicing step, not as measured.", length, s.Set.Entry(), "1.75", "2.85"),
			aim("density", "Density of the filament", "From its label or data sheet, in g/cm³.", and(mass, "stated", "length"), s.Density.Entry(), "1.24", "1.27"),
			aim("densitylimits", "The density is right within ±", "Empty: 1 %. Labels are often no better than 1 to 2 %.", mass, s.DensityLimits.Entry()),

			column("thick", "Thickness", "At several places of flat sides: not at a corner, the seam or the first layers.", walls, s.Thick.cells()),
			column("weighed", "Mass", "Each of a piece printed anew from the same file.", mass, s.Weighed.cells()),
			column("across", "Diameter", "At several places along the filament, in two directions at each.", across, s.Across.cells()),
			column("aside", "Set aside", "", nil, &s.Aside),
		},
		s.tool.fields(secFlowTool, "", "Read with", when("by", byWalls, byDiameter)),
		[]Field{
			{Key: "balance", Label: "Step of the balance", Hint: "The step of its display.", Section: secFlowTool, When: mass, Cells: input(&s.Balance), Suggest: []string{"0.01", "0.1", "1"}},
			{Key: "balancelimits", Label: "Its accuracy, ±", Hint: "The limits of error that its maker states. Empty: only its step counts.", Section: secFlowTool, When: mass, Cells: input(&s.BalanceLimits)},
			{Key: "tol", Label: "Tolerance on the plastic, ±", Hint: "Empty: 2 %. Walls differ by about as much from place to place.", Section: secFlowTool, Cells: input(&s.Tol)},
		},
	)
}
