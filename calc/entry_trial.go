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

// Default tolerances on the error: 0.5 % of plastic is not seen, 0.2 % of 100 mm
// of travel is what a caliper shows at once.
const (
	feedTolerance   = 0.005
	travelTolerance = 0.002
)

// Feed speeds, in mm/s, above which a test is more likely to measure slip than
// scale. At 3 mm/s a filament of 1.75 mm asks the hot end to melt 7 mm³/s.
const (
	fastHot  unit.Speed = 3
	fastOpen unit.Speed = 10
)

// fastest is the feed speed above which a test is doubted.
func (e *trialEntry) fastest() unit.Speed {
	if e.Path.Word == "hot" {
		return fastHot
	}
	return fastOpen
}

// readiness is what to see to before a reading is worth anything.
var readiness = []Option{
	{"filament", "Same filament", "the one in use, and the roller's tension as in use"},
	{"path", "Straight path", "no drag: spool free, no tight bend on the way in"},
	{"clean", "Roller clean", "its teeth are free of ground plastic"},
	{"slack", "Slack taken up", "a short feed in the same direction before the mark is made"},
	{"flow", "Flow at 100 %", "an override would scale the test moves too"},
	{"volume", "Feed counted in mm", "not in mm³: that would scale the test moves by the filament's area"},
	{"relative", "Moves relative", "or the counter set to zero before each run; else the second run does not move"},
	{"long", "Long feeds let through", "a controller that refuses long single feeds gets several short ones"},
	{"mark", "Mark fine", "thin, and read at right angles, with the filament straight along the rule"},
	{"driver", "Microsteps as the driver is set", "by jumpers or by software; what it smooths by itself does not count"},
	{"feeder", "Right feeder selected", "where there are several"},
	{"guard", "Cold-feed guard", "lifted only for an open-path test, and noted down to be put back"},
}
