package trial

import (
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// The sorts of axes that are tested in mm.
var (
	Feed   = sheet.Option{Word: "feed", Label: "Feed", Hint: "filament through an extruder"}
	Travel = sheet.Option{Word: "travel", Label: "Travel", Hint: "an axis that moves in mm"}
)

// A TrialEntry asks what sort of test it is.
type TrialEntry struct {
	Path  sheet.Choice // what the filament passes
	Trial sheet.Choice // one feed speed, or several
	Trip  sheet.Choice // one travel length, several, or positions
}

// NewTrialEntry is a test of the simplest sort.
func NewTrialEntry() TrialEntry {
	return TrialEntry{
		Path: sheet.Choose(
			sheet.Option{Word: "hot", Label: "Hot", Hint: "through the heated hot end"},
			sheet.Option{Word: "open", Label: "Open path", Hint: "the filament comes out freely, the hot end is out of the way"},
		),
		Trial: sheet.Choose(
			sheet.Option{Word: "one", Label: "One speed", Hint: "all runs at the same slow speed"},
			sheet.Option{Word: "speeds", Label: "Several speeds", Hint: "to tell slip from scale: repeats at each of them"},
		),
		Trip: sheet.Choose(
			sheet.Option{Word: "one", Label: "One length", Hint: "the same move each time"},
			sheet.Option{Word: "lengths", Label: "Several lengths", Hint: "to tell the scale from a fixed offset: repeats at each of them"},
			sheet.Option{Word: "sides", Label: "From both sides", Hint: "positions approached going up and coming down, for what is lost on reversal"},
		),
	}
}

// TestSpeedInput reads a feed speed as the F word of a move has it.
func TestSpeedInput() unit.Input[unit.Speed] { return unit.Speeds.Input("mm/min", 0.001, 2000) }

// A Method is what sort of test the readings are.
type Method int

const (
	OneLength Method = iota
	SeveralSpeeds
	SeveralLengths
	BothSides
)

// Method is the sort of the test.
func (e *TrialEntry) Method() Method {
	switch {
	case e.Trial.Word == "speeds":
		return SeveralSpeeds
	case e.Trip.Word == "lengths":
		return SeveralLengths
	case e.Trip.Word == "sides":
		return BothSides
	}
	return OneLength
}

// Default tolerances on the error: 0.5 % of plastic is not seen, 0.2 % of 100 mm
// of travel is what a caliper shows at once.
const (
	FeedTolerance   = 0.005
	TravelTolerance = 0.002
)

// Feed speeds, in mm/s, above which a test is more likely to measure slip than
// scale. At 3 mm/s a filament of 1.75 mm asks the hot end to melt 7 mm³/s.
const (
	fastHot  unit.Speed = 3
	fastOpen unit.Speed = 10
)

// TooFast is the feed speed above which a test is doubted.
func (e *TrialEntry) TooFast() unit.Speed {
	if e.Path.Word == "hot" {
		return fastHot
	}
	return fastOpen
}

// Readiness is what to see to before a reading is worth anything.
var Readiness = []sheet.Option{
	{Word: "filament", Label: "Same filament", Hint: "the one in use, and the roller's tension as in use"},
	{Word: "path", Label: "Straight path", Hint: "no drag: spool free, no tight bend on the way in"},
	{Word: "clean", Label: "Roller clean", Hint: "its teeth are free of ground plastic"},
	{Word: "slack", Label: "Slack taken up", Hint: "a short feed in the same direction before the mark is made"},
	{Word: "flow", Label: "Flow at 100 %", Hint: "an override would scale the test moves too"},
	{Word: "volume", Label: "Feed counted in mm", Hint: "not in mm³: that would scale the test moves by the filament's area"},
	{Word: "relative", Label: "Moves relative", Hint: "or the counter set to zero before each run; else the second run does not move"},
	{Word: "long", Label: "Long feeds let through", Hint: "a controller that refuses long single feeds gets several short ones"},
	{Word: "mark", Label: "Mark fine", Hint: "thin, and read at right angles, with the filament straight along the rule"},
	{Word: "driver", Label: "Microsteps as the driver is set", Hint: "by jumpers or by software; what it smooths by itself does not count"},
	{Word: "feeder", Label: "Right feeder selected", Hint: "where there are several"},
	{Word: "guard", Label: "Cold-feed guard", Hint: "lifted only for an open-path test, and noted down to be put back"},
}
