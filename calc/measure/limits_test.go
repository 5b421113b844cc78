package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A value just at the end of a guard band, or an interval that just touches a limit,
// is decided as the sources have it.
func TestDecisionsAtTheLimits(t *testing.T) {
	limits := Within(0, 1)
	for value, want := range map[float64]Decision{0.75: Inside, -0.75: Inside, 0.8: CannotTell, 1.25: CannotTell, -1.25: CannotTell, 1.3: Outside, -1.3: Outside} {
		got, err := limits.ByGuard(value, 0.25)
		require.NoError(t, err)
		assert.Equal(t, want, got, value)
	}
	got, err := limits.ByGuard(1, 0)
	require.NoError(t, err)
	assert.Equal(t, Inside, got, "no guard band")
	assert.Equal(t, CannotTell, limits.ByInterval(-2, -1))
	assert.Equal(t, CannotTell, limits.ByInterval(1, 2))
	assert.Equal(t, Inside, limits.ByInterval(-1, 1))
}

// Φ(−10) of the normal distribution, from either side.
func TestChancesFarOut(t *testing.T) {
	for _, value := range []float64{-2, 2} {
		c, err := Within(0, 1).Chances(Estimate{Value: value, U: 0.1, Dof: math.Inf(1)})
		require.NoError(t, err)
		assert.InEpsilon(t, 7.619853024160526e-24, c.Within, 1e-9)
	}
}

func TestBeyondOnEitherSide(t *testing.T) {
	assert.True(t, Judgement{Chances: Chances{Above: 0.96}}.Beyond())
	assert.True(t, Judgement{Chances: Chances{Below: 0.96}}.Beyond())
	assert.False(t, Judgement{Chances: Chances{Above: 0.5, Below: 0.5}}.Beyond())
}

func TestReachIncludesItsEnd(t *testing.T) {
	caliper := Instrument{Reach: 150}
	assert.True(t, caliper.reaches(150))
	assert.False(t, caliper.reaches(150.1))
}

// A line through the origin takes two readings.
func TestThroughOriginOfTwo(t *testing.T) {
	l, err := FitThroughOrigin([]Point{{1, 2}, {2, 4}})
	require.NoError(t, err)
	assert.InEpsilon(t, 2, l.Slope, 1e-14)
}
