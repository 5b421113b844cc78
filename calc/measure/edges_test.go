package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Degrees of freedom come from the components that have some.
func TestDofOfFew(t *testing.T) {
	assert.Equal(t, 1.0, Budget{{U: 2, Dof: 1}}.Dof())
	assert.True(t, math.IsInf(Budget{{U: 1, Dof: 0}}.Dof(), 1), "it has none")
	assert.InEpsilon(t, 16, Budget{{U: 1, Dof: 0}, {U: 1, Dof: 4}}.Dof(), 1e-12)
}

func TestBySizeKeepsEqualsInOrder(t *testing.T) {
	sorted := Budget{{ID: "a", U: 1}, {ID: "b", U: 1}, {ID: "c", U: 2}}.BySize()
	assert.Equal(t, "c", sorted[0].ID)
	assert.Equal(t, "a", sorted[1].ID)
	assert.Equal(t, "b", sorted[2].ID)
}

// Small lengths are lengths as well.
func TestNextOfHalfAMillimetre(t *testing.T) {
	m, err := Repeated{Readings: Series{0.5, 0.52, 0.49}, With: Instrument{Resolution: 0.01}}.Measure()
	require.NoError(t, err)
	e, err := m.Next(0.5, 1)
	require.NoError(t, err)
	assert.Equal(t, 0.5, e.Value)
}

func TestChancesAtOneAndBesideALimit(t *testing.T) {
	c, err := Within(0, 1).Chances(Estimate{U: 1, Dof: math.Inf(1)})
	require.NoError(t, err)
	assert.InEpsilon(t, 0.6826894921370859, c.Within, 1e-12)
	c, err = Within(0, 1).Chances(Estimate{Value: 0.5, U: 1e-300, Dof: 3})
	require.NoError(t, err)
	assert.Equal(t, Chances{Within: 1}, c, "beyond all numbers, but inside")
}

// A ratio is one division, so that lengths that are shares of each other give it whole.
func TestRatioIsOneDivision(t *testing.T) {
	for commanded := 1.; commanded < 200; commanded++ {
		s, err := ScaleOf(commanded, Measured{Length: 3 * commanded, Repeats: 1})
		require.NoError(t, err)
		assert.Equal(t, 3., s.Ratio.Value, commanded)
	}
}

func TestScaleTooSmallForItsFactor(t *testing.T) {
	assert.ErrorIs(t, Scale{Ratio: Estimate{Value: 5e-324, Dof: 1}}.Check(), ErrNotFinite)
	assert.NoError(t, Scale{Ratio: Estimate{Value: 1e-100, Dof: 1}}.Check())
}

func TestNothingToCorrectIsNotSignificant(t *testing.T) {
	assert.False(t, Scale{Ratio: Estimate{Value: 1, Dof: 1}}.Significant())
	assert.True(t, Scale{Ratio: Estimate{Value: 1.001, Dof: 1}}.Significant())
}

// Of a line two degrees of freedom are gone, whichever of its two values is sought.
func TestExpectedDofOfALine(t *testing.T) {
	for _, zero := range []bool{false, true} {
		e, err := Test{Commanded: 0.5, Scatter: 0.01}.Expect(Design{Places: []float64{0.5, 1}, Repeats: 3, Zero: zero})
		require.NoError(t, err)
		assert.InEpsilon(t, 4, e.Dof, 1e-12)
	}
}

func TestTwoMeansOfHalfAMillimetre(t *testing.T) {
	mark := Repeated{Readings: Series{0.5}, With: caliper}
	m, err := TwoMeans{Mark: mark, Remaining: Repeated{Readings: Series{0}, With: caliper}}.Measure()
	require.NoError(t, err)
	assert.Equal(t, 0.5, m.Length)
	_, err = TwoMeans{Mark: mark, Remaining: Repeated{Readings: Series{-0.1}, With: caliper}}.Measure()
	assert.ErrorIs(t, err, ErrLength)
	_, err = TwoMeans{Mark: mark, Remaining: mark}.Measure()
	assert.ErrorIs(t, err, ErrNothingMoved)
}

// Readings that differ by less than a square can hold have no spread to speak of.
func TestGrubbsOfTheSmallest(t *testing.T) {
	_, err := Grubbs(Series{0, 1e-200, 2e-200}, 0.05)
	assert.ErrorIs(t, err, ErrNoSpread)
}

func TestSlipOfHalfAMillimetre(t *testing.T) {
	test := SlipTest{Commanded: 0.5, Alpha: 0.999, Runs: []SpeedRun{{1, 0.5}, {2, 0.49}, {3, 0.51}, {0.5, 0.5}}}
	_, err := test.Solve()
	assert.NoError(t, err)
	test.Alpha = 1
	_, err = test.Solve()
	assert.ErrorIs(t, err, ErrProbability)
}

// What is just at the end of what is refused.
func TestRefusedAtTheEnd(t *testing.T) {
	_, err := ScaleAndOffset([]Point{{1, 0}, {2, 2}, {3, 3}}, Instrument{})
	assert.ErrorIs(t, err, ErrLength)
	_, err = SlipTest{Commanded: 100, Runs: []SpeedRun{{0, 99}, {1, 99}, {2, 98}}}.Solve()
	assert.ErrorIs(t, err, ErrLength)
	assert.Empty(t, Instrument{Resolution: 1}.limits(Accuracy, Certificate), "nothing is stated")
}

// A line that rises as x does is turned round like any other.
func TestInverseOfTheSame(t *testing.T) {
	l, err := Fit([]Point{{1, 1}, {2, 2}, {4, 4}})
	require.NoError(t, err)
	x, err := l.Inverse(3)
	require.NoError(t, err)
	assert.InEpsilon(t, 3, x.Value, 1e-14)
}

// As near to the tolerance as half of it is near enough to call either fine.
func TestNearEnough(t *testing.T) {
	at := func(u float64) Verdict {
		s := Scale{Ratio: Estimate{Value: 1.005, U: u * 0.005 / 1.959963984540054, Dof: math.Inf(1)}, Runs: maxRuns, Test: Test{Commanded: 100, Length: 100.5, Runs: maxRuns}}
		j, err := s.Judge(0.005)
		require.NoError(t, err)
		return j.Verdict
	}
	assert.Equal(t, EitherIsFine, at(0.4))
	assert.Equal(t, EitherIsFine, at(0.49))
	assert.Equal(t, MeasureMore, at(0.51))
}
