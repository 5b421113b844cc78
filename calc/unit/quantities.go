package unit

// Exact factors. Source: ISO 80000-3; the inch is 25.4 mm by definition.
const (
	Inch    = 25.4 // mm
	Turn    = 360  // degrees
	Minute  = 60   // seconds
	Million = 1e6
)

type (
	// A Length is in millimetres.
	Length float64
	// An Angle is in degrees.
	Angle float64
	// A Speed is in millimetres per second.
	Speed float64
	// A Ratio is a pure number.
	Ratio float64
	// A Percent is a hundredth.
	Percent float64
	// StepsPerLength is microsteps per millimetre.
	StepsPerLength float64
	// StepsPerAngle is microsteps per degree.
	StepsPerAngle float64
	// LengthPerTurn is millimetres per revolution.
	LengthPerTurn float64
	// AnglePerTurn is degrees per revolution.
	AnglePerTurn float64
	// An AngularSpeed is in degrees per second.
	AngularSpeed float64
	// An Acceleration is in millimetres per second squared.
	Acceleration float64
	// A Duration is in seconds.
	Duration float64
	// ThreadsPerInch are the threads of a screw in 25.4 mm.
	ThreadsPerInch float64
	// A PulseRate is in pulses per second.
	PulseRate float64
	// A VolumeRate is in cubic millimetres per second.
	VolumeRate float64
	// A Mass is in grams.
	Mass float64
	// A Density is in grams per cubic centimetre.
	Density float64
	// A Voltage is in volts.
	Voltage float64
	// A Current is in amperes.
	Current float64
	// An Inductance is in millihenries.
	Inductance float64
	// A Resistance is in ohms.
	Resistance float64
	// A Torque is in newton metres.
	Torque float64
	// A Count is a number of whole things.
	Count int
)
