package calc

import (
	"striderule/calc/lists"
	"striderule/calc/unit"
)

var measurePage = Page{
	Slug:     "measure",
	Menu:     "Measure",
	Title:    "Correct from a measurement",
	Question: "I asked for a length and measured another. What should the setting be?",
	About:    "Type the length you asked for and what you measured; get the corrected steps per mm or travel per motor turn, with the line to send and what to do next.",
	New:      func() Sheet { return newMeasure() },
	Example:  "v=1&steps=538.0&asked=80&speed=90&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05&angle=1.8&micro=16&gears=pairs&driving=12&driven=54&line=M92%20E%7Bvalue%7D",
	Outputs: lists.Concat(
		settingOutputs("", ", new"),
		settingOutputs("was-", ", before"),
		[]Output{
			{"error", "Error: measured over commanded, less one", "%"},
			{"mean", "Mean of the measured lengths", "mm or °"},
			{"spread", "Spread of the runs (standard deviation)", "mm or °"},
			{"correction", "Correction: commanded over measured", "1"},
			{"moved", "Length that a run moved", "mm or °"},
			{"off", "Error of a run", "%"},
			{"diameter", "Effective diameter of the roller that the new setting implies", "mm"},
			{"expect", "Expected reading after the change", "mm or °"},
			{"feed", "Feed speed", "mm/s"},
			{"word", "Feed speed as the F word of a move", "mm/min"},
			{"within", "Probability that the error is within the tolerance", "%"},
			{"above", "Probability that it moves too much, beyond the tolerance", "%"},
			{"below", "Probability that it moves too little, beyond the tolerance", "%"},
			{"part", "Standard uncertainty of the error from one cause", "%"},
			{"combined", "Combined standard uncertainty of the error", "%"},
			{"dof", "Effective degrees of freedom", "1"},
			{"k", "Coverage factor of 95 %", "1"},
			{"low", "Lower end of the interval that the next reading should fall in", "mm or °"},
			{"high", "Upper end of it", "mm or °"},
			{"then", "Error after the change", "%"},
			{"slope", "Error gained with each mm/s of feed speed", "%"},
			{"holds", "Speed up to which the error stays within the tolerance", "mm/s"},
			{"speedmean", "Mean error at one speed", "%"},
			{"offset", "Fixed offset of a travel axis", "mm"},
			{"reversal", "Lost on reversal, the largest: the reversal value", "mm"},
			{"lost", "Lost on reversal, mean: positions going up less those coming down", "mm"},
		},
		tunedOutputs, pulseOutputs,
	),
	Tasks: []Task{
		{"I fitted another feeder", "Make a short test, type what you measured, and get the new setting.", ""},
		{"I measured, and an axis is off", "Commanded and measured length in, the corrected setting out.", "v=1&axis=travel"},
	},
}

// A measureSheet is a test move and what it really moved.
type measureSheet struct {
	Axis Choice
	scaleEntry
	Drive Choice // where the feeder sits
	trialEntry
	Asked    unit.Input[unit.Length]
	AskedDeg unit.Input[unit.Angle]
	Speed    unit.Input[unit.Speed]
	Done     Checks

	Read    Choice
	Marks   Choice
	Mark    unit.Input[unit.Length]
	At      Column[unit.Speed]
	Want    lengthList
	first   roundEntry
	target  *Group
	Targets lengthList
	Up      lengthList
	Down    lengthList

	tool     toolEntry
	markTool toolEntry
	Tol      unit.Input[unit.Percent]

	second roundEntry // after the change

	motorEntry
	gearEntry
	touchedEntry
	Counted    Choice
	Line       Template // for a feed axis
	TravelLine Template
	RotaryLine Template
	Entry      Template
}

func newMeasure() *measureSheet {
	return &measureSheet{
		Axis: choose(
			axisFeed, axisTravel,
			Option{"rotary", "Rotary", "an axis that turns by degrees"},
		),
		scaleEntry: newScaleEntry(),
		Drive: choose(
			Option{"near", "At the hot end", "the filament goes straight from the drive into it"},
			Option{"tube", "Away from it", "a guide (Bowden) tube leads from the drive to the hot end"},
		),
		trialEntry: newTrialEntry(),
		Asked:      readingInput(), AskedDeg: unit.Angles.Input("°", 0.001, 360_000),
		Speed: testSpeedInput(),
		Done:  newChecks(readiness),
		Read: choose(
			Option{"rest", "Mark and remaining", "a mark on the filament, and what is left up to it"},
			Option{"fed", "Fed length", "what came out, or went in, in one reading"},
		),
		Marks: choose(
			Option{"set", "Always the same", "each run is marked anew at this distance"},
			Option{"each", "Read for each run", "the mark's distance is a reading too"},
		),
		Mark: readingInput(),
		At:   columnOf(testSpeedInput()),
		Want: lengthsOf(readingInput()), first: newRoundEntry("run", 5),
		target:  &Group{Noun: "target", Least: 1, Start: 3, Most: MostRows},
		Targets: lengthsOf(positionInput()), Up: lengthsOf(positionInput()), Down: lengthsOf(positionInput()),
		tool:         newToolEntry(Option{"none", "Not known", "then only the scatter of the runs counts"}),
		markTool:     newToolEntry(Option{"same", "The same", "an error of its zero cancels"}),
		Tol:          unit.Percents.Input("%", 0.001, 50),
		second:       newRoundEntry("later run", 3),
		motorEntry:   newMotorEntry(),
		gearEntry:    newGearEntry(gearsUnknown, gearsNone, gearsPairs, gearsRatio),
		touchedEntry: newTouchedEntry(),
		Counted: choose(
			Option{"mm", "In mm", "the usual way"},
			Option{"volume", "In mm³", "then the filament's diameter scales it too"},
		),
		Line: lineToSend(), TravelLine: lineToSend(), RotaryLine: lineToSend(),
		Entry: newTemplate("an entry of a configuration, with {value} where the number goes"),
	}
}

func lineToSend() Template {
	return newTemplate("text to send, with {value} where the number goes")
}

// positionInput reads a place along an axis, which may lie before its zero.
