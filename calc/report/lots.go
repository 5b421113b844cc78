package report

import (
	"striderule/calc/measure"
	"striderule/calc/simulation"
)

// Lots are a check of the interval by drawing lots, made on request: a view
// steps it, so that the page stays alive.
type Lots struct {
	Value     float64 // the length that was measured
	Budget    measure.Budget
	Commanded float64
	Low, High float64 // the interval of the error that is shown, in %
}

func (Lots) block() {}

// lotDraws is how many draws the page makes.
const lotDraws = 200_000

// Start returns the draws of the error, in %. The seed is fixed: who opens the
// same sheet sees the same lots.
func (l Lots) Start() (*simulation.MonteCarlo, error) {
	return simulation.New(l.Value, l.Budget, func(length float64) float64 {
		return 100 * measure.Error(l.Commanded, length)
	}, lotDraws, 1)
}
