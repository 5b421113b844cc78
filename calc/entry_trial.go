package calc

import "striderule/calc/unit"

// The sorts of axes that are tested in mm.
var (
	axisFeed   = Option{"feed", "Feed", "filament through an extruder"}
	axisTravel = Option{"travel", "Travel", "an axis that moves in mm"}
)

// A trialEntry asks what sort of test it is.
type trialEntry struct {
	Path  Choice // what the filament passes
	Trial Choice // one feed speed, or several
	Trip  Choice // one travel length, several, or positions
}

func newTrialEntry() trialEntry {
	return trialEntry{
		Path: choose(
			Option{"hot", "Hot", "through the heated hot end"},
			Option{"open", "Open path", "the filament comes out freely, the hot end is out of the way"},
		),
		Trial: choose(
			Option{"one", "One speed", "all runs at the same slow speed"},
			Option{"speeds", "Several speeds", "to tell slip from scale: repeats at each of them"},
		),
		Trip: choose(
			Option{"one", "One length", "the same move each time"},
			Option{"lengths", "Several lengths", "to tell the scale from a fixed offset: repeats at each of them"},
			Option{"sides", "From both sides", "positions approached going up and coming down, for what is lost on reversal"},
		),
	}
}

// testSpeedInput reads a feed speed as the F word of a move has it.
func testSpeedInput() unit.Input[unit.Speed] { return unit.Speeds.Input("mm/min", 0.001, 2000) }

// A method is what sort of test the readings are.
type method int

const (
	oneLength method = iota
	severalSpeeds
	severalLengths
	bothSides
)

func (e *trialEntry) method() method {
	switch {
	case e.Trial.Word == "speeds":
		return severalSpeeds
	case e.Trip.Word == "lengths":
		return severalLengths
	case e.Trip.Word == "sides":
		return bothSides
	}
	return oneLength
}
