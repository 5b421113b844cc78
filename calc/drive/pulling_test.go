package drive_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/calc/drive"
)

func screw(t *testing.T, text string) drive.Screw {
	t.Helper()
	s, err := drive.ParseScrew(text)
	assert.NoError(t, err)
	return s
}

// Worked by hand: a drum of 20 mm with a cable of 0.8 mm winds π·20.8 mm a turn.
func TestDrumsAndMovingPulleys(t *testing.T) {
	check := func(o drive.Output, name string, travel float64) {
		t.Helper()
		assert.NoError(t, o.Check())
		assert.Equal(t, name, o.Name())
		assert.False(t, o.Angular())
		assert.InEpsilon(t, travel, drive.PerTurn(o), 1e-15)
	}
	check(drive.Drum{20, 0.8}, "drum", 65.3451271946676993600)
	check(drive.MovingPulley{drive.Drum{20, 0.8}}, "pulley", 32.6725635973338496800)
	check(drive.MovingPulley{drive.Belt{2, 20}}, "pulley", 20)
	check(drive.MovingPulley{drive.MovingPulley{drive.Belt{2, 20}}}, "pulley", 10)
	for _, o := range []drive.Output{
		drive.Drum{0, 1}, drive.Drum{20, 0}, drive.Drum{-20, 40}, drive.Drum{20, -1}, drive.MovingPulley{}, drive.MovingPulley{drive.Rotary{}},
		drive.MovingPulley{drive.Belt{2, 0}}, drive.MovingPulley{drive.MovingPulley{}}, drive.Differential{},
	} {
		assert.ErrorIs(t, o.Check(), drive.ErrOutput, "%+v", o)
	}
	d := drive.Drivetrain{Motor: drive.Motor{1.8, 16}, Output: drive.MovingPulley{drive.Belt{2, 20}}}
	assert.NoError(t, d.Check())
	assert.Equal(t, 160., d.Steps(), "twice the 80 of the belt alone")
}

// The difference of two leads loses no digit of what was typed.
func TestDifferentialScrews(t *testing.T) {
	check := func(first, second string, travel float64) {
		t.Helper()
		a, b := screw(t, first), screw(t, second)
		for _, d := range []drive.Differential{{a, b}, {b, a}} {
			assert.NoError(t, d.Check(), first)
			assert.Equal(t, travel, drive.PerTurn(d), first)
			assert.Equal(t, "differential", d.Name())
			assert.False(t, d.Angular())
		}
	}
	check("M8x1.25", "M6x1", 0.25)
	check("0.8", "0.7", 0.1)
	check("M3x0.5", "M2x0.4", 0.1)
	check("M8x1.25 LH", "M6x1 LH", 0.25)
	check("M8x1.25", "M6x1 LH", 2.25)
	check("Tr8x2", "Tr8x2 LH", 4)
	check("20 tpi", "24 tpi", 0.21166666666666667) // 25.4·(1/20 − 1/24) = 127/600
	check("20 tpi", "M8x1.25", 0.02)               // 1.27 − 1.25
	check("20 tpi x 2", "2,5", 0.04)               // 2.54 − 2.5
	check("Tr8x0.6(P0.2)", "0.5", 0.1)             // three starts of 0.2
	check("998.999999", "998.999998", 0.000001)    // a millionth
	for _, alike := range [][2]string{{"Tr8x8(P2)", "8"}, {"20 tpi", "1.27"}, {"20 tpi x 2", "10 tpi"}, {"1/2 in", "12.7 mm"}, {"Tr8x2 LH", "2 LH"}} {
		assert.ErrorIs(t, drive.Differential{screw(t, alike[0]), screw(t, alike[1])}.Check(), drive.ErrOutput, alike)
	}
}
