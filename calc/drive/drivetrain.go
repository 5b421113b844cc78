package drive

import "errors"

// ErrNoOutput is returned for a drivetrain whose output element is not set.
var ErrNoOutput = errors.New("a drivetrain needs an output element")

// ErrExtreme is returned where each part can be, but the numbers that they give
// together are too large or too small to calculate with.
var ErrExtreme = errors.New("the numbers are too large or too small for a machine")

// A Drivetrain is everything between the controller's pulses and the travel.
type Drivetrain struct {
	Motor  Motor
	Stages Stages
	Output Output
}

// Check returns an error for a machine that cannot be. The other methods are
// meaningful only where it returns nil.
func (d Drivetrain) Check() error {
	if d.Output == nil {
		return ErrNoOutput
	}
	if err := errors.Join(d.Motor.Check(), d.Stages.Check(), d.Output.Check()); err != nil {
		return err
	}
	if !usable(d.PerMotorTurn(), d.PerFullStep(), d.PerMicrostep(), d.Steps()) {
		return ErrExtreme
	}
	return nil
}

func (d Drivetrain) perMotorTurn() exact { return d.Output.perTurn().over(d.Stages.exact()) }

// PerMotorTurn returns R, the travel per motor revolution.
func (d Drivetrain) PerMotorTurn() float64 { return d.perMotorTurn().value() }

// PerFullStep returns R/N, the travel per full step.
func (d Drivetrain) PerFullStep() float64 {
	return d.perMotorTurn().over(whole(d.Motor.FullSteps())).value()
}

// PerMicrostep returns R/(N·m), the travel per microstep.
func (d Drivetrain) PerMicrostep() float64 {
	return d.perMotorTurn().over(whole(d.Motor.Pulses())).value()
}

// Steps returns S, the steps per mm (or per degree).
func (d Drivetrain) Steps() float64 {
	return whole(d.Motor.Pulses()).over(d.perMotorTurn()).value()
}
