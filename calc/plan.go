package calc

import (
	"striderule/calc/lists"
	"striderule/calc/unit"
)

var planPage = Page{
	Slug:     "plan",
	Menu:     "Plan",
	Title:    "Plan a test",
	Question: "How long, how slow and how many runs, so that the answer is good enough?",
	About:    "Length, runs, speed and mark of a test for the uncertainty you want, with the moves as G-code lines and a check-list with its cautions.",
	New:      func() Sheet { return newPlan() },
	Example:  "v=1&wanted=0.3&tool=caliper-0.05&scatter=0.15&speed=90&filament=1.75&melt=10&steps=538.0",
	Tasks:    []Task{{"I am about to test an axis", "How long, how often, where to put the mark; the moves ready to send, and a check-list.", ""}},
	Outputs: []Output{
		{"length", "Length of a run", "mm"},
		{"runs", "Runs in all", "1"},
		{"expanded", "Expanded uncertainty of the error to expect", "%"},
		{"mark", "Distance of the mark from the drive", "mm"},
		{"speed", "Speed of the moves", "mm/s"},
		{"word", "The same as the F word of a move", "mm/min"},
		{"melt", "What the hot end must melt", "mm³/s"},
		{"filament", "Filament used", "mm"},
		{"time", "Time that the test takes", "min"},
		{"needs", "Length that so many runs would need", "mm"},
		{"slip", "Smallest slip between the slowest and the fastest run that would show", "%"},
		{"lost", "Uncertainty of what is lost on reversal", "mm"},
		{"target", "Target position", "mm"},
	},
}

// What a plan assumes where nothing is said. The scatter of a feed test is that
// of a mark made with a pen and found again by eye, that of a carriage what a
// rule or caliper held against it shows.
const (
	feedScatter   = 0.15 // mm
	travelScatter = 0.05
	usualRuns     = 5
	usualRepeats  = 3   // at each of several places
	feedReach     = 300 // mm, of an instrument without an end
	longStep      = 10  // mm, planned lengths are multiples of it
	slack         = 5   // mm, fed or travelled before a run to take up slack
	leastRange    = 40  // mm of travel
)

var (
	slipSpeeds   = []unit.Speed{1, 3, 6}         // mm/s
	lengthShares = []float64{0.2, 0.6, 1}        // of the longest one
	targetShares = []float64{0, .25, .5, .75, 1} // of the range between the slack at its ends
)

type planSheet struct {
	Axis Choice
	trialEntry
	Wanted unit.Input[unit.Percent]
	tool   toolEntry
	// Scatter is the standard deviation of the runs, as an earlier sheet shows it.
	Scatter  unit.Input[unit.Length]
	Letter   Choice
	From, To unit.Input[unit.Length]
	Longest  unit.Input[unit.Length]
	Runs     unit.Input[unit.Count]
	Asked    unit.Input[unit.Length]
	Margin   unit.Input[unit.Length]
	Speed    unit.Input[unit.Speed]
	speeds   *Group
	At       Column[unit.Speed]
	Filament unit.Input[unit.Length]
	Melt     unit.Input[unit.VolumeRate]
	Each     unit.Input[unit.Duration]
	movesEntry
	scaleEntry
	motorEntry
	gearEntry
}

var runCounts = unit.Kind[unit.Count]{
	Noun: "a number of runs", Example: "5", Whole: true,
	Units: []unit.Unit{{Also: []string{"run", "runs"}}},
}

func newPlan() *planSheet {
	return &planSheet{
		Axis:       choose(axisFeed, axisTravel),
		trialEntry: newTrialEntry(),
		Wanted:     unit.Percents.Input("%", 0.001, 50),
		tool:       newToolEntry(Option{"none", "Not known yet", ""}),
		Scatter:    unit.Lengths.Input("mm", 0.0001, 100),
		Letter:     choose(Option{"x", "X", ""}, Option{"y", "Y", ""}, Option{"z", "Z", "mind the bed"}),
		From:       positionInput(), To: positionInput(),
		Longest: unit.Lengths.Input("mm", longStep, 3000), Asked: unit.Lengths.Input("mm", longStep, 3000),
		Runs:       runCounts.Input("", 2, MostRows),
		Margin:     unit.Lengths.Input("mm", 1, 500),
		Speed:      testSpeedInput(),
		speeds:     &Group{Noun: "speed", Least: 2, Start: 3, Most: 10},
		At:         columnOf(testSpeedInput()),
		Filament:   unit.Lengths.Input("mm", 0.5, 10),
		Melt:       unit.VolumeRates.Input("mm³/s", 0.1, 1000),
		Each:       unit.Durations.Input("s", 0, 3600),
		movesEntry: newMovesEntry(), scaleEntry: newScaleEntry(),
		motorEntry: newMotorEntry(), gearEntry: newGearEntry(gearsUnknown, gearsNone, gearsPairs, gearsRatio),
	}
}

func (s *planSheet) Fields() []Field {
	what := &Section{Title: "The test"}
	good := &Section{Title: "How well you want to know it"}
	room := &Section{Title: "What there is room for"}
	fixed := &Section{Title: "What you want to set yourself", Folded: true}
	lines := &Section{Title: "Your own lines for the moves", Folded: true}
	along := &Section{Title: "The setting, for the page that takes the readings", Folded: true}
	feed, travel := when("axis", "feed"), when("axis", "travel")
	hot := and(feed, "path", "hot")
	scale := when("trip", "one", "lengths")
	return lists.Concat(
		[]Field{
			{Key: "axis", Label: "Axis", Section: what, Cells: one(&s.Axis)},
			{Key: "path", Label: "Test", Section: what, When: feed, Cells: one(&s.Path)},
			{Key: "trial", Label: "Runs at", Section: what, When: feed, Cells: one(&s.Trial)},
			{Key: "trip", Label: "Moves", Section: what, When: travel, Cells: one(&s.Trip)},
			{Key: "wanted", Label: "Uncertainty wanted, ±", Hint: "Of the error. Empty: 0.25 % for a feed axis and 0.1 % for a travel axis, half of the usual tolerance.", Section: good, When: scale, Cells: input(&s.Wanted), Suggest: []string{"0.5 %"}},
		},
		s.tool.fields(good, "", "Instrument", nil),
		[]Field{
			{Key: "scatter", Label: "Scatter of the runs", Hint: "The spread that an earlier test showed. Empty: 0.15 mm for a mark on filament, 0.05 mm for a carriage.", Section: good, Cells: input(&s.Scatter)},
			{Key: "letter", Label: "Its letter", Section: room, When: travel, Cells: one(&s.Letter)},
			{Key: "from", Label: "Free from", Hint: "The lowest position that the axis can be moved to without touching anything.", Section: room, When: travel, Cells: input(&s.From)},
			{Key: "to", Label: "Free to", Hint: "The highest one.", Section: room, When: travel, Cells: input(&s.To)},
			{Key: "longest", Label: "Longest feed", Hint: "Empty: as far as the instrument reaches to the mark.", Section: room, When: feed, Cells: input(&s.Longest)},
			{Key: "runs", Label: "Runs", Hint: "Of each length, at each speed, or to each target from either side. Empty: as many as it takes, five as a rule and three at each of several places.", Section: fixed, Cells: input(&s.Runs)},
			{Key: "asked", Label: "Commanded length", Hint: "Empty: as long as it takes.", Section: fixed, When: scale, Cells: input(&s.Asked)},
			{Key: "margin", Label: "Mark farther than the length by", Hint: "So that the mark stays outside even if too much is fed. Empty: a quarter of the length, 25 mm at least.", Section: fixed, When: feed, Cells: input(&s.Margin)},
			{Key: "speed", Label: "Speed", Hint: "A number alone is in mm/min. Empty: 60 mm/min for feeding, 600 mm/min for travel, 120 mm/min for Z.", Section: fixed, When: when("trial", "one"), Cells: input(&s.Speed), Suggest: []string{"60 mm/min", "90 mm/min"}},
			{Key: "at", Label: "Feed speed", Hint: "A number alone is in mm/min. All empty: 60, 180 and 360 mm/min.", Section: fixed, When: and(feed, "trial", "speeds"), Group: s.speeds, Cells: s.At.cells()},
			{Key: "filament", Label: "Diameter of the filament", Hint: "For what the hot end must melt.", Section: fixed, When: hot, Cells: input(&s.Filament), Suggest: []string{"1.75", "2.85"}},
			{Key: "melt", Label: "Most that the hot end melts", Hint: "If you know it, in mm³/s.", Section: fixed, When: hot, Cells: input(&s.Melt)},
			{Key: "each", Label: "Time to read a run and mark anew", Hint: "Empty: one minute.", Section: fixed, Cells: input(&s.Each)},
		},
		s.movesEntry.fields(lines, nil),
		s.scaleEntry.linearFields(along, "The setting as it stands now.", nil),
		s.motorEntry.fields(along), s.gearEntry.fields(along, "", nil),
	)
}
