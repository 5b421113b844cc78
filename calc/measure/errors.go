package measure

import (
	"errors"

	"striderule/calc/distribution"
)

// What cannot be answered, and why.
var (
	ErrNotFinite    = distribution.ErrNotFinite
	ErrNoReading    = errors.New("there is no reading")
	ErrTooFew       = errors.New("there are too few readings for this")
	ErrUnpaired     = errors.New("each run needs its mark and its remaining length")
	ErrNothingMoved = errors.New("what remains is not less than the mark: nothing moved")
	ErrLength       = errors.New("a length must be above 0")
	ErrInstrument   = errors.New("resolution, limits and shares of an instrument are 0 or more, and a certificate has its k")
	ErrTolerance    = errors.New("a tolerance must be above 0")
	ErrLimits       = errors.New("the upper limit must be above the lower one")
	ErrUncertainty  = errors.New("an uncertainty is 0 or more, with degrees of freedom above 0")
	ErrProbability  = distribution.ErrProbability
	ErrRange        = distribution.ErrRange
	ErrNoSpread     = errors.New("all readings are equal")
	ErrOneLength    = errors.New("all at one place: there is no line through it")
	ErrLevel        = errors.New("the line is level: no value of x gives this y")
	ErrOneDirection = errors.New("each target needs readings from both directions")
)

// A Warning is a doubt about a result, by its ID: who shows it has the words for it.
type Warning string

// The doubts.
const (
	WarnOneRun       Warning = "one-run"
	WarnTwoRuns      Warning = "two-runs"
	WarnAllEqual     Warning = "all-equal"
	WarnNothingKnown Warning = "nothing-known"
	WarnWilder       Warning = "wilder"
	WarnOverRange    Warning = "over-range"
)

// finite reports whether all values can be worked with.
func finite(values ...float64) bool { return distribution.Finite(values...) }
