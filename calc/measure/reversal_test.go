package measure

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Two targets by hand, as ISO 230-2 defines the terms.
func ExampleBidirectional() {
	r, _ := Bidirectional([]Target{
		{Position: 0, Forward: Series{0.01, 0.03}, Backward: Series{-0.03, -0.03}},
		{Position: 100, Forward: Series{100.05, 100.05}, Backward: Series{99.97, 99.99}},
	}, Instrument{})
	fmt.Printf("reversal %.3f, mean %.3f, M %.3f, E %.3f\n", r.B, r.MeanReversal.Value, r.M, r.E)
	fmt.Printf("scale %.5f\n", r.Slope)
	// Output:
	// reversal 0.070, mean 0.060, M 0.020, E 0.080
	// scale 1.00020
}

func genTargets(t *rapid.T) []Target {
	var list []Target
	for i := range rapid.IntRange(1, 5).Draw(t, "targets") {
		x := float64(50 * i)
		near := rapid.Float64Range(x-1, x+1)
		list = append(list, Target{x, rapid.SliceOfN(near, 1, 4).Draw(t, "forward"), rapid.SliceOfN(near, 1, 4).Draw(t, "backward")})
	}
	return list
}

func TestReversalLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		targets := genTargets(t)
		r, err := Bidirectional(targets, Instrument{})
		require.NoError(t, err)
		swapped := make([]Target, len(targets))
		shifted := make([]Target, len(targets))
		for i, g := range targets {
			swapped[i] = Target{g.Position, g.Backward, g.Forward}
			shifted[i] = Target{Position: g.Position}
			for _, x := range g.Forward {
				shifted[i].Forward = append(shifted[i].Forward, x+3)
			}
			for _, x := range g.Backward {
				shifted[i].Backward = append(shifted[i].Backward, x+3)
			}
		}
		s, err := Bidirectional(swapped, Instrument{})
		require.NoError(t, err)
		assert.InDelta(t, -r.MeanReversal.Value, s.MeanReversal.Value, 1e-12, "swapping the directions negates it")
		assert.InDelta(t, r.MeanReversal.U, s.MeanReversal.U, 1e-12)
		for i := range r.PerTarget {
			assert.InDelta(t, -r.PerTarget[i], s.PerTarget[i], 1e-12)
		}
		assert.Equal(t, []float64{r.B, r.E, r.R, r.A, r.RForward}, []float64{s.B, s.E, s.R, s.A, s.RBackward})
		assert.InDelta(t, r.M, s.M, 1e-12)
		z, err := Bidirectional(shifted, Instrument{})
		require.NoError(t, err)
		for i, pair := range [][2]float64{{r.B, z.B}, {r.M, z.M}, {r.E, z.E}, {r.R, z.R}, {r.A, z.A}, {r.Slope, z.Slope}} {
			assert.InDelta(t, pair[0], pair[1], 1e-9, "a wrong zero changes nothing: %d", i)
		}
		assert.LessOrEqual(t, r.B, r.E+1e-12)
		assert.LessOrEqual(t, math.Abs(r.MeanReversal.Value), r.B+1e-12)
		assert.LessOrEqual(t, r.M, r.E+1e-12)
		if r.HasSpread {
			assert.LessOrEqual(t, r.E, r.A+1e-12)
			assert.LessOrEqual(t, max(r.RForward, r.RBackward), r.R)
		}
		assert.Equal(t, len(targets) > 1, r.HasSlope)
	})
}

func TestReversalEdges(t *testing.T) {
	fails := func(want error, targets ...Target) {
		t.Helper()
		_, err := Bidirectional(targets, Instrument{})
		assert.ErrorIs(t, err, want)
	}
	fails(ErrNoReading)
	fails(ErrOneDirection, Target{0, Series{1}, nil})
	fails(ErrOneDirection, Target{0, nil, Series{1}})
	fails(ErrNotFinite, Target{math.NaN(), Series{1}, Series{1}})
	fails(ErrNotFinite, Target{0, Series{math.Inf(1)}, Series{1}})
	fails(ErrNotFinite, Target{0, Series{1}, Series{math.NaN()}})

	once, err := Bidirectional([]Target{{10, Series{10.1}, Series{10}}, {50, Series{50.2, 50.1}, Series{50}}}, Instrument{})
	require.NoError(t, err)
	assert.False(t, once.HasSpread)
	assert.Equal(t, []Warning{WarnOneApproach}, once.Warnings)
	assert.Nil(t, once.SForward)
	assert.Zero(t, once.R+once.A+once.MeanReversal.U)
	assert.NoError(t, once.MeanReversal.Check())

	// Repeats that are equal are known to the step of either side, in full.
	steps, err := Bidirectional([]Target{{0, Series{0.1, 0.1}, Series{0, 0}}, {9, Series{9.1, 9.1}, Series{9, 9}}}, Instrument{Resolution: 0.1, Accuracy: 3})
	require.NoError(t, err)
	assert.InEpsilon(t, 0.1/math.Sqrt(6), steps.MeanReversal.U, 1e-12)
	assert.InEpsilon(t, 0.1*(1-math.Sqrt(0.05)), steps.MeanReversal.HalfWidth(), 1e-12)

	// u of the mean reversal by hand: forward ±0.01 at both targets, backward exact.
	r, err := Bidirectional([]Target{{0, Series{0.01, 0.03}, Series{0, 0}}, {9, Series{9.01, 9.03}, Series{9, 9}}}, Instrument{})
	require.NoError(t, err)
	assert.InEpsilon(t, math.Sqrt(2)*0.01/2, r.MeanReversal.U, 1e-9)
	assert.InEpsilon(t, 2, r.MeanReversal.Dof, 1e-9)
}
