package drive_test

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc/drive"
	"striderule/calc/unit"
)

// The demonstration machine gives the same three figures from each convention.
func TestDemonstrationMachine(t *testing.T) {
	motor, gears := drive.Motor{StepAngle: 1.8, Microsteps: 16}, drive.Stages{{Driving: 12, Driven: 54}}
	measured := ((105 - 28.7) + (105 - 28.9) + (105 - 28.6)) / 3
	c := 80 / measured
	want := map[drive.Convention]float64{
		drive.StepsPerUnit:        564.3356643,
		drive.TravelPerTurn:       5.670384139,
		drive.TravelPerOutputTurn: 25.51672862,
	}
	check := func(s drive.Setting) {
		t.Helper()
		for to, w := range want {
			assert.InEpsilon(t, w, s.Corrected(c).In(to, motor, gears).Value, 1e-9)
			assert.InEpsilon(t, w, s.In(to, motor, gears).Corrected(c).Value, 1e-9)
			assert.InEpsilon(t, w, s.Corrected(c).InRatio(to, motor, 4.5).Value, 1e-9)
		}
	}
	check(drive.Setting{Convention: drive.StepsPerUnit, Value: 538})
	check(drive.Setting{Convention: drive.TravelPerTurn, Value: 3200. / 538})
	check(drive.Setting{Convention: drive.TravelPerOutputTurn, Value: 3200 * 4.5 / 538})
}

func TestFacts(t *testing.T) {
	check := func(from, to drive.Convention, motor, gears bool) {
		t.Helper()
		for _, c := range [][2]drive.Convention{{from, to}, {to, from}} {
			m, g := drive.Facts(c[0], c[1])
			assert.Equal(t, motor, m)
			assert.Equal(t, gears, g)
		}
	}
	check(drive.StepsPerUnit, drive.StepsPerUnit, false, false)
	check(drive.TravelPerOutputTurn, drive.TravelPerOutputTurn, false, false)
	check(drive.StepsPerUnit, drive.TravelPerTurn, true, false)
	check(drive.StepsPerUnit, drive.TravelPerOutputTurn, true, true)
	check(drive.TravelPerTurn, drive.TravelPerOutputTurn, false, true)
}

// Facts tells the truth: what is not asked for does not matter.
func TestFactsNotAskedForDoNotMatter(t *testing.T) {
	motor, gears := drive.Motor{StepAngle: 0.9, Microsteps: 32}, drive.Stages{{Driving: 12, Driven: 54}}
	for _, from := range drive.Conventions {
		for _, to := range drive.Conventions {
			s := drive.Setting{Convention: from, Value: 123.4}
			want := s.In(to, motor, gears)
			m, g := motor, gears
			needMotor, needGears := drive.Facts(from, to)
			if !needMotor {
				m = drive.Motor{}
			}
			if !needGears {
				g = nil
			}
			assert.Equal(t, want, s.In(to, m, g), "%v to %v", from, to)
			if needMotor {
				other := drive.Motor{StepAngle: 1.8, Microsteps: 32}
				assert.NotEqual(t, want, s.In(to, other, gears))
			}
			if needGears {
				assert.NotEqual(t, want, s.In(to, motor, nil))
			}
		}
	}
}

// A setting that was typed with up to 12 digits comes back from any other
// convention with these digits.
func TestRoundTripGivesTheDigitsTyped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		digits := rapid.Int64Range(1, 999_999_999_999).Draw(t, "digits")
		text := strconv.FormatInt(digits, 10) + "e-" + strconv.Itoa(rapid.IntRange(0, 11).Draw(t, "decimals"))
		v, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		motor, gears := motors().Draw(t, "motor"), stages().Draw(t, "stages")
		for _, from := range drive.Conventions {
			for _, via := range drive.Conventions {
				s := drive.Setting{Convention: from, Value: v}
				back := s.In(via, motor, gears).In(from, motor, gears)
				require.Equal(t, from, back.Convention)
				require.Equal(t, unit.Trim(v, 12), unit.Trim(back.Value, 12), "%v via %v", from, via)
				again, err := strconv.ParseFloat(unit.Trim(back.Value, 12), 64)
				require.NoError(t, err)
				require.Equal(t, v, again)
				ratio := gears.Reduction()
				back = s.InRatio(via, motor, ratio).InRatio(from, motor, ratio)
				require.Equal(t, unit.Trim(v, 12), unit.Trim(back.Value, 12), "%v via %v", from, via)
				require.InEpsilon(t, s.In(via, motor, gears).Value, s.InRatio(via, motor, ratio).Value, 1e-15)
			}
		}
	})
}

// An axis moves by pulses·R/(N·m): with the corrected setting it moves what is
// commanded, whichever convention its controller stores.
func TestCorrectionLeavesNoError(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		motor, gears := motors().Draw(t, "motor"), stages().Draw(t, "stages")
		now := drive.Setting{
			Convention: rapid.SampledFrom(drive.Conventions).Draw(t, "convention"),
			Value:      rapid.Float64Range(0.01, 10_000).Draw(t, "value"),
		}
		// what the axis really is, apart from what its controller believes
		real := now.In(drive.StepsPerUnit, motor, gears).Value * rapid.Float64Range(0.5, 2).Draw(t, "real")
		moves := func(s drive.Setting, commanded float64) float64 {
			pulses := commanded * s.In(drive.StepsPerUnit, motor, gears).Value
			return pulses / real
		}
		commanded := rapid.Float64Range(1, 1000).Draw(t, "commanded")
		next := now.Corrected(commanded / moves(now, commanded))
		require.Equal(t, now.Convention, next.Convention)
		require.InEpsilon(t, 80, moves(next, 80), 1e-14)
		require.InEpsilon(t, now.Value, next.Corrected(moves(now, commanded)/commanded).Value, 1e-14, "and back")
	})
}

func TestCorrected(t *testing.T) {
	check := func(c drive.Convention, want float64) {
		t.Helper()
		got := drive.Setting{Convention: c, Value: 100}.Corrected(1.25)
		assert.Equal(t, drive.Setting{Convention: c, Value: want}, got)
	}
	check(drive.StepsPerUnit, 125) // moved too little: more steps
	check(drive.TravelPerTurn, 80)
	check(drive.TravelPerOutputTurn, 80)
}
