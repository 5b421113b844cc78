package measure

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"striderule/calc/distribution"
)

// JCGM 100:2008, G.4.1, example: three relative components of 0.25 %, 0.57 %
// and 0.82 %, from 10, 5 and 15 readings.
func ExampleBudget_Estimate() {
	e := Budget{{U: 0.25, Dof: 9}, {U: 0.57, Dof: 4}, {U: 0.82, Dof: 14}}.Estimate(0)
	fmt.Printf("u %.2f %%, dof %.1f, t %.2f, U %.1f %%\n", e.U, e.Dof, e.K(), e.Expanded())
	// Output: u 1.03 %, dof 19.0, t 2.09, U 2.2 %
}

// NIST StRD, univariate summary statistics, NumAcc1: mean 10000002, s 1.
func ExampleSeries() {
	s := Series{10000001, 10000003, 10000002}
	spread, _ := s.Spread()
	fmt.Println(s.Mean(), spread)
	// Output: 1.0000002e+07 1
}

func component(t *rapid.T, label string) Component {
	return Component{
		U:     rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(1e-6, 10)).Draw(t, label+" u"),
		Dof:   rapid.OneOf(rapid.Float64Range(1, 60), rapid.Just(math.Inf(1))).Draw(t, label+" dof"),
		Fixed: rapid.Bool().Draw(t, label+" fixed"),
	}
}

func TestBudgetLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var b Budget
		for i := range rapid.IntRange(1, 6).Draw(t, "n") {
			b = append(b, component(t, fmt.Sprint(i)))
		}
		more := append(append(Budget{}, b...), component(t, "more"))
		assert.GreaterOrEqual(t, more.Combined(), b.Combined()*(1-1e-15), "a component never lowers u")
		assert.LessOrEqual(t, b.Fixed().Combined(), b.Combined()*(1+1e-15))
		least, most := math.Inf(1), 0.0
		for _, c := range b {
			if c.U > 0 {
				least, most = min(least, c.Dof), most+c.Dof
			}
		}
		assert.GreaterOrEqual(t, b.Dof(), least*(1-1e-12), "no fewer than the fewest")
		if most > 0 {
			assert.LessOrEqual(t, b.Dof(), most*(1+1e-9), "no more than all together")
		}
		f := rapid.Float64Range(-100, 100).Draw(t, "factor")
		e, s := b.Estimate(3), b.Scaled(f).Estimate(3*f)
		assert.InDelta(t, e.U*math.Abs(f), s.U, 1e-9)
		assert.Equal(t, 3*f, s.Value)
		if f != 0 && e.U > 1e-100 {
			assert.InEpsilon(t, 1/e.Dof+1, 1/s.Dof+1, 1e-9, "degrees of freedom have no scale")
		}
		low, high := e.Interval()
		assert.InDelta(t, 6, low+high, 1e-9)
		assert.GreaterOrEqual(t, high-low, 2*1.959963984540054*e.U*(1-1e-9))
		sorted := b.BySize()
		for i := 1; i < len(sorted); i++ {
			assert.GreaterOrEqual(t, sorted[i-1].U, sorted[i].U)
		}
		assert.InDelta(t, b.Combined(), sorted.Combined(), 1e-12)
	})
}

func TestBudgetEdges(t *testing.T) {
	none := Budget{}.Estimate(5)
	assert.Equal(t, []float64{5, 0, math.Inf(1)}, []float64{none.Value, none.U, none.Dof})
	assert.Zero(t, none.Expanded())
	assert.Zero(t, none.HalfWidth())
	assert.True(t, math.IsInf(Budget{{U: 0, Dof: 2}}.Dof(), 1))
	assert.Equal(t, 7.0, Budget{{U: 1e-200, Dof: 7}}.Dof(), "no underflow of the fourth powers")
	assert.InEpsilon(t, distribution.Span(0.05, 1), Estimate{U: 1, Dof: 1.9}.KTruncated(), 1e-15)
	assert.InEpsilon(t, distribution.Span(0.05, 1), Estimate{U: 1, Dof: 0.9}.KTruncated(), 1e-15)
	assert.Equal(t, Estimate{Value: -6, U: 4, Dof: 3}, Estimate{Value: 3, U: 2, Dof: 3}.Scaled(-2))
	assert.NoError(t, Estimate{U: 1, Dof: math.Inf(1)}.Check())
	assert.ErrorIs(t, Estimate{U: -1, Dof: 1}.Check(), ErrUncertainty)
	assert.ErrorIs(t, Estimate{U: 1, Dof: 0}.Check(), ErrUncertainty)
	assert.ErrorIs(t, Estimate{U: 1, Dof: math.NaN()}.Check(), ErrUncertainty)
	assert.ErrorIs(t, Estimate{Value: math.NaN(), Dof: 1}.Check(), ErrNotFinite)
}

func TestSeries(t *testing.T) {
	assert.Zero(t, Series{}.Mean())
	_, ok := Series{3}.Spread()
	assert.False(t, ok)
	s, ok := Series{0.1, 0.1, 0.1}.Spread()
	assert.True(t, ok)
	assert.Zero(t, s)
	assert.True(t, Series{2, 2}.Equal())
	assert.False(t, Series{2, 2, 2.1}.Equal())
	assert.ErrorIs(t, Series{}.Check(), ErrNoReading)
	assert.ErrorIs(t, Series{1, math.NaN()}.Check(), ErrNotFinite)
	assert.Equal(t, 4.0, Series{1, -4, 3}.longest())
	given := Series{1, 2, 3}
	assert.Equal(t, Series{1, 3}, given.without(1))
	assert.Equal(t, Series{1, 2, 3}, given, "the caller's series is left alone")

	assert.Equal(t, 1.25, Correction(100, 80))
	assert.Zero(t, Correction(100, 0))
	assert.InDelta(t, -0.2, Error(100, 80), 1e-15)
	assert.Zero(t, Error(0, 80))
}
