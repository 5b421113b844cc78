package drive_test

import (
	"fmt"
	"math"
	"testing"

	"striderule/calc/drive"
	"striderule/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// 300 mm/s at 80 steps/mm under a limit of 40 kHz.
func ExamplePulseRate() {
	fmt.Println(drive.PulseRate(300, 80), drive.TopSpeed(40_000, 80))
	// Output: 24000 500
}

// 24 V on a phase of 3.2 mH at 1.5 A peak, 200 full steps per turn.
func ExampleCornerOf() {
	c, _ := drive.CornerOf(24, drive.Winding{Inductance: 3.2}, 1.5, 200)
	fmt.Printf("%.4g s %.6g %.6g\n", float64(c.PerFullStep), c.FullSteps, c.Turns)
	// Output: 0.0004 s 2500 12.5
}

func TestTopSpeedIsWhereTheLimitIsReached(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		steps := rapid.Float64Range(0.1, 1e5).Draw(t, "steps")
		limit := unit.PulseRate(rapid.Float64Range(1e3, 1e7).Draw(t, "limit"))
		assert.InEpsilon(t, float64(limit), float64(drive.PulseRate(drive.TopSpeed(limit, steps), steps)), 1e-12)
	})
}

func TestIncrementalTorqueFalls(t *testing.T) {
	assert.Equal(t, 1.0, drive.IncrementalTorque(1), "a full step has all of it")
	assert.InEpsilon(t, 0.0980171403295606, drive.IncrementalTorque(16), 1e-12)
	for m := unit.Count(1); m < 256; m++ {
		assert.Greater(t, drive.IncrementalTorque(m), drive.IncrementalTorque(m+1))
	}
}

// References worked to 40 digits from t = L/R · ln((V + I·R)/(V − I·R)).
func TestCornerWithResistance(t *testing.T) {
	check := func(supply unit.Voltage, w drive.Winding, current unit.Current, fullSteps, milliseconds, turns float64) {
		t.Helper()
		c, ok := drive.CornerOf(supply, w, current, fullSteps)
		assert.True(t, ok)
		assert.InEpsilon(t, milliseconds/1000, float64(c.PerFullStep), 3e-15)
		assert.InEpsilon(t, 1000/milliseconds, c.FullSteps, 3e-15)
		assert.InEpsilon(t, turns, c.Turns, 3e-15)
	}
	check(12, drive.Winding{5.5, 3.3}, 1.2, 200, 1.142760848051312842407, 4.375368659616073403922)
	check(12, drive.Winding{5.5, 0}, 1.2, 200, 1.1, 4.545454545454545454545) // 3.7% faster
	check(24, drive.Winding{3.2, 2.4}, 1.5, 400, 0.403041162497244814076, 6.202840386103466487790)
	check(24, drive.Winding{3.2, 0.001}, 1.5, 200, 0.400000000520833334554, 12.49999998372395831637912)
	check(4, drive.Winding{5.5, 3.3}, 1.2, 200, 8.822174707874153992350, 0.566753682120724069458) // 0.04 V to spare
}

func TestSupplyThatDoesNotDriveTheCurrent(t *testing.T) {
	assert.InEpsilon(t, 3.96, float64(drive.Winding{5.5, 3.3}.Takes(1.2)), 1e-15)
	for supply, drives := range map[unit.Voltage]bool{3: false, 3.9: false, 4: true, 12: true} {
		c, ok := drive.CornerOf(supply, drive.Winding{5.5, 3.3}, 1.2, 200)
		assert.Equal(t, drives, ok, supply)
		assert.Equal(t, drives, c.Turns > 0, supply)
	}
	_, ok := drive.CornerOf(12, drive.Winding{40, 30}, 0.4, 48)
	assert.False(t, ok, "the rated voltage of a motor drives its current in the end, not within any step")
	_, ok = drive.CornerOf(1, drive.Winding{1000, 0}, 100, 200)
	assert.True(t, ok, "a winding without resistance takes any current")
}

// A winding with resistance is slower, the more of it the slower, and without it
// as fast as the ideal one to the last digit.
func TestResistanceSlows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		supply := unit.Voltage(rapid.Float64Range(1, 1000).Draw(t, "supply"))
		l := unit.Inductance(rapid.Float64Range(0.001, 1000).Draw(t, "inductance"))
		current := unit.Current(rapid.Float64Range(0.001, 100).Draw(t, "current"))
		steps := rapid.SampledFrom([]float64{24, 48, 200, 400}).Draw(t, "full steps")
		ideal, ok := drive.CornerOf(supply, drive.Winding{Inductance: l}, current, steps)
		require.True(t, ok)
		// today's formula as it is written
		require.Equal(t, unit.Duration(2*float64(l)*float64(current)/float64(supply)/1000), ideal.PerFullStep)
		none, ok := drive.CornerOf(supply, drive.Winding{l, 1e-12 * unit.Resistance(supply) / unit.Resistance(current)}, current, steps)
		require.True(t, ok)
		require.Equal(t, ideal, none, "R → 0")
		before := ideal
		for _, share := range []float64{1e-3, 0.1, 0.5, 0.9, 0.999, 1 - 1e-12} { // of V, that I·R takes
			r := unit.Resistance(share * float64(supply) / float64(current))
			c, ok := drive.CornerOf(supply, drive.Winding{l, r}, current, steps)
			require.True(t, ok, share)
			require.Less(t, c.Turns, before.Turns)
			require.Greater(t, c.Turns, 0.)
			require.True(t, unit.Finite(float64(c.PerFullStep)))
			require.InEpsilon(t, c.FullSteps, c.Turns*steps, 1e-14)
			// after that time the current that the circuit's equation gives is I
			v, rr := float64(supply), float64(r)
			i := v/rr - (float64(current)+v/rr)*math.Exp(-rr*float64(c.PerFullStep)/(float64(l)/1000))
			if share < 0.9 && share > 0.05 {
				require.InEpsilon(t, float64(current), i, 1e-11)
			}
			before = c
		}
	})
}
