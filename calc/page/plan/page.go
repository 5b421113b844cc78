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
	Menu:     menu,
	Title:    title,
	Question: question,
	New:      func() sheet.Sheet { return newEntries() },
	Example:  "v=1&wanted=0.3&tool=caliper-0.05&scatter=0.15&speed=90&filament=1.75&melt=10&steps=538.0",
	Tasks:    tasks,
	Outputs:  outputs,
}

// What a plan assumes where nothing is said. The scatter of a feed test is that
// of a mark made with a pen and found again by eye, that of a carriage what a
// rule or caliper held against it shows.
const (
	feedScatter   = 0.15 // mm
	travelScatter = 0.05
	usualRuns     = 5
	usualRepeats  = 3   // at each of several places
	feedReach     = 300 // mm, of a measuring tool without an end
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

func newEntries() *entries {
	return &entries{
		Axis:       sheet.Choose(trial.Feed, trial.Travel),
		TrialEntry: trial.NewTrialEntry(trial.LengthTests),
		Wanted:     unit.Percents.Input("%", 0.001, 50),
		tool:       axis.NewToolEntry(toolUnknown),
		Scatter:    unit.Lengths.Input("mm", 0.0001, 100),
		Letter:     sheet.Choose(letterX, letterY, letterZ),
		From:       axis.PositionInput(), To: axis.PositionInput(),
		Longest: unit.Lengths.Input("mm", longStep, 3000), Asked: unit.Lengths.Input("mm", longStep, 3000),
		Runs:       trial.RunCounts.Input("", 2, sheet.MostRows),
		Margin:     unit.Lengths.Input("mm", 1, 500),
		Speed:      trial.TestSpeedInput(),
		speeds:     &sheet.Group{Words: speedRows, Least: 2, Start: 3, Most: 10},
		At:         sheet.ColumnOf(trial.TestSpeedInput()),
		Filament:   unit.Lengths.Input("mm", 0.5, 10),
		Melt:       unit.VolumeRates.Input("mm³/s", 0.1, 1000),
		Each:       unit.Durations.Input("s", 0, 3600),
		MovesEntry: trial.NewMovesEntry(), ScaleEntry: axis.NewScaleEntry(),
		MotorEntry: axis.NewMotorEntry(), GearEntry: axis.NewGearEntry(axis.GearsUnknown, axis.GearsNone, axis.GearsPairs, axis.GearsRatio),
	}
}

func (s *entries) Fields() []sheet.Field {
	what := &sheet.Section{Title: testSection}
	good := &sheet.Section{Title: goodSection}
	room := &sheet.Section{Title: roomSection}
	fixed := &sheet.Section{Title: fixedSection, Folded: true}
	lines := &sheet.Section{Title: linesSection, Folded: true}
	along := &sheet.Section{Title: settingSection, Folded: true}
	feed, travel := sheet.If("axis", "feed"), sheet.If("axis", "travel")
	hot := sheet.And(feed, "path", "hot")
	relative := sheet.If("trip", "one", "lengths")
	return sheet.Need(lists.Concat(
		[]sheet.Field{
			{Key: "axis", Label: axisLabel, Section: what, Cells: sheet.One(&s.Axis)},
			{Key: "path", Label: pathLabel, Section: what, When: feed, Cells: sheet.One(&s.Path)},
			{Key: "trial", Label: trialLabel, Section: what, When: feed, Cells: sheet.One(&s.Trial)},
			{Key: "trip", Label: tripLabel, Section: what, When: travel, Cells: sheet.One(&s.Trip)},
			{Key: "wanted", Label: wantedLabel, Hint: wantedHint, Section: good, When: relative, Cells: sheet.Input(&s.Wanted), Suggest: []string{"0.5%"}},
		},
		s.tool.Fields(good, "", toolLabel, nil),
		[]sheet.Field{
			{Key: "scatter", Label: scatterLabel, Hint: scatterHint, Section: good, Cells: sheet.Input(&s.Scatter)},
			{Key: "letter", Label: letterLabel, Section: room, When: travel, Cells: sheet.One(&s.Letter)},
			{Key: "from", Label: fromLabel, Hint: fromHint, Section: room, When: travel, Cells: sheet.Input(&s.From)},
			{Key: "to", Label: toLabel, Section: room, When: travel, Cells: sheet.Input(&s.To)},
			{Key: "longest", Label: longestLabel, Hint: longestHint, Section: room, When: feed, Cells: sheet.Input(&s.Longest)},
			{Key: "runs", Label: countLabel, Hint: countHint, Section: fixed, Cells: sheet.Input(&s.Runs)},
			{Key: "asked", Label: askedLabel, Hint: askedHint, Section: fixed, When: relative, Cells: sheet.Input(&s.Asked)},
			{Key: "margin", Label: marginLabel, Hint: marginHint, Section: fixed, When: feed, Cells: sheet.Input(&s.Margin)},
			{Key: "speed", Label: speedLabel, Hint: speedHint, Section: fixed, When: sheet.If("trial", "one"), Cells: sheet.Input(&s.Speed), Suggest: []string{"60 mm/min", "90 mm/min"}},
			{Key: "at", Label: atLabel, Hint: atHint, Section: fixed, When: sheet.And(feed, "trial", "speeds"), Group: s.speeds, Cells: s.At.Cells()},
			{Key: "filament", Label: filamentLabel, Hint: filamentHint, Section: fixed, When: hot, Cells: sheet.Input(&s.Filament), Suggest: []string{"1.75", "2.85"}},
			{Key: "melt", Label: maxMeltLabel, Hint: maxMeltHint, Section: fixed, When: hot, Cells: sheet.Input(&s.Melt)},
			{Key: "each", Label: eachLabel, Hint: eachHint, Section: fixed, Cells: sheet.Input(&s.Each)},
		},
		s.MovesEntry.Fields(lines, nil),
		s.ScaleEntry.LinearFields(along, settingHint, nil),
		s.MotorEntry.Fields(along), s.GearEntry.Fields(along, "", nil),
	), "wanted", "tool", "step", "from", "to", "longest")
}
