package unit_test

import (
	"math"

	"striderule/calc/unit"
)

// An entry is an Input of any kind, with its value as a plain float64, so that
// the same laws can be run over all kinds.
type entry struct {
	name        string
	least, most float64
	whole       bool
	symbols     []string
	// read sets a fresh input and returns it with what Set returned.
	read func(text string) (value float64, given bool, err error)
	// write returns what an input that holds v says of itself.
	write func(v float64) string
	plain func(text string) string
}

func entryOf[T unit.Quantity](name string, kind unit.Kind[T], bare string, least, most T) entry {
	fresh := func() *unit.Input[T] {
		in := kind.Input(bare, least, most)
		return &in
	}
	symbols := []string{""}
	for _, u := range kind.Units {
		symbols = append(append(symbols, u.Symbol), u.Also...)
	}
	return entry{
		name: name, least: float64(least), most: float64(most), whole: kind.Whole, symbols: symbols,
		read: func(text string) (float64, bool, error) {
			in := fresh()
			err := in.Entry().Set(text)
			return float64(in.Value()), in.Given, err
		},
		write: func(v float64) string {
			in := fresh()
			in.Number, in.Given = float64(T(v)), true
			return in.Entry().String()
		},
		plain: func(text string) string { return fresh().Entry().Plain(text) },
	}
}

// entries has every kind of the package at least once; lengths also over all
// that a float64 can be.
func entries() []entry {
	return []entry{
		entryOf("length", unit.Lengths, "mm", 0.001, 100_000),
		entryOf("length in inches", unit.Lengths, "in", 0.001, 100_000),
		entryOf("any length", unit.Lengths, "mm", -math.MaxFloat64, math.MaxFloat64),
		entryOf("angle", unit.Angles, "°", -360_000, 360_000),
		entryOf("step angle", unit.StepAngles, "°", 0.001, 90),
		entryOf("speed", unit.Speeds, "mm/s", 0.0001, 10_000),
		entryOf("speed in mm/min", unit.Speeds, "mm/min", 0.0001, 10_000),
		entryOf("turning speed", unit.AngularSpeeds, "°/s", 0.001, 360_000),
		entryOf("ratio", unit.Ratios, "", 0.0001, 10_000),
		entryOf("percentage", unit.Percents, "%", 0.001, 100),
		entryOf("steps per mm", unit.StepsPerLengths, "steps/mm", 0.001, 1e6),
		entryOf("steps per degree", unit.StepsPerAngles, "steps/°", 0.001, 1e6),
		entryOf("travel per turn", unit.LengthsPerTurn, "mm/rev", 0.0001, 10_000),
		entryOf("angle per turn", unit.AnglesPerTurn, "°/rev", 0.0001, 10_000),
		entryOf("teeth", unit.Teeth, "", 1, 2000),
		entryOf("starts", unit.Starts, "", 1, 100),
		entryOf("module", unit.Modules, "mm", 0.05, 50),
		entryOf("threads per inch", unit.Threads, "tpi", 0.1, 500),
		entryOf("resistance", unit.Resistances, "Ω", 0.001, 1000),
		entryOf("microsteps", unit.Microsteps, "", 1, 4096),
	}
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
