package trial

import (
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// A TrialEntry asks what sort of test it is.
type TrialEntry struct {
	Path  sheet.Choice // what the filament passes
	Trial sheet.Choice // one feed speed, or several
	Trip  sheet.Choice // one length or angle, several, or positions
}

// NewTrialEntry is a test of the simplest sort. trips are LengthTests or MoveTests.
func NewTrialEntry(trips []sheet.Option) TrialEntry {
	return TrialEntry{
		Path:  sheet.Choose(hotTest, coldTest),
		Trial: sheet.Choose(oneSpeed, severalSpeeds),
		Trip:  sheet.Choose(trips...),
	}
}

// TestSpeedInput reads a feed speed as the F value of a move has it.
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

// Default acceptable errors: 0.5 % of plastic is not seen, 0.2 % of 100 mm of
// travel is what a caliper shows at once.
const (
	FeedTolerance   = 0.005
	TravelTolerance = 0.002
)

// Feed speeds, in mm/s, above which a test is more likely to measure slip than
// steps/mm. At 3 mm/s a filament of 1.75 mm asks the hot end to melt 7 mm³/s.
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

// Care is the caution of whoever reads no other, by the word of the axis.
func (e *TrialEntry) Care(axis string) string {
	switch {
	case axis == "rotary":
		return careRotary
	case axis != Feed.Word:
		return careLinear
	case e.Path.Word == coldTest.Word:
		return careCold
	}
	return CareHot
}
