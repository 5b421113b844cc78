package measure

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func draw(t *testing.T, value float64, b Budget, of func(float64) float64, draws int) Drawn {
	t.Helper()
	m, err := NewMonteCarlo(value, b, of, draws, 7)
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

// Each distribution alone has an interval that is known.
func TestMonteCarloShapes(t *testing.T) {
	check := func(c Component, half float64) {
		t.Helper()
		d := draw(t, 10, Budget{c}, nil, 400_000)
		assert.InDelta(t, 10-half, d.Low, 0.02*half)
		assert.InDelta(t, 10+half, d.High, 0.02*half)
	}
	inf := math.Inf(1)
	check(Component{U: 2, Dof: inf, Shape: Normal}, 2*normal95)
	check(Component{U: 2, Dof: inf, Shape: Rectangular}, 2*math.Sqrt(3)*0.95)
	check(Component{U: 2, Dof: 2, Shape: ScaledT}, 2*k95(2))
	check(Component{U: 2, Dof: 3.5, Shape: ScaledT}, 2*k95(3.5))
	check(Component{U: 2, Dof: inf, Shape: ScaledT}, 2*normal95)
	both := draw(t, 10, Budget{{U: 3, Dof: inf}, {U: 0, Dof: 1, Shape: ScaledT}, {U: 4, Dof: inf}}, nil, 400_000)
	assert.InDelta(t, 10+5*normal95, both.High, 0.1)
}

func TestMonteCarloOfAResult(t *testing.T) {
	s := heron(t)
	b := s.Test.Budget()
	length := draw(t, s.Test.Length, b, nil, 200_000)
	c := draw(t, s.Test.Length, b, func(l float64) float64 { return 80 / l }, 200_000)
	assert.InEpsilon(t, 80/length.High, c.Low, 1e-4)
	assert.InEpsilon(t, 80/length.Low, c.High, 1e-4)
	assert.Greater(t, length.High-length.Low, 2*s.Test.Budget().Estimate(0).Expanded(), "few runs: wider than JCGM 100 has it")
	again := draw(t, s.Test.Length, b, nil, 200_000)
	assert.Equal(t, length, again, "the same seed, the same lots")
}

func TestMonteCarloEdges(t *testing.T) {
	some := Budget{{U: 1, Dof: 3, Shape: ScaledT}}
	fails := func(want error, value float64, b Budget, draws int) {
		t.Helper()
		_, err := NewMonteCarlo(value, b, nil, draws, 1)
		assert.ErrorIs(t, err, want)
	}
	fails(ErrNotFinite, math.NaN(), some, 100)
	fails(ErrNotFinite, 1, Budget{{U: math.NaN()}}, 100)
	fails(ErrNothingToDraw, 1, Budget{}, 100)
	fails(ErrNothingToDraw, 1, some, 0)
	fails(ErrUncertainty, 1, Budget{{U: 1, Shape: ScaledT}}, 100)
	fails(ErrUncertainty, 1, Budget{{U: -1, Dof: 1}}, 100)

	m, err := NewMonteCarlo(1, some, nil, 100, 1)
	require.NoError(t, err)
	m.Step(39)
	_, err = m.Result()
	assert.ErrorIs(t, err, ErrTooFew)
	m.Step(1)
	d, err := m.Result()
	require.NoError(t, err)
	assert.Equal(t, 40, d.Draws)
	assert.True(t, m.Step(1000))
	assert.True(t, m.Step(1), "no more than were asked for")
	d, err = m.Result()
	require.NoError(t, err)
	assert.Equal(t, 100, d.Draws)

	m, err = NewMonteCarlo(1, some, func(float64) float64 { return math.NaN() }, 100, 1)
	require.NoError(t, err)
	m.Step(100)
	_, err = m.Result()
	assert.ErrorIs(t, err, ErrRange)
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

func TestValidate(t *testing.T) {
	check := func(u float64, digits int, want float64) {
		t.Helper()
		assert.InEpsilon(t, want, Drawn{}.Validate(Estimate{U: u}, 0, 0, digits).Tolerance, 1e-12)
	}
	check(0.00025, 2, 5e-6) // 25·10⁻⁵
	check(0.00025, 1, 5e-5)
	check(0.0996, 2, 5e-3) // 10·10⁻²: rounded up into another power
	check(0.0994, 2, 5e-4)
	check(0.96, 1, 0.5)
	check(1, 1, 0.5)
	check(12, 2, 0.5)
	assert.Zero(t, Drawn{}.Validate(Estimate{}, 0, 0, 2).Tolerance)
	assert.Zero(t, Drawn{}.Validate(Estimate{U: 1}, 0, 0, 0).Tolerance)
	v := Drawn{Low: 1, High: 3}.Validate(Estimate{U: 1}, 1.25, 2.5, 1)
	assert.Equal(t, Validation{0.5, 0.25, 0.5, true}, v)
	assert.False(t, Drawn{Low: 1, High: 3}.Validate(Estimate{U: 1}, 1.25, 2.4, 1).Validated)
	assert.False(t, Drawn{Low: 1, High: 3}.Validate(Estimate{U: 1}, 1.75, 3, 1).Validated)
}
