package simulation

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	_ "striderule/calc/calctest/cases"
	"striderule/calc/distribution"
	"striderule/calc/measure"
)

func drawn(t *testing.T, value float64, b measure.Budget, of func(float64) float64, draws int) Drawn {
	t.Helper()
	m, err := New(value, b, of, draws, 7)
	require.NoError(t, err)
	assert.Zero(t, m.Progress())
	assert.False(t, m.Step(100))
	assert.InEpsilon(t, 100/float64(draws), m.Progress(), 1e-12)
	for !m.Step(draws / 3) {
	}
	assert.Equal(t, 1.0, m.Progress())
	d, err := m.Result()
	require.NoError(t, err)
	assert.Equal(t, draws, d.Draws)
	return d
}

// heron is 80 mm commanded of which 76.27 mm were fed, in three runs.
func heron(t testing.TB) measure.Test {
	t.Helper()
	caliper, _ := measure.InstrumentOf("caliper-0.05")
	m, err := measure.MarkTest{Marks: measure.Series{105}, Remaining: measure.Series{28.7, 28.9, 28.6}, With: caliper}.Measure()
	require.NoError(t, err)
	return m.Test
}

// Each distribution alone has an interval that is known.
func TestMonteCarloShapes(t *testing.T) {
	check := func(c measure.Component, half float64) {
		t.Helper()
		d := drawn(t, 10, measure.Budget{c}, nil, 400_000)
		assert.InDelta(t, 10-half, d.Low, 0.02*half)
		assert.InDelta(t, 10+half, d.High, 0.02*half)
	}
	inf := math.Inf(1)
	check(measure.Component{U: 2, Dof: inf, Shape: measure.Normal}, 2*1.959963984540054)
	check(measure.Component{U: 2, Dof: inf, Shape: measure.Rectangular}, 2*math.Sqrt(3)*0.95)
	check(measure.Component{U: 2, Dof: 2, Shape: measure.ScaledT}, 2*distribution.Span(0.05, 2))
	check(measure.Component{U: 2, Dof: 3.5, Shape: measure.ScaledT}, 2*distribution.Span(0.05, 3.5))
	check(measure.Component{U: 2, Dof: inf, Shape: measure.ScaledT}, 2*1.959963984540054)
	both := drawn(t, 10, measure.Budget{{U: 3, Dof: inf}, {U: 0, Dof: 1, Shape: measure.ScaledT}, {U: 4, Dof: inf}}, nil, 400_000)
	assert.InDelta(t, 10+5*1.959963984540054, both.High, 0.1)
}

func TestMonteCarloOfAResult(t *testing.T) {
	s := heron(t)
	b := s.Budget()
	length := drawn(t, s.Length, b, nil, 200_000)
	c := drawn(t, s.Length, b, func(l float64) float64 { return 80 / l }, 200_000)
	assert.InEpsilon(t, 80/length.High, c.Low, 1e-4)
	assert.InEpsilon(t, 80/length.Low, c.High, 1e-4)
	assert.Greater(t, length.High-length.Low, 2*s.Budget().Estimate(0).Expanded(), "few runs: wider than JCGM 100 has it")
	again := drawn(t, s.Length, b, nil, 200_000)
	assert.Equal(t, length, again, "the same seed, the same lots")
}

func TestMonteCarloEdges(t *testing.T) {
	some := measure.Budget{{U: 1, Dof: 3, Shape: measure.ScaledT}}
	fails := func(want error, value float64, b measure.Budget, draws int) {
		t.Helper()
		_, err := New(value, b, nil, draws, 1)
		assert.ErrorIs(t, err, want)
	}
	fails(measure.ErrNotFinite, math.NaN(), some, 100)
	fails(measure.ErrNotFinite, 1, measure.Budget{{U: math.NaN()}}, 100)
	fails(ErrNothingToDraw, 1, measure.Budget{}, 100)
	fails(ErrNothingToDraw, 1, some, 0)
	_, err := New(0, measure.Budget{{U: 1, Dof: 3}}, func(v float64) float64 { return v }, 1, 1)
	assert.NoError(t, err, "one is a draw")
	fails(measure.ErrUncertainty, 1, measure.Budget{{U: 1, Shape: measure.ScaledT}}, 100)
	fails(measure.ErrUncertainty, 1, measure.Budget{{U: -1, Dof: 1}}, 100)

	m, err := New(1, some, nil, 100, 1)
	require.NoError(t, err)
	m.Step(39)
	_, err = m.Result()
	assert.ErrorIs(t, err, measure.ErrTooFew)
	m.Step(1)
	d, err := m.Result()
	require.NoError(t, err)
	assert.Equal(t, 40, d.Draws)
	assert.True(t, m.Step(1000))
	assert.True(t, m.Step(1), "no more than were asked for")
	d, err = m.Result()
	require.NoError(t, err)
	assert.Equal(t, 100, d.Draws)

	m, err = New(1, some, func(float64) float64 { return math.NaN() }, 100, 1)
	require.NoError(t, err)
	m.Step(100)
	_, err = m.Result()
	assert.ErrorIs(t, err, measure.ErrRange)
}

// JCGM 101, 7.7.2: of 100 draws 95 are covered, from the third smallest on; of
// 40 draws 38, from the first.
func TestMonteCarloCounts(t *testing.T) {
	check := func(n, low, high int) {
		t.Helper()
		m := MonteCarlo{want: n}
		for _, i := range rand.New(rand.NewPCG(1, 2)).Perm(n) {
			m.drawn = append(m.drawn, float64(i+1))
		}
		d, err := m.Result()
		require.NoError(t, err)
		assert.Equal(t, Drawn{n, float64(low), float64(high)}, d)
	}
	check(40, 1, 39)
	check(100, 3, 98)
	check(1000, 25, 975)
}

func TestNth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		values := rapid.SliceOfN(rapid.Float64Range(0, 5), 1, 60).Draw(t, "values")
		for i := range values {
			if rapid.Bool().Draw(t, "round") {
				values[i] = math.Round(values[i]) // equal ones
			}
		}
		i := rapid.IntRange(0, len(values)-1).Draw(t, "i")
		sorted := slices.Sorted(slices.Values(values))
		assert.Equal(t, sorted[i], nth(values, i))
		assert.Equal(t, sorted, slices.Sorted(slices.Values(values)), "none is lost")
	})
}

// What is no number is counted at the end of what was drawn, not left out.
func TestMonteCarloCountsWhatIsNoNumber(t *testing.T) {
	m, err := New(0, measure.Budget{{U: 1, Dof: math.Inf(1)}}, func(v float64) float64 {
		if v > 0 {
			return math.NaN()
		}
		return v
	}, 1000, 1)
	require.NoError(t, err)
	for !m.Step(100) {
	}
	_, err = m.Result()
	assert.ErrorIs(t, err, measure.ErrRange)
}

// What is no number is counted above all others: that leaves both ends where they are.
func TestMonteCarloKeepsItsEnds(t *testing.T) {
	ends := func(of func(v float64) float64) Drawn {
		m, err := New(0, measure.Budget{{U: 1, Dof: math.Inf(1)}}, of, 10_000, 1)
		require.NoError(t, err)
		for !m.Step(1000) {
		}
		d, err := m.Result()
		require.NoError(t, err)
		return d
	}
	all := ends(func(v float64) float64 { return v })
	assert.Equal(t, all, ends(func(v float64) float64 {
		if v > 2.5 {
			return math.NaN()
		}
		return v
	}))
}

func scatter(u, dof float64) measure.Component {
	return measure.Component{U: u, Dof: dof, TypeA: true, Shape: measure.ScaledT}
}

func even(a float64) measure.Component {
	return measure.Component{U: a / math.Sqrt(3), Dof: math.Inf(1), Shape: measure.Rectangular}
}

func normal(u float64) measure.Component { return measure.Component{U: u, Dof: math.Inf(1)} }

// Drawing lots from the same distributions gives an interval that is hardly wider: by 3.4 % at
// most, where one rectangle is twice the scatter of seven runs, as worked out by integration.
func TestIntervalHoldsWhatLotsShow(t *testing.T) {
	least := scatter(0.001, 1)
	least.Least = 0.1
	for i, b := range []measure.Budget{
		{least, even(0.05)},
		{scatter(0.1, 1), even(0.3)},
		{scatter(0.1, 2), even(0.1), even(0.1)},
		{scatter(0.1, 2), even(0.5)},
		{scatter(0.1, 3), even(0.2), even(0.1), normal(0.05)},
		{scatter(0.1, 4), even(0.25)},
		{scatter(0.1, 6), even(0.2)},
		{scatter(0.05, 9), even(0.05), even(0.05), even(0.1)},
		{scatter(0, 2), even(0.05), even(0.05), even(0.1)},
	} {
		m, err := New(0, b, nil, 200_000, 11)
		require.NoError(t, err)
		for !m.Step(200_000) {
		}
		d, err := m.Result()
		require.NoError(t, err)
		wide := b.Estimate(0).HalfWidth()
		assert.LessOrEqual(t, (d.High-d.Low)/2, wide*1.04, "budget %d", i)
		assert.GreaterOrEqual(t, (d.High-d.Low)/2, wide*0.8, "budget %d: nor is it far too wide", i)
	}
}

// BenchmarkMonteCarlo is 10,000 draws: a slice of a page's 200,000.
func BenchmarkMonteCarlo(b *testing.B) {
	s := heron(b)
	for b.Loop() {
		m, err := New(s.Length, s.Budget(), nil, 10_000, 1)
		if err != nil {
			b.Fatal(err)
		}
		m.Step(10_000)
		if _, err := m.Result(); err != nil {
			b.Fatal(err)
		}
	}
}
