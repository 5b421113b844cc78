package measure

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Sxx 5, Sxy 9.5: the slope is 1.9 and explains 18.05 of 18.75.
func TestFByHand(t *testing.T) {
	l, err := Fit([]Point{{1, 2}, {2, 4}, {3, 5}, {4, 8}})
	require.NoError(t, err)
	assert.InEpsilon(t, 1.9, l.Slope, 1e-12)
	f, ok := l.F()
	assert.True(t, ok)
	assert.InEpsilon(t, 18.05/(0.7/2), f, 1e-9)

	exact, err := Fit([]Point{{1, 2}, {2, 4}, {3, 6}, {4, 8}})
	require.NoError(t, err)
	_, ok = exact.F()
	assert.False(t, ok, "nothing is left to compare with")
}

// Four groups off the line by 0.05, 0.1, -0.35 and 0.2, repeats 0.1 off their means.
func TestLackOfFitOfFourGroups(t *testing.T) {
	l, err := Fit([]Point{{1, 1}, {1, 1.2}, {2, 2}, {2, 2.2}, {3, 2.5}, {3, 2.7}, {4, 4}, {4, 4.2}})
	require.NoError(t, err)
	lack, err := l.LackOfFit()
	require.NoError(t, err)
	assert.InEpsilon(t, 0.35/2/(0.08/4), lack.F, 1e-9)
	assert.Equal(t, 2.0, lack.DofLack)
	assert.Equal(t, 4.0, lack.DofPure)
}

// Without an uncertainty nothing is how many of them away.
func TestEstimateWithoutUncertainty(t *testing.T) {
	e := Estimate{Value: 1.5, U: 0, Dof: 3}
	_, ok := e.T(1)
	assert.False(t, ok)
	assert.Equal(t, 0.0, e.P(1))
	assert.Equal(t, 1.0, e.P(1.5))
	e.U = 0.25
	away, ok := e.T(1)
	assert.True(t, ok)
	assert.Equal(t, 2.0, away)
}

// Positions that are reached 0.1 and 0.3 too far going up, 0 and 0.1 coming down.
func TestSpansOfAnAxisByHand(t *testing.T) {
	r, err := Bidirectional([]Target{
		{0, Series{0.1, 0.1}, Series{0, 0}},
		{0.5, Series{0.8, 0.8}, Series{0.6, 0.6}},
	}, Instrument{})
	require.NoError(t, err)
	assert.InEpsilon(t, 0.2, r.EForward, 1e-9)
	assert.InEpsilon(t, 0.1, r.EBackward, 1e-9)
	assert.InEpsilon(t, 0.3, r.E, 1e-9)
	require.True(t, r.HasSlope, "targets half a millimetre apart have one")
	assert.InEpsilon(t, 1+(0.2-0.05)/0.5, r.Slope, 1e-9)

	same, err := Bidirectional([]Target{{5, Series{5.1, 5.1}, Series{5, 5}}, {5, Series{5.1, 5.1}, Series{5, 5}}}, Instrument{})
	require.NoError(t, err)
	assert.False(t, same.HasSlope)
}

// A mark that is one millimetre away is one.
func TestMarkAtOneMillimetre(t *testing.T) {
	m, err := MarkTest{Marks: Series{1}, Remaining: Series{0.5, 0, 0.25}, With: Instrument{Resolution: 0.01}}.Measure()
	require.NoError(t, err)
	assert.InEpsilon(t, 0.75, m.Length, 1e-9)
}
