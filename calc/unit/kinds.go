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
	// A Torque is in newton metres.
	Torque float64
	// A Count is a number of whole things.
	Count int
)

// The quantities that the suite reads.
var (
	Lengths = Kind[Length]{
		Noun: "a length", Example: "80 mm",
		Units: lengthUnits,
	}
	Angles = Kind[Angle]{
		Noun: "an angle", Example: "90°",
		Units: []Unit{
			{Symbol: "°", Also: []string{"deg", "degree", "degrees"}},
			{Symbol: "rev", Also: []string{"turn", "turns", "revs", "r"}, Times: Turn},
		},
	}
	// StepAngles also reads full steps per revolution: 200 steps are 1.8°.
	StepAngles = Kind[Angle]{
		Noun: "a step angle", Example: "1.8° (or 200 steps per turn)",
		Units: []Unit{
			{Symbol: "°", Also: []string{"deg", "degree", "degrees", "°/step", "deg/step"}},
			{Symbol: "steps", Also: []string{"steps/rev", "steps/turn", "fullsteps", "step", "steps/revolution"}, Times: Turn, Inverse: true},
		},
	}
	Speeds = Kind[Speed]{
		Noun: "a speed", Example: "90 mm/min or 1.5 mm/s",
		Units: []Unit{
			{Symbol: "mm/s", Also: []string{"mm/sec", "mms"}},
			{Symbol: "mm/min", Also: []string{"mm/m", "mm/minute"}, Over: Minute},
			{Symbol: "m/min", Times: 1000, Over: Minute},
			{Symbol: "in/s", Also: []string{"in/sec", `"/s`}, Times: Inch},
			{Symbol: "in/min", Also: []string{"ipm", `"/min`}, Times: Inch, Over: Minute},
		},
	}
	Ratios = Kind[Ratio]{
		Noun: "a ratio", Example: "4.5 or 54:12",
		Units: []Unit{{Symbol: "", Also: []string{"x", "×"}}},
		Colon: true,
	}
	Percents = Kind[Percent]{
		Noun: "a percentage", Example: "0.5 or 0.5 %",
		Units: []Unit{
			{Symbol: "%", Also: []string{"percent"}},
			{Symbol: "‰", Over: 10},
		},
	}
	StepsPerLengths = Kind[StepsPerLength]{
		Noun: "a number of steps per millimetre", Example: "538 or 538 steps/mm",
		Units: []Unit{
			{Symbol: "steps/mm", Also: []string{"/mm", "step/mm", "microsteps/mm", "pulses/mm", "stepspermm"}},
			{Symbol: "steps/in", Also: []string{"/in", "/inch", "step/in", "steps/inch", "microsteps/in", "pulses/in", `steps/"`}, Over: Inch},
			{Symbol: "steps/cm", Also: []string{"/cm"}, Over: 10},
		},
	}
	StepsPerAngles = Kind[StepsPerAngle]{
		Noun: "a number of steps per degree", Example: "80 or 80 steps/°",
		Units: []Unit{
			{Symbol: "steps/°", Also: []string{"/°", "/deg", "steps/deg", "steps/degree", "microsteps/°", "microsteps/deg"}},
			{Symbol: "steps/rev", Also: []string{"/rev", "steps/turn", "microsteps/rev"}, Over: Turn},
		},
	}
	LengthsPerTurn = Kind[LengthPerTurn]{
		Noun: "a travel per turn", Example: "8 or 8 mm/rev",
		Units: lengthsPer("/rev", "", "/turn", "/r", "/revolution"),
	}
	AnglesPerTurn = Kind[AnglePerTurn]{
		Noun: "an angle per turn", Example: "4 or 4°/rev",
		Units: []Unit{{Symbol: "°/rev", Also: []string{"°", "deg", "deg/rev", "°/turn", "deg/turn", "degrees"}}},
	}
	AngularSpeeds = Kind[AngularSpeed]{
		Noun: "a turning speed", Example: "90°/s or 15 rev/min",
		Units: []Unit{
			{Symbol: "°/s", Also: []string{"deg/s", "degrees/s", "°/sec", "deg/sec"}},
			{Symbol: "°/min", Also: []string{"deg/min", "degrees/min"}, Over: Minute},
			{Symbol: "rev/s", Also: []string{"turns/s", "rps"}, Times: Turn},
			{Symbol: "rev/min", Also: []string{"turns/min", "rpm"}, Times: Turn, Over: Minute},
		},
	}
	Accelerations = Kind[Acceleration]{
		Noun: "an acceleration", Example: "1000 mm/s²",
		Units: []Unit{
			{Symbol: "mm/s²", Also: []string{"mm/s^2", "mm/s2", "mm/s/s"}},
			{Symbol: "m/s²", Also: []string{"m/s^2", "m/s2", "m/s/s"}, Times: 1000},
		},
	}
	Durations = Kind[Duration]{
		Noun: "a time", Example: "20 s or 2 min",
		Units: []Unit{
			{Symbol: "s", Also: []string{"sec", "second", "seconds"}},
			{Symbol: "min", Also: []string{"minute", "minutes"}, Times: Minute},
		},
	}
	PulseRates = Kind[PulseRate]{
		Noun: "a pulse rate", Example: "40 kHz or 40000 pulses/s",
		Units: []Unit{
			{Symbol: "pulses/s", Also: []string{"hz", "/s", "steps/s", "pulse/s", "microsteps/s"}},
			{Symbol: "kHz", Also: []string{"kpulses/s", "k"}, Times: 1000},
			{Symbol: "MHz", Times: Million},
		},
	}
	VolumeRates = Kind[VolumeRate]{
		Noun: "a melt rate", Example: "8 mm³/s",
		Units: []Unit{{Symbol: "mm³/s", Also: []string{"mm3/s", "mm^3/s"}}},
	}
	// FlowFactors are pure numbers too; percent is what many programs show.
	FlowFactors = Kind[Ratio]{
		Noun: "a flow factor", Example: "0.97 or 97 %",
		Units: []Unit{{Symbol: "", Also: []string{"x", "×"}}, {Symbol: "%", Also: []string{"percent"}, Over: 100}},
	}
	Masses = Kind[Mass]{
		Noun: "a mass", Example: "12.4 g",
		Units: []Unit{
			{Symbol: "g", Also: []string{"gram", "grams", "gramme", "grammes"}},
			{Symbol: "kg", Times: 1000},
			{Symbol: "mg", Over: 1000},
		},
	}
	Densities = Kind[Density]{
		Noun: "a density", Example: "1.24 g/cm³",
		Units: []Unit{
			{Symbol: "g/cm³", Also: []string{"g/cm3", "g/cm^3", "g/cc", "g/ml"}},
			{Symbol: "kg/m³", Also: []string{"kg/m3", "kg/m^3"}, Over: 1000},
		},
	}
	Voltages = Kind[Voltage]{
		Noun: "a voltage", Example: "24 V",
		Units: []Unit{{Symbol: "V", Also: []string{"volt", "volts"}}},
	}
	Currents = Kind[Current]{
		Noun: "a current", Example: "1.5 A",
		Units: []Unit{{Symbol: "A", Also: []string{"amp", "amps", "ampere", "amperes"}}, {Symbol: "mA", Over: 1000}},
	}
	Inductances = Kind[Inductance]{
		Noun: "an inductance", Example: "3.2 mH",
		Units: []Unit{{Symbol: "mH"}, {Symbol: "H", Times: 1000}, {Symbol: "µH", Also: []string{"uh"}, Over: 1000}},
	}
	Torques = Kind[Torque]{
		Noun: "a torque", Example: "0.4 N·m or 40 N·cm",
		Units: []Unit{
			{Symbol: "N·m", Also: []string{"nm", "n*m", "n.m"}},
			{Symbol: "N·cm", Also: []string{"ncm", "n*cm", "n.cm"}, Over: 100},
			{Symbol: "mN·m", Also: []string{"mnm", "mn*m"}, Over: 1000},
		},
	}
	Teeth = Kind[Count]{
		Noun: "a number of teeth", Example: "20", Whole: true,
		Units: []Unit{{Symbol: "", Also: []string{"teeth", "tooth", "t"}}},
	}
	Lines = Kind[Count]{
		Noun: "a number of lines", Example: "2", Whole: true,
		Units: []Unit{{Symbol: "", Also: []string{"lines", "line", "walls", "wall"}}},
	}
	Starts = Kind[Count]{
		Noun: "a number of starts", Example: "4", Whole: true,
		Units: []Unit{{Symbol: "", Also: []string{"start", "starts"}}},
	}
	// Microsteps also reads what is printed on drivers: 1/16 is 16.
	Microsteps = Kind[Count]{
		Noun: "a number of microsteps", Example: "16 or 1/16", Whole: true, Reciprocal: true,
		Units: []Unit{{Symbol: "", Also: []string{"microsteps", "microstep", "x", "step", "steps"}}},
	}
)

var lengthUnits = []Unit{
	{Symbol: "mm", Also: []string{"millimetre", "millimetres", "millimeter", "millimeters"}},
	{Symbol: "in", Also: []string{"inch", "inches", `"`, "''"}, Times: Inch},
	{Symbol: "cm", Times: 10},
	{Symbol: "m", Times: 1000},
	{Symbol: "µm", Also: []string{"um", "micron", "microns"}, Over: 1000},
}

// lengthsPer returns the units of length with a suffix each: texts are written
// with the first, and all are read.
func lengthsPer(suffixes ...string) []Unit {
	units := append([]Unit(nil), lengthUnits...)
	for i := range units {
		u := &units[i]
		bare := append([]string{u.Symbol}, u.Also...)
		u.Symbol, u.Also = u.Symbol+suffixes[0], nil
		for _, name := range bare {
			for _, suffix := range suffixes {
				u.Also = append(u.Also, name+suffix)
			}
		}
	}
	return units
}
