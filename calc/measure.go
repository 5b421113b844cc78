package calc

import "striderule/calc/unit"

var measurePage = Page{
	Slug:     "measure",
	Title:    "Correct from a measurement",
	Question: "I asked for a length and measured another. What should the setting be?",
	About:    "Type the length you asked for and what you measured; get the corrected steps per mm or travel per motor turn, with the line to send and what to do next.",
	New:      func() Sheet { return newMeasure() },
	Example:  "v=1&steps=538.0&asked=80&speed=90&mark=105&rest=28.7,28.9,28.6&angle=1.8&micro=16&gears=pairs&driving=12&driven=54&line=M92%20E%7Bvalue%7D",
	Outputs: concat(
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
		},
	),
}

// A measureSheet is a test move and what it really moved.
type measureSheet struct {
	Axis Choice
	scaleEntry
	Asked    unit.Input[unit.Length]
	AskedDeg unit.Input[unit.Angle]
	Speed    unit.Input[unit.Speed]

	Drive Choice // where the feeder sits
	Path  Choice // what the filament passes in the test
	Read  Choice
	Marks Choice
	Mark  unit.Input[unit.Length]

	run    *Group
	Each   lengthList // mark of each run
	Rest   lengthList
	Fed    lengthList
	Moved  lengthList
	Turned angleList

	motorEntry
	gearEntry
	Line  Text
	Entry Text
	Done  Checks
}

func newMeasure() *measureSheet {
	length := unit.Lengths.Input("mm", 0.01, 3000)
	rest := unit.Lengths.Input("mm", 0, 3000) // all of it may have gone in
	run := &Group{Noun: "run", Least: 1, Start: 3, Most: MostRows}
	lengths := func(model unit.Input[unit.Length]) lengthList {
		return listOf[unit.Input[unit.Length], *unit.Input[unit.Length]](model)
	}
	angle := unit.Angles.Input("°", 0.001, 360_000)
	return &measureSheet{
		Axis: choose(
			Option{"feed", "Feed", "filament through an extruder"},
			Option{"travel", "Travel", "an axis that moves in mm"},
			Option{"rotary", "Rotary", "an axis that turns by degrees"},
		),
		scaleEntry: newScaleEntry(),
		Asked:      length, AskedDeg: angle,
		Speed: unit.Speeds.Input("mm/min", 0.001, 2000),
		Drive: choose(
			Option{"near", "At the hot end", "the filament goes straight from the drive into it"},
			Option{"tube", "Away from it", "a guide (Bowden) tube leads from the drive to the hot end"},
		),
		Path: choose(
			Option{"hot", "Hot", "through the heated hot end"},
			Option{"open", "Open path", "the filament comes out freely, the hot end is out of the way"},
		),
		Read: choose(
			Option{"rest", "Mark and remaining", "a mark on the filament, and what is left up to it"},
			Option{"fed", "Fed length", "what came out, or went in, in one reading"},
		),
		Marks: choose(
			Option{"set", "Always the same", "each run is marked anew at this distance"},
			Option{"each", "Read for each run", "the mark's distance is a reading too"},
		),
		Mark: length,
		run:  run, Each: lengths(length), Rest: lengths(rest), Fed: lengths(length), Moved: lengths(length),
		Turned:     listOf[unit.Input[unit.Angle], *unit.Input[unit.Angle]](angle),
		motorEntry: newMotorEntry(),
		gearEntry:  newGearEntry(gearsUnknown, gearsNone, gearsPairs, gearsRatio),
		Line:       Text{most: 200, about: "text to send, with {value} where the number goes"},
		Entry:      Text{most: 200, about: "an entry of a configuration, with {value} where the number goes"},
		Done:       Checks{options: readiness},
	}
}
