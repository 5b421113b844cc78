package drive_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"math/big"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	_ "striderule/calc/calctest/cases"
	"striderule/calc/drive"
	"striderule/calc/unit"
)

// outputs draws every Output there is, with sizes as they are met.
func outputs() map[string]*rapid.Generator[drive.Output] {
	size := rapid.Custom(func(t *rapid.T) unit.Length {
		return unit.Length(rapid.IntRange(1, 100_000).Draw(t, "µm")) / 1000
	})
	count := rapid.Custom(func(t *rapid.T) unit.Count { return unit.Count(rapid.IntRange(1, 200).Draw(t, "count")) })
	screw := func(t *rapid.T) drive.Screw {
		s := drive.Screw{Starts: count.Draw(t, "starts"), LeftHand: rapid.Bool().Draw(t, "left hand")}
		if rapid.Bool().Draw(t, "in inches") {
			s.Threads = unit.ThreadsPerInch(rapid.IntRange(1, 1000).Draw(t, "half threads")) / 2
		} else {
			s.Pitch = size.Draw(t, "pitch")
		}
		return s
	}
	drum := func(t *rapid.T) drive.Drum {
		return drive.Drum{Diameter: size.Draw(t, "drum"), Cable: size.Draw(t, "cable")}
	}
	from := func(draw func(t *rapid.T) drive.Output) *rapid.Generator[drive.Output] { return rapid.Custom(draw) }
	return map[string]*rapid.Generator[drive.Output]{
		"Belt": from(func(t *rapid.T) drive.Output {
			return drive.Belt{Pitch: size.Draw(t, "pitch"), Teeth: count.Draw(t, "teeth")}
		}),
		"Screw": from(func(t *rapid.T) drive.Output {
			return screw(t)
		}),
		"Drum": from(func(t *rapid.T) drive.Output { return drum(t) }),
		"MovingPulley": from(func(t *rapid.T) drive.Output {
			if rapid.Bool().Draw(t, "of a drum") {
				return drive.MovingPulley{Pulled: drum(t)}
			}
			return drive.MovingPulley{Pulled: drive.Belt{Pitch: size.Draw(t, "pitch"), Teeth: count.Draw(t, "teeth")}}
		}),
		"Differential": rapid.Custom(func(t *rapid.T) drive.Output {
			return drive.Differential{First: screw(t), Second: screw(t)}
		}).Filter(func(o drive.Output) bool { return o.Check() == nil }),
		"Rack": from(func(t *rapid.T) drive.Output {
			return drive.Rack{Module: size.Draw(t, "module"), Teeth: count.Draw(t, "teeth")}
		}),
		"Roller": from(func(t *rapid.T) drive.Output { return drive.Roller{Diameter: size.Draw(t, "diameter")} }),
		"Rotary": rapid.Just[drive.Output](drive.Rotary{}),
	}
}

// A new Output must come under the laws: every type with a perTurn method is drawn.
func TestEveryOutputIsUnderTheLaws(t *testing.T) {
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	found := map[string]bool{}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		require.NoError(t, err)
		for _, d := range file.Decls {
			if f, ok := d.(*ast.FuncDecl); ok && f.Name.Name == "perTurn" && f.Recv != nil {
				if id, ok := f.Recv.List[0].Type.(*ast.Ident); ok {
					found[id.Name] = true
				}
			}
		}
	}
	drawn := map[string]bool{}
	for name, g := range outputs() {
		drawn[reflect.TypeOf(g.Example()).Name()] = true
		assert.Equal(t, reflect.TypeOf(g.Example()).Name(), name)
	}
	assert.Equal(t, found, drawn)
}

func eachOutput(t *testing.T, law func(t *rapid.T, d drive.Drivetrain)) {
	for name, output := range outputs() {
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			d := drive.Drivetrain{Motor: motors().Draw(t, "motor"), Stages: stages().Draw(t, "stages"), Output: output.Draw(t, "output")}
			require.NoError(t, d.Check())
			law(t, d)
		}))
	}
}

var stepAngles = []unit.Angle{1.8, 0.9, 0.72, 0.36, 1.2, 3.75, 7.5, 15, 18}

func motors() *rapid.Generator[drive.Motor] {
	return rapid.Custom(func(t *rapid.T) drive.Motor {
		return drive.Motor{
			StepAngle:  rapid.SampledFrom(stepAngles).Draw(t, "step angle"),
			Microsteps: unit.Count(rapid.IntRange(1, 256).Draw(t, "microsteps")),
		}
	})
}

func stages() *rapid.Generator[drive.Stages] {
	return rapid.Custom(func(t *rapid.T) drive.Stages {
		s := drive.Stages{}
		for range rapid.IntRange(0, 3).Draw(t, "stages") {
			s = append(s, drive.Stage{
				Driving: unit.Count(rapid.IntRange(1, 120).Draw(t, "driving")),
				Driven:  unit.Count(rapid.IntRange(1, 120).Draw(t, "driven")),
			})
		}
		return s
	})
}

// ulps is how many floats got lies away from want.
func ulps(got, want float64) float64 {
	return math.Abs(float64(int64(math.Float64bits(got)) - int64(math.Float64bits(want))))
}

func figures(d drive.Drivetrain) []float64 {
	return []float64{d.Steps(), d.PerMotorTurn(), d.PerFullStep(), d.PerMicrostep(), d.Stages.Reduction(), drive.PerTurn(d.Output)}
}

func TestDoublingMicrosteps(t *testing.T) {
	eachOutput(t, func(t *rapid.T, d drive.Drivetrain) {
		fine := d
		fine.Motor.Microsteps *= 2
		require.Equal(t, 2*d.Steps(), fine.Steps()) // a power of two: no rounding
		require.Equal(t, d.PerMotorTurn(), fine.PerMotorTurn())
		require.Equal(t, d.PerFullStep(), fine.PerFullStep())
		require.Equal(t, d.PerMicrostep()/2, fine.PerMicrostep())
	})
}

func TestEvenStageChangesNothing(t *testing.T) {
	eachOutput(t, func(t *rapid.T, d drive.Drivetrain) {
		even := d
		teeth := unit.Count(rapid.IntRange(1, 120).Draw(t, "teeth"))
		even.Stages = append(slices.Clone(d.Stages), drive.Stage{Driving: teeth, Driven: teeth})
		for i, v := range figures(even) {
			require.LessOrEqual(t, ulps(v, figures(d)[i]), 4., "figure %d", i)
		}
		even.Stages = append(slices.Clone(d.Stages), drive.Stage{Driving: 1, Driven: 1})
		require.Equal(t, figures(d), figures(even))
	})
}

func TestStageOrderIsIrrelevant(t *testing.T) {
	eachOutput(t, func(t *rapid.T, d drive.Drivetrain) {
		other := d
		other.Stages = rapid.Permutation(d.Stages).Draw(t, "order")
		require.Equal(t, figures(d), figures(other)) // counts multiply without rounding
	})
}

func TestFiguresAgree(t *testing.T) {
	eachOutput(t, func(t *rapid.T, d drive.Drivetrain) {
		require.InEpsilon(t, 1, d.PerMicrostep()*d.Steps(), 1e-15)
		require.InEpsilon(t, d.PerFullStep(), d.PerMicrostep()*float64(d.Motor.Microsteps), 1e-15)
		require.InEpsilon(t, d.PerMotorTurn(), d.PerFullStep()*d.Motor.FullSteps(), 1e-15)
		require.InEpsilon(t, drive.PerTurn(d.Output), d.PerMotorTurn()*d.Stages.Reduction(), 1e-15)
		require.InEpsilon(t, d.Motor.Pulses(), d.Steps()*d.PerMotorTurn(), 1e-15)
		for _, v := range figures(d) {
			require.Greater(t, v, 0.)
			require.True(t, unit.Finite(v))
		}
	})
}

// As a controller's setting the same drivetrain says the same in each convention.
func TestSettingsOfADrivetrain(t *testing.T) {
	eachOutput(t, func(t *rapid.T, d drive.Drivetrain) {
		want := map[drive.Convention]float64{
			drive.StepsPerUnit:        d.Steps(),
			drive.TravelPerTurn:       d.PerMotorTurn(),
			drive.TravelPerOutputTurn: drive.PerTurn(d.Output),
		}
		for _, from := range drive.Conventions {
			for _, to := range drive.Conventions {
				got := drive.Setting{Convention: from, Value: want[from]}.In(to, d.Motor, d.Stages)
				require.Equal(t, to, got.Convention)
				require.InEpsilon(t, want[to], got.Value, 1e-15)
			}
		}
	})
}

// pi has 100 digits. Source: OEIS A000796.
var pi, _ = new(big.Rat).SetString("3.141592653589793238462643383279502884197169399375105820974944592307816406286208998628034825342117068")

// The results lie within 4 units in the last place of exact arithmetic.
func TestExactness(t *testing.T) {
	eachOutput(t, func(t *rapid.T, d drive.Drivetrain) {
		count := func(n unit.Count) *big.Rat { return big.NewRat(int64(n), 1) }
		typed := func(v float64) *big.Rat { // what was typed, not what binary made of it
			r, ok := new(big.Rat).SetString(unit.Full(v))
			require.True(t, ok)
			return r
		}
		product := func(factors ...*big.Rat) *big.Rat {
			p := big.NewRat(1, 1)
			for _, f := range factors {
				p.Mul(p, f)
			}
			return p
		}
		lead := func(s drive.Screw) *big.Rat {
			if s.Threads != 0 {
				return new(big.Rat).Quo(product(big.NewRat(254, 10), count(s.Starts)), typed(float64(s.Threads)))
			}
			return product(typed(float64(s.Pitch)), count(s.Starts))
		}
		var travel *big.Rat
		halved, isHalved := d.Output.(drive.MovingPulley)
		output := d.Output
		if isHalved {
			output = halved.Pulled
		}
		switch o := output.(type) {
		case drive.Belt:
			travel = product(typed(float64(o.Pitch)), count(o.Teeth))
		case drive.Screw:
			travel = lead(o)
		case drive.Drum:
			travel = product(new(big.Rat).Add(typed(float64(o.Diameter)), typed(float64(o.Cable))), pi)
		case drive.Differential:
			travel = new(big.Rat).Sub(lead(o.First), lead(o.Second))
			if o.First.LeftHand != o.Second.LeftHand {
				travel = new(big.Rat).Add(lead(o.First), lead(o.Second))
			}
			travel.Abs(travel)
		case drive.Rack:
			travel = product(typed(float64(o.Module)), count(o.Teeth), pi)
		case drive.Roller:
			travel = product(typed(float64(o.Diameter)), pi)
		case drive.Rotary:
			travel = big.NewRat(360, 1)
		default:
			require.Fail(t, "no exact value for this output")
		}
		if isHalved {
			travel.Quo(travel, big.NewRat(2, 1))
		}
		reduction := big.NewRat(1, 1)
		for _, s := range d.Stages {
			reduction.Mul(reduction, big.NewRat(int64(s.Driven), int64(s.Driving)))
		}
		fullSteps := new(big.Rat).Quo(big.NewRat(360, 1), typed(float64(d.Motor.StepAngle)))
		pulses := product(fullSteps, count(d.Motor.Microsteps))
		perTurn := new(big.Rat).Quo(travel, reduction)
		check := func(name string, got float64, want *big.Rat) {
			nearest, _ := want.Float64()
			require.LessOrEqual(t, ulps(got, nearest), 4., "%s: %v, exactly %v", name, got, nearest)
		}
		check("full steps", d.Motor.FullSteps(), fullSteps)
		check("pulses", d.Motor.Pulses(), pulses)
		check("reduction", d.Stages.Reduction(), reduction)
		check("per output turn", drive.PerTurn(d.Output), travel)
		check("per motor turn", d.PerMotorTurn(), perTurn)
		check("per full step", d.PerFullStep(), new(big.Rat).Quo(perTurn, fullSteps))
		check("per microstep", d.PerMicrostep(), new(big.Rat).Quo(perTurn, pulses))
		check("steps", d.Steps(), new(big.Rat).Quo(pulses, perTurn))
		if o, ok := d.Output.(drive.Roller); ok {
			check("effective diameter", float64(drive.EffectiveDiameter(drive.PerTurn(o))), typed(float64(o.Diameter)))
		}
	})
}
