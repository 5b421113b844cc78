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

// CornerOf returns the ideal corner speed: the phase current must swing from
// −I to +I within a full step, t = 2·L·I/V, so n = V/(2·L·I·N). No winding
// resistance, no back-EMF: a rule of thumb. Everything is above 0; current is
// the peak of a phase, inductance of a phase as it is wired. Source: ideal
// inductor, V = L·di/dt.
func CornerOf(supply unit.Voltage, inductance unit.Inductance, current unit.Current, fullSteps float64) Corner {
	const milli = 1000
	t := 2 * float64(inductance) * float64(current) / float64(supply) / milli
	return Corner{unit.Duration(t), 1 / t, 1 / (t * fullSteps)}
}
