package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A line that its points miss by rounding alone is known exactly: what rounding leaves must
// not pass for a scatter.
func TestRoundingIsNoScatter(t *testing.T) {
	rounded := 0
	for slope := 0.1; slope < 9; slope += 0.7 {
		for at := 0.3; at < 9; at += 0.9 {
			var points []Point
			test := SlipTest{Commanded: 100}
			for x := 1.0; x <= 5; x++ {
				points = append(points, Point{x, at + slope*x})
				test.Runs = append(test.Runs, SpeedRun{x, 100 - (at+slope*x)/100})
			}
			l, err := Fit(points)
			require.NoError(t, err)
			for i, p := range points {
				if p.Y != l.MeanY && l.Residual(i) != 0 {
					rounded++
				}
			}
			assert.Zero(t, l.SSE, "%v + %v·x", at, slope)
			assert.Zero(t, l.ResidualSD, "%v + %v·x", at, slope)
			r, err := test.Solve()
			require.NoError(t, err)
			assert.Zero(t, r.Line.SSE, "errors are differences of lengths: %v + %v·v", at, slope)
			assert.Zero(t, r.Line.ResidualSD, "%v + %v·v", at, slope)
		}
	}
	assert.Greater(t, rounded, 100, "else this shows nothing")
}

func TestProbabilityWithoutFreedom(t *testing.T) {
	assert.Zero(t, Estimate{Value: 1, U: 0.5}.P(0), "no degrees of freedom: nothing is left to chance")
	assert.Equal(t, 1.0, Estimate{Value: 1, U: 0.5}.P(1))
}

// Digits that all readings share cost none of the spread's.
func TestSpreadFarFromZero(t *testing.T) {
	near, _ := Series{0.25, 0.5, 1}.Spread()
	far, _ := Series{1e8 + 0.25, 1e8 + 0.5, 1e8 + 1}.Spread()
	assert.InDelta(t, near, far, 1e-9)
}

func TestMayHideAtCrawlingSpeeds(t *testing.T) {
	test := SlipTest{Commanded: 100, Runs: []SpeedRun{{0.1, 100.3}, {0.2, 99.7}, {0.3, 100.2}, {0.4, 99.8}, {0.5, 100.1}}}
	r, err := test.Solve()
	require.NoError(t, err)
	low, _ := r.Line.SlopeEstimate().Interval()
	require.Negative(t, low)
	_, hides := r.MayHide(-low * 0.7)
	assert.False(t, hides, "at 0.5 it is half of that")
	_, hides = r.MayHide(-low * 0.4)
	assert.True(t, hides)
}

// What is not finite is told before what is too small.
func TestSlipNotFiniteComesFirst(t *testing.T) {
	for _, test := range []SlipTest{
		{Commanded: math.NaN(), Runs: []SpeedRun{{1, -1}}},
		{Commanded: 100, Common: Budget{{U: math.NaN()}}, Runs: []SpeedRun{{1, -1}}},
	} {
		_, err := test.Solve()
		assert.ErrorIs(t, err, ErrNotFinite)
	}
}

// Fifty runs would not settle this one, which lies 0.00061 off the tolerance: they would have to
// be known to 0.000613 with their level of 0.055/50. Fifty-one would, to 0.000608.
func TestNobodyIsAskedForMoreThanFiftyRuns(t *testing.T) {
	const tolerance = 0.005
	at := func(error float64) Scale {
		return Scale{Ratio: Estimate{Value: 1 + error, U: 0.0006, Dof: 4}, Floor: 0.0001, Runs: 5, Test: Test{Commanded: 100, Length: 100 * (1 + error), Runs: 5}}
	}
	largest := func(runs int) float64 { // error that so many runs settle
		low, high := 0.0, tolerance
		for range 60 {
			if mid := (low + high) / 2; at(mid).withRuns(runs).settled(tolerance) == MeasureMore {
				high = mid
			} else {
				low = mid
			}
		}
		return low
	}
	fifty, more := largest(maxRuns), largest(maxRuns+1)
	require.Less(t, fifty, more)
	s := at((fifty + more) / 2)
	require.True(t, s.near(tolerance))
	j, err := s.Judge(tolerance)
	require.NoError(t, err)
	assert.Equal(t, EitherIsFine, j.Verdict)
	j, err = at(fifty * (1 - 1e-9)).Judge(tolerance)
	require.NoError(t, err)
	assert.Equal(t, MeasureMore, j.Verdict)
}
