package drive

import (
	"errors"

	"striderule/calc/unit"
)

// Parts is any subset of a drivetrain; a zero field is a part that is not
// named. Stages that are empty but not nil are a direct drive.
type Parts struct {
	StepAngle  unit.Angle
	Microsteps unit.Count
	Stages     Stages
	Ratio      float64 // instead of Stages, where only the gear ratio is known
	Output     Output
}

// gears is the gearing that the parts name, if they do.
func (p Parts) gears() (ratio exact, named bool, err error) {
	if p.Stages != nil {
		return p.Stages.exact(), true, p.Stages.Check()
	}
	if p.Ratio != 0 && (!(p.Ratio > 0) || !unit.Finite(p.Ratio)) {
		return whole(1), true, ErrStage
	}
	return whole(p.Ratio), p.Ratio > 0, nil
}

// ErrOneSided is wrapped where a part is named before or after the swap only.
var ErrOneSided = errors.New("the part is given on one side only")

// oneSided wraps ErrOneSided by the part's name, without fmt: the browser does
// without it.
type oneSided string

func (part oneSided) Error() string { return string(part) + ": " + ErrOneSided.Error() }

func (part oneSided) Unwrap() error { return ErrOneSided }

// ErrTravelKind is returned where mm would become degrees.
var ErrTravelKind = errors.New("an axis that moves in mm cannot become one that turns in degrees")

// Factors are what a swap multiplies each number with. A part that did not
// change cancels, so it need not be known.
type Factors struct {
	Steps  float64 // of S, steps per mm
	Turn   float64 // of R, travel per motor revolution
	Output float64 // of P, travel per output turn
	Ratio  float64 // of G, motor turns per output turn
}

// Of returns the factor for a convention's number.
func (f Factors) Of(c Convention) float64 {
	switch c {
	case TravelPerTurn:
		return f.Turn
	case TravelPerOutputTurn:
		return f.Output
	}
	return f.Steps
}

// Rescaled returns the setting after a swap. The correction that a measurement
// put into the old value is carried over.
func (s Setting) Rescaled(f Factors) Setting {
	s.Value *= f.Of(s.Convention)
	return s
}

// Rescale returns what changing the parts was into now does to each number:
// N·m moves S alone, G moves S and R, P moves all three.
// Errors wrap ErrOneSided, ErrTravelKind, ErrMotor, ErrStage, ErrOutput or
// ErrExtreme.
func Rescale(was, now Parts) (Factors, error) {
	pulses, ratio, travel := whole(1), whole(1), whole(1)
	if one, ok := bothGiven(was.StepAngle != 0, now.StepAngle != 0); one {
		return Factors{}, oneSided("angle")
	} else if ok {
		a, b := Motor{was.StepAngle, 1}, Motor{now.StepAngle, 1}
		if err := errors.Join(a.Check(), b.Check()); err != nil {
			return Factors{}, err
		}
		pulses = whole(b.FullSteps()).over(whole(a.FullSteps()))
	}
	if one, ok := bothGiven(was.Microsteps != 0, now.Microsteps != 0); one {
		return Factors{}, oneSided("microsteps")
	} else if ok {
		if was.Microsteps < 1 || now.Microsteps < 1 {
			return Factors{}, ErrMotor
		}
		pulses = pulses.times(exact{float64(now.Microsteps), float64(was.Microsteps), 0})
	}
	wasGears, wasNamed, errWas := was.gears()
	nowGears, nowNamed, errNow := now.gears()
	if err := errors.Join(errWas, errNow); err != nil {
		return Factors{}, err
	}
	if one, ok := bothGiven(wasNamed, nowNamed); one {
		return Factors{}, oneSided("gears")
	} else if ok {
		ratio = nowGears.over(wasGears)
	}
	if one, ok := bothGiven(was.Output != nil, now.Output != nil); one {
		return Factors{}, oneSided("output")
	} else if ok {
		if err := errors.Join(was.Output.Check(), now.Output.Check()); err != nil {
			return Factors{}, err
		}
		if was.Output.Angular() != now.Output.Angular() {
			return Factors{}, ErrTravelKind
		}
		travel = now.Output.perTurn().over(was.Output.perTurn())
	}
	f := Factors{
		Steps:  pulses.times(ratio).over(travel).value(),
		Turn:   travel.over(ratio).value(),
		Output: travel.value(),
		Ratio:  ratio.value(),
	}
	if !usable(f.Steps, f.Turn, f.Output, f.Ratio) {
		return Factors{}, ErrExtreme
	}
	return f, nil
}

func bothGiven(was, now bool) (oneOnly, both bool) { return was != now, was && now }
