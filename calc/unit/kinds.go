package unit

// The quantities that the suite reads.
var (
	Lengths = Kind[Length]{
		Words: &lengthWords,
		Units: lengthUnits,
	}
	Angles = Kind[Angle]{
		Words: &angleWords,
		Units: []Unit{
			{Symbol: "°", Also: []string{"deg", "degree", "degrees"}},
			{Symbol: "rev", Also: []string{"turn", "turns", "revs", "r"}, Times: Turn},
		},
	}
	// StepAngles also reads full steps per revolution: 200 steps are 1.8°.
	StepAngles = Kind[Angle]{
		Words: &stepAngleWords,
		Units: []Unit{
			{Symbol: "°", Also: []string{"deg", "degree", "degrees", "°/step", "deg/step"}},
			{Symbol: "steps", Also: []string{"steps/rev", "steps/turn", "fullsteps", "step", "steps/revolution"}, Times: Turn, Inverse: true},
		},
	}
	Speeds = Kind[Speed]{
		Words: &speedWords, Chosen: true,
		Units: []Unit{
			{Symbol: "mm/s", Also: []string{"mm/sec", "mms"}, Most: 1000, Rather: "mm/min", Asks: readAs},
			{Symbol: "mm/min", Also: []string{"mm/m", "mm/minute"}, Over: Minute, Least: 20, Rather: "mm/s", Asks: readSlow},
			{Symbol: "m/min", Times: 1000, Over: Minute},
			{Symbol: "in/s", Also: []string{"in/sec", `"/s`}, Times: Inch},
			{Symbol: "in/min", Also: []string{"ipm", `"/min`}, Times: Inch, Over: Minute},
		},
	}
	Ratios = Kind[Ratio]{
		Words: &ratioWords,
		Units: []Unit{{Symbol: "", Also: []string{"x", "×"}}},
		Colon: true,
	}
	Percents = Kind[Percent]{
		Words: &percentWords,
		Units: []Unit{
			{Symbol: "%", Also: []string{"percent"}},
			{Symbol: "‰", Over: 10},
		},
	}
	StepsPerLengths = Kind[StepsPerLength]{
		Words: &perLengthWords,
		Units: []Unit{
			{Symbol: "steps/mm", Also: []string{"/mm", "step/mm", "microsteps/mm", "pulses/mm", "stepspermm"}},
			{Symbol: "steps/in", Also: []string{"/in", "/inch", "step/in", "steps/inch", "microsteps/in", "pulses/in", `steps/"`}, Over: Inch},
			{Symbol: "steps/cm", Also: []string{"/cm"}, Over: 10},
		},
	}
	StepsPerAngles = Kind[StepsPerAngle]{
		Words: &perAngleWords,
		Units: []Unit{
			{Symbol: "steps/°", Also: []string{"/°", "/deg", "steps/deg", "steps/degree", "microsteps/°", "microsteps/deg"}},
			{Symbol: "steps/rev", Also: []string{"/rev", "steps/turn", "microsteps/rev"}, Over: Turn},
		},
	}
	LengthsPerTurn = Kind[LengthPerTurn]{
		Words: &lengthByTurnWords,
		Units: lengthsPer("/rev", "", "/turn", "/r", "/revolution"),
	}
	AnglesPerTurn = Kind[AnglePerTurn]{
		Words: &angleByTurnWords,
		Units: []Unit{{Symbol: "°/rev", Also: []string{"°", "deg", "deg/rev", "°/turn", "deg/turn", "degrees"}}},
	}
	AngularSpeeds = Kind[AngularSpeed]{
		Words: &turningWords, Chosen: true,
		Units: []Unit{
			{Symbol: "°/s", Also: []string{"deg/s", "degrees/s", "°/sec", "deg/sec"}},
			{Symbol: "°/min", Also: []string{"deg/min", "degrees/min"}, Over: Minute},
			{Symbol: "rev/s", Also: []string{"turns/s", "rps"}, Times: Turn},
			{Symbol: "rev/min", Also: []string{"turns/min", "rpm"}, Times: Turn, Over: Minute},
		},
	}
	Accelerations = Kind[Acceleration]{
		Words: &accelerationWords,
		Units: []Unit{
			{Symbol: "mm/s²", Also: []string{"mm/s^2", "mm/s2", "mm/s/s"}},
			{Symbol: "m/s²", Also: []string{"m/s^2", "m/s2", "m/s/s"}, Times: 1000},
		},
	}
	Durations = Kind[Duration]{
		Words: &timeWords,
		Units: []Unit{
			{Symbol: "s", Also: []string{"sec", "second", "seconds"}},
			{Symbol: "min", Also: []string{"minute", "minutes"}, Times: Minute},
		},
	}
	PulseRates = Kind[PulseRate]{
		Words: &stepRateWords, Chosen: true,
		Units: []Unit{
			{Symbol: "pulses/s", Also: []string{"hz", "/s", "steps/s", "pulse/s", "microsteps/s"}, Least: 1000, Rather: "kHz", Asks: readAs},
			{Symbol: "kHz", Also: []string{"kpulses/s", "k"}, Times: 1000},
			{Symbol: "MHz", Times: Million},
		},
	}
	VolumeRates = Kind[VolumeRate]{
		Words: &meltWords,
		Units: []Unit{{Symbol: "mm³/s", Also: []string{"mm3/s", "mm^3/s"}}},
	}
	// FlowFactors are pure numbers too; percent is what many programs show.
	FlowFactors = Kind[Ratio]{
		Words: &flowWords,
		Units: []Unit{{Symbol: "", Also: []string{"x", "×"}}, {Symbol: "%", Also: []string{"percent"}, Over: 100}},
	}
	Masses = Kind[Mass]{
		Words: &massWords,
		Units: []Unit{
			{Symbol: "g", Also: []string{"gram", "grams", "gramme", "grammes"}},
			{Symbol: "kg", Times: 1000},
			{Symbol: "mg", Over: 1000},
		},
	}
	Densities = Kind[Density]{
		Words: &densityWords,
		Units: []Unit{
			{Symbol: "g/cm³", Also: []string{"g/cm3", "g/cm^3", "g/cc", "g/ml"}},
			{Symbol: "kg/m³", Also: []string{"kg/m3", "kg/m^3"}, Over: 1000},
		},
	}
	Voltages = Kind[Voltage]{
		Words: &voltageWords,
		Units: []Unit{{Symbol: "V", Also: []string{"volt", "volts"}}},
	}
	Currents = Kind[Current]{
		Words: &currentWords,
		Units: []Unit{{Symbol: "A", Also: []string{"amp", "amps", "ampere", "amperes"}}, {Symbol: "mA", Over: 1000}},
	}
	Inductances = Kind[Inductance]{
		Words: &inductanceWords,
		Units: []Unit{{Symbol: "mH"}, {Symbol: "H", Times: 1000}, {Symbol: "µH", Also: []string{"uh"}, Over: 1000}},
	}
	Resistances = Kind[Resistance]{
		Words: &resistanceWords,
		Units: []Unit{
			{Symbol: "Ω", Also: []string{"ω", "ohm", "ohms"}},
			{Symbol: "mΩ", Also: []string{"mω", "mohm", "mohms", "milliohm", "milliohms"}, Over: 1000},
		},
	}
	Torques = Kind[Torque]{
		Words: &torqueWords,
		Units: []Unit{
			{Symbol: "N·m", Also: []string{"nm", "n*m", "n.m"}},
			{Symbol: "N·cm", Also: []string{"ncm", "n*cm", "n.cm"}, Over: 100},
			{Symbol: "mN·m", Also: []string{"mnm", "mn*m"}, Over: 1000},
		},
	}
	Teeth = Kind[Count]{
		Words: &teethWords, Whole: true,
		Units: []Unit{{Symbol: "", Also: []string{"teeth", "tooth", "t"}}},
	}
	Lines = Kind[Count]{
		Words: &linesWords, Whole: true,
		Units: []Unit{{Symbol: "", Also: []string{"lines", "line", "walls", "wall"}}},
	}
	Starts = Kind[Count]{
		Words: &startsWords, Whole: true,
		Units: []Unit{{Symbol: "", Also: []string{"start", "starts"}}},
	}
	// Modules of gears and racks also read the diametral pitch, teeth to the inch
	// of pitch diameter: 24 DP are 25.4/24 mm.
	Modules = Kind[Length]{
		Words: &moduleWords,
		Units: append([]Unit{
			{Symbol: "mm", Also: lengthUnits[0].Also, Before: []string{"m", "mod", "module"}},
			{Symbol: "DP", Also: []string{"d.p", "diametralpitch"}, Before: []string{"dp", "d.p", "diametralpitch"}, Times: 5 * Inch, Over: 5, Inverse: true},
		}, lengthUnits[1:]...),
	}
	// Threads of a screw, by the inch.
	Threads = Kind[ThreadsPerInch]{
		Words: &threadsWords,
		Units: []Unit{{Symbol: "tpi", Also: []string{
			"t.p.i", "threads/inch", "threads/in", `threads/"`, "thread/inch", "thread/in", "threadsperinch",
		}}},
	}
	// Microsteps also reads what is printed on drivers: 1/16 is 16.
	Microsteps = Kind[Count]{
		Words: &microstepWords, Whole: true, Reciprocal: true,
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
