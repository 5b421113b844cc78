package drive

import (
	"errors"
	"math"

	"striderule/calc/unit"
)

// ErrMotor is returned for a motor that cannot be.
var ErrMotor = errors.New("a motor needs a step angle above 0° and at least one microstep")

// A Motor is a stepper motor as its driver runs it.
type Motor struct {
	StepAngle  unit.Angle // of a full step
	Microsteps unit.Count // per full step
}

// Check returns ErrMotor if the motor cannot be.
func (m Motor) Check() error {
	if !usable(float64(m.StepAngle), m.FullSteps()) || m.Microsteps < 1 {
		return ErrMotor
	}
	return nil
}

// FullSteps returns N, the full steps per revolution. It is whole for every
// step angle that divides the circle, as those of real motors do.
func (m Motor) FullSteps() float64 {
	n := unit.Turn / float64(m.StepAngle)
	if w := math.Round(n); math.Abs(n-w) <= 1e-9*n {
		return w // 51.42857143° is typed where a seventh of the circle is meant
	}
	return n
}

// Pulses returns N·m, the microsteps per revolution.
func (m Motor) Pulses() float64 { return m.FullSteps() * float64(m.Microsteps) }
