package plan

import (
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// Page plans a test.
var Page = sheet.Page{
	Slug:     "plan",
	Menu:     "Plan",
	Title:    "Plan a test",
	Question: "How long, how slow and how many runs, so that the answer is good enough?",
	About:    "Length, runs, speed and mark of a test for the uncertainty you want, with the moves as G-code lines and a check-list with its cautions.",
	New:      func() sheet.Sheet { return newEntries() },
	Example:  "v=1&wanted=0.3&tool=caliper-0.05&scatter=0.15&speed=90&filament=1.75&melt=10&steps=538.0",
	Tasks:    []sheet.Task{{Situation: "I am about to test an axis", Help: "How long, how often, where to put the mark; the moves ready to send, and a check-list.", Fragment: ""}},
	Outputs: []sheet.Output{
		{ID: "length", Label: "Length of a run", Unit: "mm"},
		{ID: "runs", Label: "Runs in all", Unit: "1"},
		{ID: "expanded", Label: "Expanded uncertainty of the error to expect", Unit: "%"},
		{ID: "mark", Label: "Distance of the mark from the drive", Unit: "mm"},
		{ID: "speed", Label: "Speed of the moves", Unit: "mm/s"},
		{ID: "word", Label: "The same as the F word of a move", Unit: "mm/min"},
		{ID: "melt", Label: "What the hot end must melt", Unit: "mm³/s"},
		{ID: "filament", Label: "Filament used", Unit: "mm"},
		{ID: "time", Label: "Time that the test takes", Unit: "min"},
		{ID: "needs", Label: "Length that so many runs would need", Unit: "mm"},
		{ID: "slip", Label: "Smallest slip between the slowest and the fastest run that would show", Unit: "%"},
		{ID: "lost", Label: "Uncertainty of what is lost on reversal", Unit: "mm"},
		{ID: "target", Label: "Target position", Unit: "mm"},
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

type entries struct {
	Axis sheet.Choice
	trial.TrialEntry
	Wanted unit.Input[unit.Percent]
	tool   axis.ToolEntry
	// Scatter is the standard deviation of the runs, as an earlier sheet shows it.
	Scatter  unit.Input[unit.Length]
	Letter   sheet.Choice
	From, To unit.Input[unit.Length]
	Longest  unit.Input[unit.Length]
	Runs     unit.Input[unit.Count]
	Asked    unit.Input[unit.Length]
	Margin   unit.Input[unit.Length]
	Speed    unit.Input[unit.Speed]
	speeds   *sheet.Group
	At       sheet.Column[unit.Speed]
	Filament unit.Input[unit.Length]
	Melt     unit.Input[unit.VolumeRate]
	Each     unit.Input[unit.Duration]
	trial.MovesEntry
	axis.ScaleEntry
	axis.MotorEntry
	axis.GearEntry
}

var runCounts = unit.Kind[unit.Count]{
	Noun: "a number of runs", Example: "5", Whole: true,
	Units: []unit.Unit{{Also: []string{"run", "runs"}}},
}

func newEntries() *entries {
	return &entries{
		Axis:       sheet.Choose(trial.Feed, trial.Travel),
		TrialEntry: trial.NewTrialEntry(),
		Wanted:     unit.Percents.Input("%", 0.001, 50),
		tool:       axis.NewToolEntry(sheet.Option{Word: "none", Label: "Not known yet", Hint: ""}),
		Scatter:    unit.Lengths.Input("mm", 0.0001, 100),
		Letter:     sheet.Choose(sheet.Option{Word: "x", Label: "X", Hint: ""}, sheet.Option{Word: "y", Label: "Y", Hint: ""}, sheet.Option{Word: "z", Label: "Z", Hint: "mind the bed"}),
		From:       axis.PositionInput(), To: axis.PositionInput(),
		Longest: unit.Lengths.Input("mm", longStep, 3000), Asked: unit.Lengths.Input("mm", longStep, 3000),
		Runs:       runCounts.Input("", 2, sheet.MostRows),
		Margin:     unit.Lengths.Input("mm", 1, 500),
		Speed:      trial.TestSpeedInput(),
		speeds:     &sheet.Group{Noun: "speed", Least: 2, Start: 3, Most: 10},
		At:         sheet.ColumnOf(trial.TestSpeedInput()),
		Filament:   unit.Lengths.Input("mm", 0.5, 10),
		Melt:       unit.VolumeRates.Input("mm³/s", 0.1, 1000),
		Each:       unit.Durations.Input("s", 0, 3600),
		MovesEntry: trial.NewMovesEntry(), ScaleEntry: axis.NewScaleEntry(),
		MotorEntry: axis.NewMotorEntry(), GearEntry: axis.NewGearEntry(axis.GearsUnknown, axis.GearsNone, axis.GearsPairs, axis.GearsRatio),
	}
}

func (s *entries) Fields() []sheet.Field {
	what := &sheet.Section{Title: "The test"}
	good := &sheet.Section{Title: "How well you want to know it"}
	room := &sheet.Section{Title: "What there is room for"}
	fixed := &sheet.Section{Title: "What you want to set yourself", Folded: true}
	lines := &sheet.Section{Title: "Your own lines for the moves", Folded: true}
	along := &sheet.Section{Title: "The setting, for the page that takes the readings", Folded: true}
	feed, travel := sheet.If("axis", "feed"), sheet.If("axis", "travel")
	hot := sheet.And(feed, "path", "hot")
	scale := sheet.If("trip", "one", "lengths")
	return lists.Concat(
		[]sheet.Field{
			{Key: "axis", Label: "Axis", Section: what, Cells: sheet.One(&s.Axis)},
			{Key: "path", Label: "Test", Section: what, When: feed, Cells: sheet.One(&s.Path)},
			{Key: "trial", Label: "Runs at", Section: what, When: feed, Cells: sheet.One(&s.Trial)},
			{Key: "trip", Label: "Moves", Section: what, When: travel, Cells: sheet.One(&s.Trip)},
			{Key: "wanted", Label: "Uncertainty wanted, ±", Hint: "Of the error. Empty: 0.25 % for a feed axis and 0.1 % for a travel axis, half of the usual tolerance.", Section: good, When: scale, Cells: sheet.Input(&s.Wanted), Suggest: []string{"0.5 %"}},
		},
		s.tool.Fields(good, "", "Instrument", nil),
		[]sheet.Field{
			{Key: "scatter", Label: "Scatter of the runs", Hint: "The spread that an earlier test showed. Empty: 0.15 mm for a mark on filament, 0.05 mm for a carriage.", Section: good, Cells: sheet.Input(&s.Scatter)},
			{Key: "letter", Label: "Its letter", Section: room, When: travel, Cells: sheet.One(&s.Letter)},
			{Key: "from", Label: "Free from", Hint: "The lowest position that the axis can be moved to without touching anything.", Section: room, When: travel, Cells: sheet.Input(&s.From)},
			{Key: "to", Label: "Free to", Hint: "The highest one.", Section: room, When: travel, Cells: sheet.Input(&s.To)},
			{Key: "longest", Label: "Longest feed", Hint: "Empty: as far as the instrument reaches to the mark.", Section: room, When: feed, Cells: sheet.Input(&s.Longest)},
			{Key: "runs", Label: "Runs", Hint: "Of each length, at each speed, or to each target from either side. Empty: as many as it takes, five as a rule and three at each of several places.", Section: fixed, Cells: sheet.Input(&s.Runs)},
			{Key: "asked", Label: "Commanded length", Hint: "Empty: as long as it takes.", Section: fixed, When: scale, Cells: sheet.Input(&s.Asked)},
			{Key: "margin", Label: "Mark farther than the length by", Hint: "So that the mark stays outside even if too much is fed. Empty: a quarter of the length, 25 mm at least.", Section: fixed, When: feed, Cells: sheet.Input(&s.Margin)},
			{Key: "speed", Label: "Speed", Hint: "A number alone is in mm/min. Empty: 60 mm/min for feeding, 600 mm/min for travel, 120 mm/min for Z.", Section: fixed, When: sheet.If("trial", "one"), Cells: sheet.Input(&s.Speed), Suggest: []string{"60 mm/min", "90 mm/min"}},
			{Key: "at", Label: "Feed speed", Hint: "A number alone is in mm/min. All empty: 60, 180 and 360 mm/min.", Section: fixed, When: sheet.And(feed, "trial", "speeds"), Group: s.speeds, Cells: s.At.Cells()},
			{Key: "filament", Label: "Diameter of the filament", Hint: "For what the hot end must melt.", Section: fixed, When: hot, Cells: sheet.Input(&s.Filament), Suggest: []string{"1.75", "2.85"}},
			{Key: "melt", Label: "Most that the hot end melts", Hint: "If you know it, in mm³/s.", Section: fixed, When: hot, Cells: sheet.Input(&s.Melt)},
			{Key: "each", Label: "Time to read a run and mark anew", Hint: "Empty: one minute.", Section: fixed, Cells: sheet.Input(&s.Each)},
		},
		s.MovesEntry.Fields(lines, nil),
		s.ScaleEntry.LinearFields(along, "The setting as it stands now.", nil),
		s.MotorEntry.Fields(along), s.GearEntry.Fields(along, "", nil),
	)
}
