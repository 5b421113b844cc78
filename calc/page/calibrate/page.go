package calibrate

import (
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// Page works a setting out from a measurement.
var Page = sheet.Page{
	Slug:     "measure",
	Menu:     "Measure",
	Title:    "Correct from a measurement",
	Question: "I asked for a length and measured another. What should the setting be?",
	About:    "Type the length you asked for and what you measured; get the corrected steps per mm or travel per motor turn, with the line to send and what to do next.",
	New:      func() sheet.Sheet { return newEntries() },
	Example:  "v=1&steps=538.0&asked=80&speed=90&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05&angle=1.8&micro=16&gears=pairs&driving=12&driven=54&line=M92%20E%7Bvalue%7D",
	Outputs: lists.Concat(
		axis.SettingOutputs("", ", new"),
		axis.SettingOutputs("was-", ", before"),
		[]sheet.Output{
			{ID: "error", Label: "Error: measured over commanded, less one", Unit: "%"},
			{ID: "mean", Label: "Mean of the measured lengths", Unit: "mm or °"},
			{ID: "spread", Label: "Spread of the runs (standard deviation)", Unit: "mm or °"},
			{ID: "correction", Label: "Correction: commanded over measured", Unit: "1"},
			{ID: "moved", Label: "Length that a run moved", Unit: "mm or °"},
			{ID: "off", Label: "Error of a run", Unit: "%"},
			{ID: "diameter", Label: "Effective diameter of the roller that the new setting implies", Unit: "mm"},
			{ID: "expect", Label: "Expected reading after the change", Unit: "mm or °"},
			{ID: "feed", Label: "Feed speed", Unit: "mm/s"},
			{ID: "word", Label: "Feed speed as the F word of a move", Unit: "mm/min"},
			{ID: "within", Label: "Probability that the error is within the tolerance", Unit: "%"},
			{ID: "above", Label: "Probability that it moves too much, beyond the tolerance", Unit: "%"},
			{ID: "below", Label: "Probability that it moves too little, beyond the tolerance", Unit: "%"},
			{ID: "part", Label: "Standard uncertainty of the error from one cause", Unit: "%"},
			{ID: "combined", Label: "Combined standard uncertainty of the error", Unit: "%"},
			{ID: "dof", Label: "Effective degrees of freedom", Unit: "1"},
			{ID: "k", Label: "Coverage factor of 95 %", Unit: "1"},
			{ID: "low", Label: "Lower end of the interval that the next reading should fall in", Unit: "mm or °"},
			{ID: "high", Label: "Upper end of it", Unit: "mm or °"},
			{ID: "then", Label: "Error after the change", Unit: "%"},
			{ID: "slope", Label: "Error gained with each mm/s of feed speed", Unit: "%"},
			{ID: "holds", Label: "Speed up to which the error stays within the tolerance", Unit: "mm/s"},
			{ID: "speedmean", Label: "Mean error at one speed", Unit: "%"},
			{ID: "offset", Label: "Fixed offset of a travel axis", Unit: "mm"},
			{ID: "reversal", Label: "Lost on reversal, the largest: the reversal value", Unit: "mm"},
			{ID: "lost", Label: "Lost on reversal, mean: positions going up less those coming down", Unit: "mm"},
		},
		axis.TunedOutputs, axis.PulseOutputs,
	),
	Tasks: []sheet.Task{
		{Situation: "I fitted another feeder", Help: "Make a short test, type what you measured, and get the new setting.", Fragment: ""},
		{Situation: "I measured, and an axis is off", Help: "Commanded and measured length in, the corrected setting out.", Fragment: "v=1&axis=travel"},
	},
}

// entries are a test move and what it really moved.
type entries struct {
	Axis sheet.Choice
	axis.ScaleEntry
	Drive sheet.Choice // where the feeder sits
	trial.TrialEntry
	Asked    unit.Input[unit.Length]
	AskedDeg unit.Input[unit.Angle]
	Speed    unit.Input[unit.Speed]
	Done     sheet.Checks

	Read    sheet.Choice
	Marks   sheet.Choice
	Mark    unit.Input[unit.Length]
	At      sheet.Column[unit.Speed]
	Want    sheet.LengthList
	first   trial.RoundEntry
	target  *sheet.Group
	Targets sheet.LengthList
	Up      sheet.LengthList
	Down    sheet.LengthList

	tool     axis.ToolEntry
	markTool axis.ToolEntry
	Tol      unit.Input[unit.Percent]

	second trial.RoundEntry // after the change

	axis.MotorEntry
	axis.GearEntry
	axis.TouchedEntry
	Counted    sheet.Choice
	Line       sheet.Template // for a feed axis
	TravelLine sheet.Template
	RotaryLine sheet.Template
	Entry      sheet.Template
}

func newEntries() *entries {
	return &entries{
		Axis: sheet.Choose(
			trial.Feed, trial.Travel,
			sheet.Option{Word: "rotary", Label: "Rotary", Hint: "an axis that turns by degrees"},
		),
		ScaleEntry: axis.NewScaleEntry(),
		Drive: sheet.Choose(
			sheet.Option{Word: "near", Label: "At the hot end", Hint: "the filament goes straight from the drive into it"},
			sheet.Option{Word: "tube", Label: "Away from it", Hint: "a guide (Bowden) tube leads from the drive to the hot end"},
		),
		TrialEntry: trial.NewTrialEntry(),
		Asked:      trial.ReadingInput(), AskedDeg: unit.Angles.Input("°", 0.001, 360_000),
		Speed: trial.TestSpeedInput(),
		Done:  sheet.NewChecks(trial.Readiness),
		Read: sheet.Choose(
			sheet.Option{Word: "rest", Label: "Mark and remaining", Hint: "a mark on the filament, and what is left up to it"},
			sheet.Option{Word: "fed", Label: "Fed length", Hint: "what came out, or went in, in one reading"},
		),
		Marks: sheet.Choose(
			sheet.Option{Word: "set", Label: "Always the same", Hint: "each run is marked anew at this distance"},
			sheet.Option{Word: "each", Label: "Read for each run", Hint: "the mark's distance is a reading too"},
		),
		Mark: trial.ReadingInput(),
		At:   sheet.ColumnOf(trial.TestSpeedInput()),
		Want: sheet.LengthsOf(trial.ReadingInput()), first: trial.NewRoundEntry("run", 5),
		target:  &sheet.Group{Noun: "target", Least: 1, Start: 3, Most: sheet.MostRows},
		Targets: sheet.LengthsOf(axis.PositionInput()), Up: sheet.LengthsOf(axis.PositionInput()), Down: sheet.LengthsOf(axis.PositionInput()),
		tool:         axis.NewToolEntry(sheet.Option{Word: "none", Label: "Not known", Hint: "then only the scatter of the runs counts"}),
		markTool:     axis.NewToolEntry(sheet.Option{Word: "same", Label: "The same", Hint: "an error of its zero cancels"}),
		Tol:          unit.Percents.Input("%", 0.001, 50),
		second:       trial.NewRoundEntry("later run", 3),
		MotorEntry:   axis.NewMotorEntry(),
		GearEntry:    axis.NewGearEntry(axis.GearsUnknown, axis.GearsNone, axis.GearsPairs, axis.GearsRatio),
		TouchedEntry: axis.NewTouchedEntry(),
		Counted: sheet.Choose(
			sheet.Option{Word: "mm", Label: "In mm", Hint: "the usual way"},
			sheet.Option{Word: "volume", Label: "In mm³", Hint: "then the filament's diameter scales it too"},
		),
		Line: lineToSend(), TravelLine: lineToSend(), RotaryLine: lineToSend(),
		Entry: sheet.NewTemplate("an entry of a configuration, with {value} where the number goes"),
	}
}

func lineToSend() sheet.Template {
	return sheet.NewTemplate("text to send, with {value} where the number goes")
}

// positionInput reads a place along an axis, which may lie before its zero.
