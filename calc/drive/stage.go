package drive

import (
	"errors"

	"striderule/calc/unit"
)

// ErrStage is returned for a gear stage without teeth.
var ErrStage = errors.New("a gear stage needs at least one tooth on either side")

// A Stage is one pair of gears or pulleys. For a worm, Driving is its number
// of starts and Driven the teeth of its wheel.
type Stage struct {
	Driving unit.Count // teeth on the motor side
	Driven  unit.Count // teeth on the driven side
}

// Stages are in order from the motor; none means that the motor drives the
// output directly.
type Stages []Stage

// Check returns ErrStage if a stage cannot be.
func (s Stages) Check() error {
	for _, st := range s {
		if st.Driving < 1 || st.Driven < 1 {
			return ErrStage
		}
	}
	return nil
}

// Reduction returns G, the motor turns for one output turn: the product of
// driven over driving teeth.
func (s Stages) Reduction() float64 { return s.exact().value() }

func (s Stages) exact() exact {
	g := whole(1)
	for _, st := range s {
		g = g.times(exact{float64(st.Driven), float64(st.Driving), 0})
	}
	return g
}
