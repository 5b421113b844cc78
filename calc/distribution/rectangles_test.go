package distribution

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	_ "striderule/calc/calctest/cases"
)

func sidesOf(sides ...float64) Rectangles {
	r, _ := RectanglesOf(sides)
	return r
}

// P(Σ > x), worked out apart from this code: the densities were folded one after the other as
// polynomials of fractions.
func TestRectanglesBeyond(t *testing.T) {
	check := func(x, want float64, sides ...float64) {
		t.Helper()
		r := sidesOf(sides...)
		got, density := r.Beyond(x)
		assert.InEpsilon(t, want, got, 1e-9)
		h := 1e-4 * sides[0]
		less, _ := r.Beyond(x)
		more, _ := r.Beyond(x + h)
		_, then := r.Beyond(x + h)
		assert.InDelta(t, (less-more)/h, (density+then)/2, 2e-4/sides[0], "the density is its slope")
	}
	check(0, 1./2, 1)
	check(0.5, 1./4, 1)
	check(0.999, 1./2000, 1)
	check(0, 1./2, 1, 1)
	check(0.3, 289./800, 1, 1)
	check(1.9, 1./800, 1, 1)
	check(0.1, 9./20, 1, 0.25)
	check(0.75, 1./8, 1, 0.25)
	check(0.8, 81./800, 1, 0.25)
	check(1.2, 1./800, 0.25, 1)
	check(0, 1./2, 3, 2, 1)
	check(1, 97./288, 1, 3, 2)
	check(2.5, 79./576, 3, 2, 1)
	check(4.5, 3./256, 3, 2, 1)
	check(5.99, 1./288_000_000, 3, 2, 1)
	check(0.05, 19./40, 1, 0.9, 0.002)
	check(1, 607_501./5_400_000, 1, 0.9, 0.002)
	check(1.897, 31./21_600_000, 1, 0.9, 0.002)
	check(0.01, 99./200, 1, 0.5, 0.25, 0.125)
	check(0.5, 389./1536, 1, 0.5, 0.25, 0.125)
	check(1.2, 445_519./15_360_000, 1, 0.5, 0.25, 0.125)
	check(1.8, 27./5_120_000, 1, 0.5, 0.25, 0.125)
	check(0.5, 2077./6144, 1, 1, 1, 1)
	check(2, 1./24, 1, 1, 1, 1)
	check(3.9, 1./3_840_000, 1, 1, 1, 1)
	for _, sides := range [][]float64{{1}, {1, 1}, {3, 2, 1}, {1, 0.5, 0.25, 0.125}} {
		r := sidesOf(sides...)
		most := 0.0
		for _, a := range sides {
			most += a
		}
		for _, x := range []float64{most, most * 1.1} {
			p, density := r.Beyond(x)
			assert.Zero(t, p)
			if len(sides) > 1 {
				assert.Zero(t, density)
			}
		}
	}
}

// The half-widths that are missed with q, found by bisecting the same fractions.
func TestRectanglesHalfWidth(t *testing.T) {
	qs := []float64{0.9, 0.3173, 0.05, 0.01, 1e-6}
	check := func(sides []float64, want ...float64) {
		t.Helper()
		r := sidesOf(sides...)
		for i, q := range qs {
			assert.InEpsilon(t, want[i], r.HalfWidth(q), 1e-11, "%v of %v", q, sides)
		}
		assert.Zero(t, r.HalfWidth(1))
	}
	check([]float64{1}, 0.1, 0.6827, 0.95, 0.99, 0.999999)
	check([]float64{1, 1}, 0.1026334038989724, 0.8734122315593871, 1.552786404500042, 1.8, 1.998)
	check([]float64{0.25, 1}, 0.1, 0.6827, 1.026393202250021, 1.15, 1.249)
	check([]float64{0.5, 0.2, 0.05}, 0.05, 0.3449125381212226, 0.5615562689513654, 0.6437268566128862, 0.7450675758513391)
	check([]float64{3, 1, 2}, 0.3005656879988192, 2.301506593177099, 4.06902123078874, 4.870756765342766, 5.947585172115822)
	check([]float64{1, 0.9, 0.002}, 0.1000001852366446, 0.8312256240596584, 1.475737502639384, 1.710266854064276, 1.898491178714145)
	check([]float64{1, 0.5, 0.25, 0.125}, 0.1, 0.7196496784317836, 1.227909749138318, 1.456021584934955, 1.833382085497122)
	check([]float64{1, 1, 1, 1}, 0.1504133759092799, 1.186328341661013, 2.239776526413213, 2.822867617446915, 3.882286761744692)
	check([]float64{0.025, 0.025, 0.05}, 0.0050083752799174, 0.03771002636617914, 0.06652835249589152, 0.08042566179415568, 0.09909143970358393)
	// As the formulas of one and of two equal ones have it.
	one, two := sidesOf(0.3), sidesOf(0.3, 0.3)
	for _, q := range qs {
		assert.InEpsilon(t, 0.3*(1-q), one.HalfWidth(q), 1e-12)
		assert.InEpsilon(t, 0.6*(1-math.Sqrt(q)), two.HalfWidth(q), 1e-12)
	}
	none := sidesOf()
	assert.Zero(t, none.HalfWidth(0.05))
}

// What is left out is so small that nobody sees it, and what is one too many is not lost.
func TestRectanglesLeftOut(t *testing.T) {
	r, rest := RectanglesOf([]float64{5e-4, 1, 0})
	assert.Equal(t, Rectangles{1}, r)
	assert.Zero(t, rest)
	r, rest = RectanglesOf([]float64{0.3, 1, 0.1, 2, 0.6})
	assert.Equal(t, Rectangles{2, 1, 0.6, 0.3}, r)
	assert.InEpsilon(t, 0.1*0.1/3, rest, 1e-14)
	assert.Equal(t, 4, r.count())
	// Twice 0.001 beside 1 and 0.9 widen by (0.001/0.9)² at most: their share of the squares.
	with, without := sidesOf(1, 0.9, 0.001001), sidesOf(1, 0.9, 0.000999)
	assert.Equal(t, []int{3, 2}, []int{with.count(), without.count()})
	for _, q := range []float64{0.5, 0.05, 0.01} {
		assert.InEpsilon(t, without.HalfWidth(q), with.HalfWidth(q), 2e-6)
	}
}

func genSides(t *rapid.T) []float64 {
	return rapid.SliceOfN(rapid.Float64Range(0.002, 1), 1, mostSides).Draw(t, "sides")
}

func TestRectanglesLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sides := genSides(t)
		r := sidesOf(sides...)
		most := 0.0
		for _, a := range r {
			most += a
		}
		q := math.Exp(rapid.Float64Range(-12, -0.02).Draw(t, "ln q"))
		x := r.HalfWidth(q)
		assert.True(t, x >= 0 && x <= most)
		p, _ := r.Beyond(x)
		assert.InEpsilon(t, q/2, p, 1e-7, "missed with q")
		assert.LessOrEqual(t, x, r.HalfWidth(q/2))
		factor := rapid.Float64Range(1e-6, 1e6).Draw(t, "factor")
		for i := range sides {
			sides[i] *= factor
		}
		larger := sidesOf(sides...)
		assert.InEpsilon(t, x*factor, larger.HalfWidth(q), 1e-7, "in any unit")
	})
}
