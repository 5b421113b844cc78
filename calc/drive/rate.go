package drive

import (
	"math"

	"striderule/calc/unit"
)

// PulseRate returns the pulses per second that a speed (mm/s or °/s) takes at
// a setting in steps per mm or per degree: f = v·S.
func PulseRate(speed, steps float64) unit.PulseRate { return unit.PulseRate(speed * steps) }

// TopSpeed returns the speed, mm/s or °/s, at which a limit on pulses is
// reached: v = f/S. steps is above 0.
func TopSpeed(limit unit.PulseRate, steps float64) float64 { return float64(limit) / steps }

// IncrementalTorque returns the part of the holding torque with which a motor
// resists one microstep of displacement: sin(90°/m). It is the torque behind
// one small step, not holding torque that is lost. Source: sinusoidal torque
// against displacement, a full step being 90 electrical degrees.
func IncrementalTorque(microsteps unit.Count) float64 {
	return math.Sin(math.Pi / 2 / float64(microsteps))
}

// A Corner is where the current in a motor's phases can no longer follow.
type Corner struct {
	PerFullStep unit.Duration // s that the current takes to swing over
	FullSteps   float64       // full steps per second
	Turns       float64       // motor revolutions per second
}

// A Winding is a phase of a motor as it is wired.
type Winding struct {
	Inductance unit.Inductance
	Resistance unit.Resistance // 0 leaves it out
}

// Takes returns the voltage that a steady current takes, I·R. A supply must have
// more, or the current never gets there.
func (w Winding) Takes(current unit.Current) unit.Voltage {
	return unit.Voltage(float64(current) * float64(w.Resistance))
}

// CornerOf returns the corner speed: the phase current must swing from −I to +I
// within a full step. In a winding without resistance that takes
// t = 2·L·I/V, so n = V/(2·L·I·N); with its resistance
// t = L/R · ln((V + I·R)/(V − I·R)), which is longer, and n = 1/(t·N). No
// back-EMF: a rule of thumb. Supply, inductance, current (the peak of a phase)
// and full steps are above 0. ok is false where the supply does not drive the
// current, V ≤ I·R. Source: inductor and resistor in series at a constant
// voltage, V = L·di/dt + R·i, from i = −I to i = +I.
func CornerOf(supply unit.Voltage, w Winding, current unit.Current, fullSteps float64) (c Corner, ok bool) {
	takes := w.Takes(current)
	if takes >= supply {
		return Corner{}, false
	}
	const milli = 1000
	t := 2 * float64(w.Inductance) * float64(current) / float64(supply) / milli * longer(float64(takes), float64(supply))
	return Corner{unit.Duration(t), 1 / t, 1 / (t * fullSteps)}, true
}

// longer is how many times longer the resistance makes it: artanh(x)/x for
// x = I·R/V. artanh(x) is half of ln(1 + 2·I·R/(V − I·R)).
func longer(takes, supply float64) float64 {
	if takes < 1e-9*supply {
		return 1 // the next term, x²/3, is lost beside it
	}
	return math.Log1p(2*takes/(supply-takes)) / 2 * supply / takes
}
