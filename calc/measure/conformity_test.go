package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestChances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := Estimate{
			Value: rapid.Float64Range(-3, 3).Draw(t, "value"),
			U:     rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(1e-3, 3)).Draw(t, "u"),
			Dof:   rapid.OneOf(rapid.Float64Range(1, 100), rapid.Just(math.Inf(1))).Draw(t, "dof"),
		}
		c, err := Within(0, 1).Chances(e)
		require.NoError(t, err)
		assert.InDelta(t, 1, c.Within+c.Above+c.Below, 1e-12)
		for _, p := range []float64{c.Within, c.Above, c.Below} {
			assert.True(t, p >= 0 && p <= 1)
		}
		upper, err := Limits{math.Inf(-1), 1}.Chances(e)
		require.NoError(t, err)
		assert.InDelta(t, c.Above, upper.Above, 1e-12)
		assert.Zero(t, upper.Below)
		lower, err := Limits{-1, math.Inf(1)}.Chances(e)
		require.NoError(t, err)
		assert.InDelta(t, c.Below, lower.Below, 1e-12)
		assert.Zero(t, lower.Above)
	})
	sharp := func(value float64, want Chances) {
		t.Helper()
		c, err := Within(10, 1).Chances(Estimate{Value: value, Dof: 3})
		require.NoError(t, err)
		assert.Equal(t, want, c)
	}
	sharp(11, Chances{Within: 1})
	sharp(9, Chances{Within: 1})
	sharp(math.Nextafter(11, 12), Chances{Above: 1})
	sharp(math.Nextafter(9, 8), Chances{Below: 1})
	// So sharp that the distance in u is beyond all numbers.
	c, err := Within(0, 1).Chances(Estimate{Value: 5, U: 1e-300, Dof: 3})
	require.NoError(t, err)
	assert.Equal(t, Chances{Above: 1}, c)
	// A tail far out keeps its digits: Φ(−5) of the normal distribution.
	c, err = Within(0, 1).Chances(Estimate{Value: -2, U: 0.2, Dof: math.Inf(1)})
	require.NoError(t, err)
	assert.InEpsilon(t, 2.866515718791939e-07, c.Within, 1e-9)
	c, err = Within(0, 1).Chances(Estimate{Value: 2, U: 0.2, Dof: math.Inf(1)})
	require.NoError(t, err)
	assert.InEpsilon(t, 2.866515718791939e-07, c.Within, 1e-9)
}

func TestRules(t *testing.T) {
	check := func(value float64, probability, guard Decision) {
		t.Helper()
		e := Estimate{Value: value, U: 0.1, Dof: math.Inf(1)}
		got, err := Within(0, 1).ByProbability(e)
		require.NoError(t, err)
		assert.Equal(t, probability, got)
		got, err = Within(0, 1).ByGuard(value, Guard2U*e.U)
		require.NoError(t, err)
		assert.Equal(t, guard, got)
	}
	check(0, Inside, Inside)
	check(0.79, Inside, Inside)
	check(0.83, Inside, CannotTell) // between 1.645 u and 2 u
	check(-0.83, Inside, CannotTell)
	check(0.84, CannotTell, CannotTell)
	check(-1, CannotTell, CannotTell)
	check(1.16, CannotTell, CannotTell)
	check(1.17, Outside, CannotTell)
	check(1.21, Outside, Outside)
	check(-1.21, Outside, Outside)
}

func TestRulesRefuse(t *testing.T) {
	ok := Estimate{U: 1, Dof: 3}
	for _, l := range []Limits{{1, 1}, {2, 1}, {math.NaN(), 1}, {math.Inf(-1), math.Inf(1)}} {
		_, err := l.Chances(ok)
		assert.ErrorIs(t, err, ErrLimits)
		_, err = l.ByProbability(ok)
		assert.ErrorIs(t, err, ErrLimits)
		_, err = l.ByGuard(0, 0)
		assert.ErrorIs(t, err, ErrLimits)
	}
	_, err := Within(0, 1).Chances(Estimate{U: -1, Dof: 3})
	assert.ErrorIs(t, err, ErrUncertainty)
	_, err = Within(0, 1).ByGuard(math.NaN(), 0)
	assert.ErrorIs(t, err, ErrNotFinite)
	_, err = Within(0, 1).ByGuard(0, -1)
	assert.ErrorIs(t, err, ErrNotFinite)
}

func TestByInterval(t *testing.T) {
	l := Within(0, 1)
	check := func(want Decision, low, high float64) {
		t.Helper()
		assert.Equal(t, want, l.ByInterval(low, high))
	}
	check(Inside, -1, 1)
	check(CannotTell, -1, 1.1)
	check(CannotTell, -2, 2)
	check(Outside, 1.1, 2)
	check(Outside, -2, -1.1)
	check(CannotTell, 1, 2)
	assert.True(t, l.Acceptable(1))
	assert.False(t, l.Acceptable(1.01))
	assert.Equal(t, "cannot_tell inside outside", CannotTell.String()+" "+Inside.String()+" "+Outside.String())
}
