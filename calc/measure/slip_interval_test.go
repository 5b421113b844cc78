package measure

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// three is two runs each at 60, 180 and 360 mm/min.
func three(lengths ...float64) SlipTest {
	test := SlipTest{Commanded: 100, Grid: 0.01 / math.Sqrt(3)}
	for i, v := range []float64{1, 1, 3, 3, 6, 6} {
		test.Runs = append(test.Runs, SpeedRun{v, lengths[i]})
	}
	return test
}

// What rises with speed is not slip, nor is a bump.
func TestRiseAndBumpAreNoSlip(t *testing.T) {
	rise := solveSlip(t, three(99.0, 99.02, 100, 100.02, 100.0, 100.02))
	assert.True(t, rise.Misfit())
	assert.Equal(t, ErrorRises, rise.Trouble)
	assert.Equal(t, FromZeroSpeed, rise.Basis)
	assert.InEpsilon(t, 0.007437903655902, rise.Scale.Ratio.HalfWidth(), 1e-9)
	assert.Equal(t, []Warning{WarnErrorRises}, rise.Warnings)

	bump := solveSlip(t, three(100, 100.02, 100.5, 100.52, 100, 100.02))
	assert.True(t, bump.Misfit())
	assert.Equal(t, ErrorUneven, bump.Trouble)
	assert.Equal(t, FromZeroSpeed, bump.Basis)
	assert.InEpsilon(t, 0.006199977868035, bump.Scale.Ratio.HalfWidth(), 1e-9)
	for _, r := range []SlipResult{rise, bump} {
		_, ok := r.HoldsUpTo(0.01, false)
		assert.False(t, ok)
		_, hides := r.MayHide(0.0001)
		assert.False(t, hides)
	}
}

// Four speeds, thrice each on the same line of the tool: the loss grows faster than the speed,
// so that the error at no speed may have either sign.
func TestFourSpeedsClaimNoSign(t *testing.T) {
	test := SlipTest{Commanded: 80}
	for i, length := range []float64{79.9, 79.6, 78.8, 77.4} {
		for range 3 {
			test.Runs = append(test.Runs, SpeedRun{float64(i + 1), length})
		}
	}
	m := measured(t, MarkTest{Marks: Series{105}, Remaining: Series{25.1, 25.4}, With: caliper})
	noted, read := test, test
	noted.Grid = 0.05 / math.Sqrt(3) // to a tenth, tool not said
	read.Common = m.Budget.Fixed()
	for _, test := range []SlipTest{test, read} {
		r := solveSlip(t, test)
		assert.Equal(t, SlipFound, r.Trouble)
		low, high := r.Scale.Error().Interval()
		assert.Negative(t, low)
		assert.Positive(t, high)
		j, err := r.Scale.Judge(0.005)
		require.NoError(t, err)
		assert.Equal(t, MeasureMore, j.Verdict)
	}
	r := solveSlip(t, read)
	assert.Equal(t, FromSlowest, r.Basis)
	assert.InDelta(t, 1+0.0025, r.Scale.Ratio.Value, 1e-12, "79.9 and 79.6, once more as far from 1 to 0")
	step := 0.05 / math.Sqrt(6) / 80 * math.Hypot(1/math.Sqrt2, 1.5/math.Sqrt(0.5))
	assert.InEpsilon(t, math.Hypot(0.3/80, 1.959963984540054*step), r.Scale.Ratio.HalfWidth(), 1e-9, "down to the slowest mean, which does not scatter")

	// Where no tool is said, the lines say that it bends, and nothing how well it is known.
	r = solveSlip(t, noted)
	assert.Equal(t, FromSlowest, r.Basis)
	assert.Zero(t, r.Scale.Ratio.U)
	j, err := r.Scale.Judge(0.005)
	require.NoError(t, err)
	assert.Equal(t, []Warning{WarnNothingKnown}, j.Warnings)
	assert.Equal(t, MeasureMore, j.Verdict)
}

// Steps that the runs do not dither stay in the floor of a slip, too; those of the coarser tool
// count, and what bends away from a line is no scatter.
func TestSlipFloor(t *testing.T) {
	floor := func(step float64, test SlipTest) float64 {
		t.Helper()
		with := Instrument{Resolution: step}
		fine := Instrument{Resolution: step / 10}
		m := measured(t, MarkTest{Marks: Series{120}, Remaining: Series{20, 20.1}, With: fine, RemainingWith: &with})
		test.Common = m.Budget.Fixed()
		return solveSlip(t, test).Scale.Floor
	}
	residual := solveSlip(t, gripping).Line.ResidualSD * 100
	assert.Positive(t, floor(residual*2.001, gripping))
	assert.Zero(t, floor(residual*1.999, gripping))
	pure := solveSlip(t, threshold).Lack.PureSD * 100
	assert.Positive(t, floor(pure*2.001, threshold))
	assert.Zero(t, floor(pure*1.999, threshold))
}

// By hand: 10 at 1 and 8 at 3 lead to 11 at 0, which is 1.5 times the first and 0.5 the second.
func TestAtRest(t *testing.T) {
	e := atRest([]group{{1, Series{9.9, 10.1}}, {3, Series{8.1, 7.9, 8, 8}}}, 0.2, 4)
	assert.InEpsilon(t, 11, e.Value, 1e-14)
	assert.InEpsilon(t, 0.2*math.Sqrt(1.5*1.5/2+0.5*0.5/4), e.U, 1e-14)
	assert.Equal(t, 4.0, e.Dof)
}

// Drives that lose grip: in step with the speed, from a speed on, or with its square. The
// interval holds the error at no speed in at least 95 of 100 tests, whatever they find.
func TestSlipIntervalHoldsTheTruth(t *testing.T) {
	losses := map[string]func(v float64) float64{
		"none":      func(float64) float64 { return 0 },
		"straight":  func(v float64) float64 { return v / 6 },
		"threshold": func(v float64) float64 { return max(0, v-3) / 3 },
		"square":    func(v float64) float64 { return v * v / 36 },
	}
	for name, loss := range losses {
		for _, size := range []float64{0.1, 0.4, 1, 2} { // mm of 100 at the fastest
			lots := rand.New(rand.NewPCG(uint64(size*10), 5))
			held, tests := 0, 500
			for range tests {
				test := SlipTest{Commanded: 100, Grid: 0.005 / math.Sqrt(3)}
				for range 3 {
					for _, v := range []float64{1, 3, 6} {
						length := 99.2 - size*loss(v) + 0.15*lots.NormFloat64()
						test.Runs = append(test.Runs, SpeedRun{v, math.Round(length*100) / 100})
					}
				}
				low, high := solveSlip(t, test).Scale.Ratio.Interval()
				if low <= 0.992 && 0.992 <= high {
					held++
				}
			}
			share := 100 * float64(held) / float64(tests)
			assert.GreaterOrEqual(t, share, 93.0, "%s, %v mm", name, size) // chance takes 2 of 95 in 1 of 50
			t.Logf("%s, %v mm at the fastest: held in %.1f %%", name, size, share)
		}
	}
}
