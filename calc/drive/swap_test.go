package drive_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc/drive"
	"striderule/calc/unit"
)

func TestRescale(t *testing.T) {
	check := func(was, now drive.Parts, steps, turn, output, ratio float64) {
		t.Helper()
		f, err := drive.Rescale(was, now)
		require.NoError(t, err)
		assert.InEpsilon(t, steps, f.Steps, 1e-15)
		assert.InEpsilon(t, turn, f.Turn, 1e-15)
		assert.InEpsilon(t, output, f.Output, 1e-15)
		assert.InEpsilon(t, ratio, f.Ratio, 1e-15)
		for c, want := range map[drive.Convention]float64{
			drive.StepsPerUnit: f.Steps, drive.TravelPerTurn: f.Turn, drive.TravelPerOutputTurn: f.Output,
		} {
			assert.Equal(t, want, f.Of(c))
			old := drive.Setting{Convention: c, Value: 538}
			assert.Equal(t, drive.Setting{Convention: c, Value: 538 * want}, old.Rescaled(f))
		}
	}
	type p = drive.Parts
	check(p{}, p{}, 1, 1, 1, 1)
	check(p{Microsteps: 8}, p{Microsteps: 64}, 8, 1, 1, 1)
	check(p{StepAngle: 1.8}, p{StepAngle: 0.9}, 2, 1, 1, 1)
	check(p{StepAngle: 1.8, Microsteps: 16}, p{StepAngle: 0.9, Microsteps: 8}, 1, 1, 1, 1)
	check(p{Stages: drive.Stages{{10, 30}}}, p{Stages: drive.Stages{{16, 46}}}, 23./24, 24./23, 1, 23./24)
	check(p{Stages: drive.Stages{}}, p{Stages: drive.Stages{{12, 54}}}, 4.5, 1/4.5, 1, 4.5) // gears on a direct drive
	check(p{Output: drive.Belt{2, 20}}, p{Output: drive.Belt{2, 16}}, 1.25, 0.8, 0.8, 1)
	check(p{Output: drive.Belt{2, 20}}, p{Output: drive.Belt{3, 20}}, 2./3, 1.5, 1.5, 1)
	check(p{Output: drive.Roller{11}}, p{Output: drive.Roller{8.5}}, 22./17, 17./22, 17./22, 1)
	check(p{Output: drive.Roller{11}}, p{Output: drive.Rack{1, 11}}, 1, 1, 1, 1) // π cancels
	check(p{Output: drive.Belt{2, 20}}, p{Output: drive.Roller{10}}, 4/math.Pi, math.Pi/4, math.Pi/4, 1)
	check(p{Output: drive.Roller{10}}, p{Output: drive.Belt{2, 20}}, math.Pi/4, 4/math.Pi, 4/math.Pi, 1)
	check(p{Output: drive.Rotary{}}, p{Output: drive.Rotary{}}, 1, 1, 1, 1)
	check(p{Ratio: 3}, p{Ratio: 4.5}, 1.5, 1/1.5, 1, 1.5)
	check(p{Ratio: 3}, p{Stages: drive.Stages{{12, 54}}}, 1.5, 1/1.5, 1, 1.5) // known in two ways
	check(p{Stages: drive.Stages{}}, p{Ratio: 4.5}, 4.5, 1/4.5, 1, 4.5)
	check(p{Stages: drive.Stages{{12, 54}}, Ratio: 9}, p{Ratio: 4.5}, 1, 1, 1, 1) // teeth say more than a ratio
	was := p{StepAngle: 1.8, Microsteps: 16, Stages: drive.Stages{{10, 30}}, Output: drive.Screw{Pitch: 2, Starts: 4}}
	now := p{StepAngle: 0.9, Microsteps: 32, Stages: drive.Stages{{20, 30}}, Output: drive.Screw{Pitch: 2, Starts: 1}}
	check(was, now, 8, 0.5, 0.25, 0.5)
}

func TestRescaleRefuses(t *testing.T) {
	check := func(was, now drive.Parts, want error, sentence string) {
		t.Helper()
		for _, c := range [][2]drive.Parts{{was, now}, {now, was}} {
			f, err := drive.Rescale(c[0], c[1])
			assert.ErrorIs(t, err, want)
			assert.ErrorContains(t, err, sentence)
			assert.Zero(t, f)
		}
	}
	type p = drive.Parts
	check(p{StepAngle: 1.8}, p{}, drive.ErrOneSided, "angle: the part is given on one side only")
	check(p{Microsteps: 16}, p{}, drive.ErrOneSided, "microsteps: ")
	check(p{Stages: drive.Stages{}}, p{}, drive.ErrOneSided, "gears: ") // a direct drive is a part that is named
	check(p{Ratio: 4.5}, p{}, drive.ErrOneSided, "gears: ")
	check(p{Output: drive.Rotary{}}, p{}, drive.ErrOneSided, "output: ")
	check(p{Output: drive.Rotary{}}, p{Output: drive.Belt{2, 20}}, drive.ErrTravelKind, "mm")
	check(p{Stages: drive.Stages{{10, 30}}}, p{Stages: drive.Stages{{0, 30}}}, drive.ErrStage, "tooth")
	check(p{Output: drive.Belt{2, 20}}, p{Output: drive.Belt{2, 0}}, drive.ErrOutput, "sizes")
	check(p{Microsteps: 16}, p{Microsteps: -32}, drive.ErrMotor, "motor")
	for _, bad := range []unit.Angle{-1.8, unit.Angle(math.NaN()), unit.Angle(math.Inf(1)), 5e-324} {
		check(p{StepAngle: 1.8}, p{StepAngle: bad}, drive.ErrMotor, "motor")
		check(p{StepAngle: bad}, p{StepAngle: bad}, drive.ErrMotor, "motor")
	}
	for _, bad := range noSize {
		if bad != 0 {
			check(p{Ratio: 4.5}, p{Ratio: bad}, drive.ErrStage, "gear")
		}
	}
	check(p{Output: drive.Roller{1e-300}}, p{Output: drive.Roller{1e300}}, drive.ErrExtreme, "too large or too small")
}

// swaps draws n times the same subset of a drivetrain.
func swaps(n int) *rapid.Generator[[]drive.Parts] {
	linear := outputs()
	return rapid.Custom(func(t *rapid.T) []drive.Parts {
		angle, micro, gears, output := rapid.Bool().Draw(t, "angle"), rapid.Bool().Draw(t, "microsteps"), rapid.Bool().Draw(t, "gears"), rapid.Bool().Draw(t, "output")
		all := make([]drive.Parts, n)
		for i := range all {
			m := motors().Draw(t, "motor")
			if angle {
				all[i].StepAngle = m.StepAngle
			}
			if micro {
				all[i].Microsteps = m.Microsteps
			}
			if gears {
				all[i].Stages = stages().Draw(t, "stages")
				if rapid.Bool().Draw(t, "as a ratio") {
					all[i].Stages, all[i].Ratio = nil, float64(rapid.IntRange(1, 100_000).Draw(t, "ratio"))/1000
				}
			}
			if output {
				name := rapid.SampledFrom([]string{"Belt", "Screw", "Rack", "Roller"}).Draw(t, "output")
				all[i].Output = linear[name].Draw(t, name)
			}
		}
		return all
	})
}

func sameFactors(t *rapid.T, want, got drive.Factors) {
	t.Helper()
	require.InEpsilon(t, want.Steps, got.Steps, 1e-14)
	require.InEpsilon(t, want.Turn, got.Turn, 1e-14)
	require.InEpsilon(t, want.Output, got.Output, 1e-14)
	require.InEpsilon(t, want.Ratio, got.Ratio, 1e-14)
}

func rescale(t *rapid.T, was, now drive.Parts) drive.Factors {
	t.Helper()
	f, err := drive.Rescale(was, now)
	require.NoError(t, err)
	return f
}

// Two swaps are as good as one, there and back is none, and no swap is none.
func TestRescaleComposes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := swaps(3).Draw(t, "parts")
		a, b, whole := rescale(t, p[0], p[1]), rescale(t, p[1], p[2]), rescale(t, p[0], p[2])
		sameFactors(t, whole, drive.Factors{Steps: a.Steps * b.Steps, Turn: a.Turn * b.Turn, Output: a.Output * b.Output, Ratio: a.Ratio * b.Ratio})
		back := rescale(t, p[1], p[0])
		sameFactors(t, drive.Factors{Steps: 1, Turn: 1, Output: 1, Ratio: 1},
			drive.Factors{Steps: a.Steps * back.Steps, Turn: a.Turn * back.Turn, Output: a.Output * back.Output, Ratio: a.Ratio * back.Ratio})
		sameFactors(t, drive.Factors{Steps: 1, Turn: 1, Output: 1, Ratio: 1}, rescale(t, p[0], p[0]))
	})
}

// A part that does not change cancels: with it or without it, the factors are
// those of the two whole machines.
func TestUnknownPartsCancel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := swaps(2).Draw(t, "parts")
		subset := rescale(t, p[0], p[1])
		full := func(p drive.Parts) drive.Drivetrain {
			d := drive.Drivetrain{Motor: drive.Motor{StepAngle: 1.2, Microsteps: 10}, Stages: drive.Stages{{Driving: 13, Driven: 37}}, Output: drive.Roller{Diameter: 7.3}}
			if p.StepAngle != 0 {
				d.Motor.StepAngle = p.StepAngle
			}
			if p.Microsteps != 0 {
				d.Motor.Microsteps = p.Microsteps
			}
			if p.Stages != nil || p.Ratio != 0 {
				d.Stages = p.Stages
			}
			if p.Ratio != 0 { // as the teeth of one stage
				d.Stages = drive.Stages{{Driving: 1000, Driven: unit.Count(math.Round(p.Ratio * 1000))}}
			}
			if p.Output != nil {
				d.Output = p.Output
			}
			return d
		}
		was, now := full(p[0]), full(p[1])
		sameFactors(t, drive.Factors{
			Steps:  now.Steps() / was.Steps(),
			Turn:   now.PerMotorTurn() / was.PerMotorTurn(),
			Output: drive.PerTurn(now.Output) / drive.PerTurn(was.Output),
			Ratio:  now.Stages.Reduction() / was.Stages.Reduction(),
		}, subset)
		parts := func(d drive.Drivetrain) drive.Parts {
			return drive.Parts{StepAngle: d.Motor.StepAngle, Microsteps: d.Motor.Microsteps, Stages: d.Stages, Output: d.Output}
		}
		sameFactors(t, rescale(t, parts(was), parts(now)), subset)

		// the correction of a measurement is carried over, in each convention alike
		old := drive.Setting{Convention: drive.StepsPerUnit, Value: was.Steps() * 1.0478}
		for _, c := range drive.Conventions {
			next := old.In(c, was.Motor, was.Stages).Rescaled(subset)
			require.InEpsilon(t, now.Steps()*1.0478, next.In(drive.StepsPerUnit, now.Motor, now.Stages).Value, 1e-14)
		}
	})
}
