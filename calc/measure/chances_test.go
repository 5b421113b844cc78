package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// genScale is a scale of some runs, scatter and tool, with an error of up to twice a tolerance
// of 0.005.
func genScale(t *rapid.T) Scale {
	var b Budget
	n := rapid.IntRange(3, 20).Draw(t, "runs")
	size := rapid.Float64Range(1e-5, 0.004)
	if rapid.IntRange(0, 4).Draw(t, "scatters") > 0 {
		b = append(b, scatterPart(size.Draw(t, "scatter"), float64(n-1)))
	}
	for range rapid.IntRange(0, 3).Draw(t, "parts") {
		b = append(b, evenPart(size.Draw(t, "part")))
	}
	if len(b) == 0 || rapid.Bool().Draw(t, "certified") {
		b = append(b, normalPart(size.Draw(t, "certificate")))
	}
	s := Scale{Ratio: b.Estimate(1 + rapid.Float64Range(-0.01, 0.01).Draw(t, "error")), Runs: n}
	s.Plan = rapid.SampledFrom([]int{0, n, n + 1}).Draw(t, "plan")
	return s
}

// The chances add to 1; a wider tolerance holds no less, and leaves no more beyond it.
func TestChancesOfTheInterval(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := genScale(t)
		tolerance := rapid.Float64Range(1e-4, 0.01).Draw(t, "tolerance")
		c, err := Within(0, tolerance).Chances(s.Error())
		require.NoError(t, err)
		wider, err := Within(0, tolerance*rapid.Float64Range(1, 2).Draw(t, "wider")).Chances(s.Error())
		require.NoError(t, err)
		for _, c := range []Chances{c, wider} {
			assert.InDelta(t, 1, c.Within+c.Above+c.Below, 1e-9)
			for _, p := range []float64{c.Within, c.Above, c.Below} {
				assert.True(t, p >= 0 && p <= 1)
			}
		}
		assert.GreaterOrEqual(t, wider.Within, c.Within-1e-9)
		assert.LessOrEqual(t, wider.Above, c.Above+1e-9)
		assert.LessOrEqual(t, wider.Below, c.Below+1e-9)
		// The interval is what is missed with 5 %.
		low, high := s.Error().Interval()
		outside, err := Limits{low, high}.Chances(s.Error())
		require.NoError(t, err)
		assert.InDelta(t, 0.05, outside.Above+outside.Below, 1e-8)
	})
}

// A verdict is what the chances say at its level.
func TestVerdictsFollowTheChances(t *testing.T) {
	const tolerance = 0.005
	rapid.Check(t, func(t *rapid.T) {
		s := genScale(t)
		c, err := Within(0, tolerance).Chances(s.Error())
		require.NoError(t, err)
		level := map[int]float64{0: 0.055 / float64(s.Runs), s.Runs: 0.05, s.Runs + 1: 0}[s.Plan]
		assert.InDelta(t, level, s.level(), 1e-12)
		for _, p := range []float64{c.Above, c.Below, c.Within + c.Below, c.Within + c.Above} {
			if math.Abs(p-level) < 1e-9 {
				t.Skip("on the edge")
			}
		}
		want := MeasureMore
		switch {
		case level == 0:
		case c.Above <= level && c.Below <= level:
			want = LeaveIt
		case c.Within+c.Below <= level || c.Within+c.Above <= level:
			want = ChangeIt
		}
		assert.Equal(t, want, s.settled(tolerance))
		j, err := s.Judge(tolerance)
		require.NoError(t, err)
		assert.Equal(t, c, j.Chances)
		assert.Equal(t, j.Verdict, s.Verdict(tolerance))
		if want != MeasureMore {
			assert.Equal(t, want, j.Verdict)
		}
	})
}

// One look at n runs may err in 5.5 % over n on one side, at two in 0.5 %, one that was planned
// in 5 %, and none in more.
func TestLevels(t *testing.T) {
	at := func(runs, plan int) float64 { return Scale{Runs: runs, Plan: plan}.level() }
	assert.InDelta(t, 0.005, at(2, 0), 1e-12)
	assert.InDelta(t, 0.05, at(2, 2), 1e-12)
	assert.InDelta(t, 0.055/3, at(3, 0), 1e-12)
	assert.InDelta(t, 0.0011, at(50, 0), 1e-12)
	assert.InDelta(t, 0.05, at(1, 0), 1e-12)
	assert.InDelta(t, 0.05, at(7, 7), 1e-12)
	assert.Zero(t, at(6, 7))
	assert.InDelta(t, 0.006875, at(8, 7), 1e-12, "after a plan, a look is a look")
}

// What is shown of a normal part alone, and of scatter and even parts where nothing else is.
func TestChancesByHand(t *testing.T) {
	c, err := Within(0, 1).Chances(Budget{evenPart(2)}.Estimate(0.5))
	require.NoError(t, err)
	// The Guide's, with its normal distribution, has more beyond −1 than the rectangle.
	assert.InEpsilon(t, max((2-1.5)/4, math.Erfc(1.5/(2/math.Sqrt(3))/math.Sqrt2)/2), c.Below, 1e-9)
	assert.InEpsilon(t, max((2-0.5)/4, math.Erfc(0.5/(2/math.Sqrt(3))/math.Sqrt2)/2), c.Above, 1e-9)
	c, err = Within(0, 1).Chances(Budget{scatterPart(0, 2), evenPart(2)}.Estimate(0.5))
	require.NoError(t, err)
	assert.InEpsilon(t, (2-1.5)/4, c.Below, 1e-12)
	assert.InEpsilon(t, (2-0.5)/4, c.Above, 1e-12)
	assert.InEpsilon(t, 0.5, c.Within, 1e-12)
}
