package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/distribution"
)

// t₁ and t₄ of 95 %: JCGM 100, Table G.2, with more digits.
const (
	t1 = 12.706204736174707
	t4 = 2.7764451051977987
)

func measured(t *testing.T, e Evidence) Measured {
	t.Helper()
	m, err := e.Measure()
	require.NoError(t, err)
	return m
}

func judged(t *testing.T, commanded float64, e Evidence) (Scale, Verdict) {
	t.Helper()
	s, err := ScaleOf(commanded, measured(t, e))
	require.NoError(t, err)
	j, err := s.Judge(0.005)
	require.NoError(t, err)
	return s, j.Verdict
}

// Two runs are not taken to scatter by less than the rounding of a reading, d/√12, √2 of it
// where they are differences. The Guide's figures do not know of that.
func TestTwoRunsScatterByAStepAtLeast(t *testing.T) {
	d := 0.05
	least, side := d/math.Sqrt(12), 0.95*d/2
	near := measured(t, Repeated{Readings: Series{80, 80.02}, With: Instrument{Resolution: d}})
	assert.InEpsilon(t, math.Hypot(t1*least/math.Sqrt2, side), near.Estimate().HalfWidth(), 1e-9)
	assert.InEpsilon(t, math.Hypot(0.01, least), near.Estimate().U, 1e-9)
	equal := measured(t, Repeated{Readings: Series{80, 80}, With: Instrument{Resolution: d}})
	assert.InEpsilon(t, near.Estimate().HalfWidth(), equal.Estimate().HalfWidth(), 1e-12)
	apart := measured(t, Repeated{Readings: Series{80, 80.1}, With: Instrument{Resolution: d}})
	assert.InEpsilon(t, math.Hypot(t1*0.05, side), apart.Estimate().HalfWidth(), 1e-9, "they scatter by more of themselves")

	two := d * (1 - math.Sqrt(0.05)) // of two steps
	marked := measured(t, MarkTest{Marks: Series{105}, Remaining: Series{25, 25.02}, With: Instrument{Resolution: d}})
	assert.InEpsilon(t, math.Hypot(t1*least*math.Sqrt2/math.Sqrt2, two), marked.Estimate().HalfWidth(), 1e-9)

	three := measured(t, Repeated{Readings: Series{80, 80, 80}, With: Instrument{Resolution: d}})
	assert.InEpsilon(t, side, three.Estimate().HalfWidth(), 1e-12, "three equal ones say more")

	// So is the band for the run that confirms.
	band, err := equal.Next(80, 1)
	require.NoError(t, err)
	assert.InEpsilon(t, math.Hypot(t1*least*math.Sqrt(1.5), two), band.HalfWidth(), 1e-9)
}

// Lines through three and four readings are held to the same.
func TestShortLinesScatterByAStepAtLeast(t *testing.T) {
	with := Instrument{Resolution: 0.1}
	least := 0.1 / math.Sqrt(12)
	a, err := ScaleAndOffset([]Point{{20, 20}, {100, 100}, {180, 180}}, with)
	require.NoError(t, err)
	sxx := 2 * 80.0 * 80
	assert.InEpsilon(t, least/math.Sqrt(sxx)*math.Hypot(t1, 1.959963984540054), a.Scale.Ratio.HalfWidth(), 1e-9)
	lever := math.Sqrt(1./3 + 100*100/sxx)
	assert.InEpsilon(t, least*math.Hypot(t1*lever, 1.959963984540054*max(1, lever)), a.Offset.HalfWidth(), 1e-9)
	five, err := ScaleAndOffset([]Point{{20, 20}, {20, 20}, {100, 100}, {180, 180}, {180, 180}}, with)
	require.NoError(t, err)
	assert.InEpsilon(t, least/math.Sqrt(sxx)*1.959963984540054, five.Scale.Ratio.HalfWidth(), 1e-9, "five are not")

	// About the middle of positions the offset is known to a step, not to a mean of several.
	positions, err := ScaleOfPositions([]Point{{-80, -80}, {-80, -80}, {0, 0}, {80, 80}, {80, 80}}, with)
	require.NoError(t, err)
	assert.InEpsilon(t, least*1.959963984540054, positions.Offset.HalfWidth(), 1e-9)
}

// What is the same on paper is the same: differences and lengths of mixed units have no scatter.
func TestNoiseIsNeverScatter(t *testing.T) {
	inch := 25.4
	mixed := Series{99.06, 3.9 * inch, 9.906 * 10}
	require.False(t, mixed.Equal(), "else this shows nothing")
	for _, e := range []Evidence{
		Repeated{Readings: mixed},
		Repeated{Readings: mixed[:2]},
		MarkTest{Marks: Series{120.1, 120.4, 120.2}, Remaining: Series{20.5, 20.8, 20.6}},
		MarkTest{Marks: Series{120.1, 120.5, 120.2}, Remaining: Series{20.4, 20.8, 20.5}, With: caliper},
	} {
		m := measured(t, e)
		assert.True(t, m.Runs.Equal())
		assert.Zero(t, m.Scatter)
		assert.Contains(t, m.Warnings, WarnAllEqual)
		assert.Equal(t, math.Inf(1), m.Estimate().Dof)
	}
	_, verdict := judged(t, 100, Repeated{Readings: mixed})
	assert.Equal(t, MeasureMore, verdict, "nothing is known of them")

	less := func(mark, remaining float64) float64 { return mark - remaining } // not as constants, which are exact
	differences := []Point{
		{20, less(120.1, 100)}, {20, less(120.4, 100.3)}, {60, less(160.1, 100)}, {60, less(160.4, 100.3)}, {100, less(200.3, 100)}, {100, less(200.6, 100.3)},
	}
	require.NotEqual(t, differences[0].Y, differences[1].Y, "else this shows nothing")
	a, err := ScaleAndOffset(differences, Instrument{})
	require.NoError(t, err)
	assert.False(t, a.HasLack)
	assert.Equal(t, []Warning{WarnRepeatsEqual}, a.Warnings)

	r, err := Bidirectional([]Target{{0, Series{0.1, 0.1}, Series{0, 0}}, {99, mixed, mixed}}, caliper)
	require.NoError(t, err)
	assert.Equal(t, []float64{0, 0}, r.SForward)
	assert.Equal(t, math.Inf(1), r.MeanReversal.Dof)

	real := measured(t, Repeated{Readings: Series{99.06, 99.061, 99.06}})
	assert.Positive(t, real.Scatter, "a micrometre is no noise")
}

// Two equal runs show nothing of how runs scatter, whatever they are read with; one does
// neither.
func TestVerdictsOfFewRuns(t *testing.T) {
	fine := Instrument{Resolution: 0.01}
	judge := func(earlier Spread, readings ...float64) Verdict {
		t.Helper()
		_, verdict := judged(t, 100, Repeated{Readings: readings, With: fine, Earlier: earlier})
		return verdict
	}
	none := Spread{}
	assert.Equal(t, MeasureMore, judge(none, 90))
	assert.Equal(t, MeasureMore, judge(none, 90, 90))
	assert.Equal(t, ChangeIt, judge(none, 90, 90.1))
	assert.Equal(t, ChangeIt, judge(none, 90, 90, 90))
	assert.Equal(t, ChangeIt, judge(Spread{0.1, 1}, 90, 90))
	assert.Equal(t, MeasureMore, judge(Spread{0.1, 3}, 90))
	assert.Equal(t, ChangeIt, judge(Spread{0.1, 4}, 90))
	assert.Equal(t, LeaveIt, judge(Spread{0.1, 4}, 100))
	assert.Equal(t, ChangeIt, judge(Spread{0, 4}, 90), "earlier runs that were all equal")
}

// Pooled by hand: three runs with squares of 0.02, five before with a deviation of 0.3.
func TestPooledScatter(t *testing.T) {
	m := measured(t, Repeated{Readings: Series{80, 80.1, 80.2}, Earlier: Spread{0.3, 4}})
	pooled := math.Sqrt((0.02 + 4*0.09) / 6)
	require.Len(t, m.Budget, 2)
	assert.InEpsilon(t, pooled/math.Sqrt(3), m.Budget[0].U, 1e-9)
	assert.Equal(t, 6.0, m.Budget[0].Dof)
	assert.InEpsilon(t, 0.1, m.Scatter, 1e-9, "their own")
	assert.InEpsilon(t, pooled, m.Test.Shown().SD, 1e-9)
	assert.Equal(t, 6.0, m.Test.Shown().Dof)
	assert.True(t, m.Test.Known())

	one := measured(t, Repeated{Readings: Series{80}, With: caliper, Earlier: Spread{0.3, 4}})
	assert.Equal(t, Spread{0.3, 4}, one.Test.Shown())
	assert.InEpsilon(t, math.Hypot(t4*0.3, 0.95*0.025), one.Estimate().HalfWidth(), 1e-9, "the placing is in it")
	band, err := one.Next(80, 1)
	require.NoError(t, err)
	assert.InEpsilon(t, math.Hypot(t4*0.3*math.Sqrt2, 0.05*(1-math.Sqrt(0.05))), band.HalfWidth(), 1e-9)

	little := measured(t, Repeated{Readings: Series{80}, With: caliper, Earlier: Spread{0.3, 3}})
	assert.False(t, little.Test.Known())
	assert.Equal(t, Spread{}, little.Test.Shown())
	assert.Equal(t, Placement, little.Budget[0].ID)
	set := measured(t, MarkTest{Marks: Series{105}, Remaining: Series{25}, With: caliper, Earlier: Spread{0.3, 9}})
	assert.Equal(t, Spread{0.3, 9}, set.Test.Shown())
}

// A scatter of half a step or more lets the readings fall on several lines, so that endless
// runs would tell: the floor has no step then.
func TestFloorWithoutSteps(t *testing.T) {
	rule := Instrument{Resolution: 1, Accuracy: 0.1}
	floor := func(with Instrument, f float64, readings ...float64) float64 {
		t.Helper()
		s := make(Series, len(readings))
		for i, x := range readings {
			s[i] = x * f
		}
		with.Resolution *= f
		with.Accuracy *= f
		got, _ := judged(t, 100*f, Repeated{Readings: s, With: with})
		return got.Floor * 100
	}
	both, _ := distribution.RectanglesOf([]float64{0.5, 0.1})
	for _, f := range []float64{1, 25.4, 1 / 25.4, 0.1, 1. / 3} { // that the scatter is just a half must not hang on the last bit
		assert.InEpsilon(t, 0.095, floor(rule, f, 100, 100, 100, 101), 1e-9)
		assert.InEpsilon(t, 0.095, floor(rule, f, 99, 100, 101), 1e-9)
		assert.InEpsilon(t, both.HalfWidth(0.05), floor(rule, f, 100, 100, 100, 100, 101), 1e-9)
	}
	assert.InEpsilon(t, both.HalfWidth(0.05), floor(rule, 1, 100), 1e-9, "one run scatters by nothing that is known")
	fine := Instrument{Resolution: 0.1}
	m := MarkTest{Marks: Series{120}, Remaining: Series{20, 20, 20, 20, 21}, With: fine, RemainingWith: &rule}
	s, _ := judged(t, 100, m)
	assert.Greater(t, s.Floor*100, 0.3, "the coarser of two tools counts")
}

// Two readings that lie closer than the lines of their tool show no scatter, like equal ones.
func TestTwoRunsCloserThanAStep(t *testing.T) {
	verdict := func(readings ...float64) Verdict {
		m, err := Repeated{Readings: readings, With: Instrument{Resolution: 0.05}}.Measure()
		require.NoError(t, err)
		s, err := ScaleOf(80, m)
		require.NoError(t, err)
		s.Plan = 2
		return s.Verdict(0.005)
	}
	assert.Equal(t, MeasureMore, verdict(90, 90))
	assert.Equal(t, MeasureMore, verdict(90, 90.02))
	assert.Equal(t, ChangeIt, verdict(90, 90.05))
}

// Runs that scatter far more than those before are not made certain by them.
func TestWilderRuns(t *testing.T) {
	wild := Test{Runs: 3, Scatter: 1, Earlier: Spread{SD: 0.01, Dof: 100}}
	assert.True(t, wild.Wilder())
	assert.Equal(t, Spread{1, 2}, wild.Shown(), "theirs alone")
	tame := Test{Runs: 3, Scatter: 0.015, Earlier: Spread{SD: 0.01, Dof: 100}}
	assert.False(t, tame.Wilder())
	assert.InEpsilon(t, 102, tame.Shown().Dof, 1e-12)
	assert.False(t, Test{Runs: 1, Earlier: Spread{SD: 0.01, Dof: 100}}.Wilder(), "one run shows none")
	m, err := Repeated{Readings: Series{79, 80, 81}, Earlier: Spread{SD: 0.01, Dof: 100}}.Measure()
	require.NoError(t, err)
	assert.Contains(t, m.Warnings, WarnWilder)
}

// The same reading once more never widens what is known, nor takes a verdict back.
func TestEqualReadingsStayAsKnown(t *testing.T) {
	wide := math.Inf(1)
	for n := 3; n <= 50; n++ {
		var readings Series
		for range n {
			readings = append(readings, 80.26)
		}
		m, err := Repeated{Readings: readings, With: Instrument{Resolution: 0.1, Accuracy: 0.1}}.Measure()
		require.NoError(t, err)
		s, err := ScaleOf(80, m)
		require.NoError(t, err)
		assert.LessOrEqual(t, s.Ratio.HalfWidth(), wide)
		wide = s.Ratio.HalfWidth()
	}
}
