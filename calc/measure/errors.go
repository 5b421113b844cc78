package measure

import (
	"errors"
	"math"
)

// What cannot be answered, and why.
var (
	ErrNotFinite     = errors.New("not a number that can be worked with")
	ErrNoReading     = errors.New("there is no reading")
	ErrTooFew        = errors.New("there are too few readings for this")
	ErrUnpaired      = errors.New("each run needs its mark and its remaining length")
	ErrNothingMoved  = errors.New("what remains is not less than the mark: nothing moved")
	ErrLength        = errors.New("a length must be above 0")
	ErrInstrument    = errors.New("resolution, limits and shares of an instrument are 0 or more, and a certificate has its k")
	ErrTolerance     = errors.New("a tolerance must be above 0")
	ErrLimits        = errors.New("the upper limit must be above the lower one")
	ErrUncertainty   = errors.New("an uncertainty is 0 or more, with degrees of freedom above 0")
	ErrDof           = errors.New("degrees of freedom must be above 0")
	ErrProbability   = errors.New("a probability lies between 0 and 1")
	ErrRange         = errors.New("the result is beyond what a number can hold")
	ErrNoSpread      = errors.New("all readings are equal")
	ErrOneLength     = errors.New("all at one place: there is no line through it")
	ErrLevel         = errors.New("the line is level: no value of x gives this y")
	ErrOneDirection  = errors.New("each target needs readings from both directions")
	ErrNothingToDraw = errors.New("there is nothing uncertain to draw, or no draws")
)

// A Warning is a doubt about a result, and says what would remove it.
type Warning string

// The doubts.
const (
	WarnOneRun       Warning = "One run cannot show how much the readings scatter. Mark anew and make at least three."
	WarnTwoRuns      Warning = "Two runs show the scatter only roughly, which makes the interval wide. One more run cuts it to about a third."
	WarnAllEqual     Warning = "All readings are equal, so the scatter is hidden below the step of the instrument. A finer one would show it."
	WarnNothingKnown Warning = "Nothing is known of how good these readings are. Say what they were read with, and make at least three runs."
	WarnOverRange    Warning = "A reading is longer than this instrument usually reaches. Take a longer one: readings in two parts add their errors."
)

// biggest bounds what is worked with, so that squares of sums stay finite.
const biggest = 1e100

// finite reports whether all values can be worked with.
func finite(values ...float64) bool {
	for _, v := range values {
		if !(math.Abs(v) <= biggest) {
			return false
		}
	}
	return true
}
