package measure

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"striderule/calc/distribution"
)

// part makes components for the tests: a scatter of some degrees of freedom, the half-width of
// what is evenly spread, a standard uncertainty of what is known and normal.
func scatterPart(u, dof float64) Component {
	return Component{ID: Scatter, U: u, Dof: dof, TypeA: true, Shape: ScaledT}
}

func evenPart(a float64) Component {
	return Component{ID: Accuracy, U: a / math.Sqrt(3), Dof: math.Inf(1), Fixed: true, Shape: Rectangular}
}

func normalPart(u float64) Component {
	return Component{ID: Certificate, U: u, Dof: math.Inf(1), Fixed: true}
}

// The half-widths that are missed with 10, 5 and 1 %, worked out apart from this code with 30
// digits: Student's t by bisecting the incomplete beta function, the rectangles by bisecting
// their folded polynomials. From four degrees of freedom on the Guide's is taken where it is
// the wider one, marked G.
func TestIntervalDigits(t *testing.T) {
	check := func(b Budget, want ...float64) {
		t.Helper()
		e := b.Estimate(7)
		for i, q := range []float64{0.1, 0.05, 0.01} {
			assert.InEpsilon(t, want[i], e.halfWidth(q), 1e-9, "missed with %v", q)
			assert.InEpsilon(t, q, e.missed(want[i]), 1e-9)
		}
		assert.Equal(t, e.halfWidth(1-Sure), e.HalfWidth())
		low, high := e.Interval()
		assert.InDelta(t, 7-want[1], low, 1e-9)
		assert.InDelta(t, 7+want[1], high, 1e-9)
	}
	check(Budget{scatterPart(0.1, 1), evenPart(0.05)}, 0.6329767625202, 1.271508017268, 6.365866571392)
	check(Budget{scatterPart(0.1, 1)}, 0.6313751514675, 1.270620473617, 6.365674116287)
	check(Budget{scatterPart(0.08819171036881969, 2), evenPart(0.025), evenPart(0.025)}, 0.2597780796057, 0.3814388155391, 0.8764448945977)
	check(Budget{evenPart(0.5), scatterPart(0.3, 2), evenPart(0.5), evenPart(0.4)}, 1.171970124005, 1.57745464732, 3.178170814195)
	check(Budget{scatterPart(0.001, 3), evenPart(1), evenPart(0.0015)}, 0.9000030768389, 0.9500053304927, 0.990017230265)
	check(Budget{scatterPart(0.05, 4), evenPart(0.025), evenPart(0.05), normalPart(0.02)}, 0.1233492692168, 0.1559214348273, 0.2454842610629)
	check(Budget{scatterPart(0.04, 4), evenPart(0.1)}, 0.1239823904939, 0.1461466245778, 0.209086832046)
	check(Budget{scatterPart(0.005, 4), evenPart(0.05), evenPart(0.05), evenPart(0.05), evenPart(0.05)}, 0.09593011078273, 0.1135840299904, 0.1492761631765) // G, at 5 and 1 %
	check(Budget{scatterPart(0.04, 5), evenPart(0.1)}, 0.1208166872373, 0.1412580636067 /* G */, 0.1892460918057)
	check(Budget{scatterPart(0.1, 5), evenPart(0.01)}, 0.201705724928, 0.2572336675807, 0.4033358159132)
	check(Budget{scatterPart(0.02, 9), evenPart(0.05), evenPart(0.05), evenPart(0.05), evenPart(0.05)}, 0.1021424891822, 0.1207826114652, 0.1577698208659 /* G */)
	check(Budget{scatterPart(0.02, 49), evenPart(0.03), evenPart(0.01), normalPart(0.01)}, 0.04769057427175, 0.05690309896543, 0.07503081599863) // G
	check(Budget{scatterPart(0, 2), evenPart(0.025), evenPart(0.025), evenPart(0.05)}, 0.05782836673491, 0.06652835249589, 0.08042566179416)
	check(Budget{scatterPart(0, 5), evenPart(0.025), evenPart(0.05)}, 0.052639320225, 0.05918861169916, 0.06792893218813) // no scatter shows: never G
	check(Budget{evenPart(0.5), evenPart(0.3), normalPart(0.1)}, 0.578910248394, 0.6883167303059 /* G */, 0.9046015222881 /* G */)
	check(Budget{normalPart(0.1)}, 0.1644853626951, 0.195996398454, 0.2575829303549)
	check(Budget{scatterPart(0.03, 1), evenPart(0.05), evenPart(0.02), scatterPart(0.04, 2)}, 0.1279921298152, 0.1689138615693, 0.2998137710232)
}

// Scatters of one and four degrees of freedom, with squares of 2 to 3, have four together,
// whatever rounding makes of it: those of five runs.
func TestIntervalOfCombinedScatters(t *testing.T) {
	below := 0
	for i := range 40 {
		u := 0.1 + 0.017*float64(i)
		b := Budget{evenPart(8 * u), scatterPart(u*math.Sqrt2, 1), scatterPart(u*math.Sqrt(3), 4)}
		e := b.Estimate(0)
		if e.doubts.Dof < manyRuns {
			below++
		}
		assert.InEpsilon(t, e.Expanded(), e.HalfWidth(), 1e-12, "the Guide's is the wider one")
	}
	assert.Positive(t, below, "else this shows nothing")
}

// A fifth even part is taken for normal, which is mostly a little more than it is.
func TestIntervalOfFiveEvenParts(t *testing.T) {
	five := []Component{evenPart(0.5), evenPart(0.4), evenPart(0.3), evenPart(0.2), evenPart(0.1)}
	for scatter, exact := range map[float64][]float64{ // by the fold of all five
		0.3: {1.125955612937, 1.531331509517, 3.14832310941},
		0:   {0.7073949542169, 0.8239067580049, 1.023089571149},
	} {
		e := append(Budget{scatterPart(scatter, 2)}, five...).Estimate(0)
		for i, q := range []float64{0.1, 0.05, 0.01} {
			assert.GreaterOrEqual(t, e.halfWidth(q), exact[i]*(1-2e-3))
			assert.InEpsilon(t, exact[i], e.halfWidth(q), 0.02)
		}
	}
}

// Where nothing is said of how it came about, all of an uncertainty is scatter.
func TestIntervalOfABareUncertainty(t *testing.T) {
	for _, dof := range []float64{1, 2.5, 5, 40, math.Inf(1)} {
		e := Estimate{Value: 3, U: 0.2, Dof: dof}
		assert.InEpsilon(t, e.Expanded(), e.HalfWidth(), 1e-14)
		assert.InEpsilon(t, distribution.Missed(1.7, dof), e.missed(0.34), 1e-12)
	}
	e := Estimate{Value: 3, Dof: 2}
	assert.Zero(t, e.HalfWidth())
	assert.Equal(t, 1.0, e.missed(0.1))
	far := Budget{scatterPart(0.1, 2), evenPart(1)}.Estimate(0)
	assert.Equal(t, 1.0, far.missed(0))
	assert.Zero(t, far.missed(math.Inf(1)))
}

// The least that a scatter is taken for is in the interval, not in the Guide's figures.
func TestIntervalTakesTheLeastScatter(t *testing.T) {
	c := scatterPart(0.01, 1)
	c.Least = 0.03
	e := Budget{c, evenPart(0.05)}.Estimate(0)
	assert.InEpsilon(t, math.Hypot(0.03*12.706204736174707, 0.95*0.05), e.HalfWidth(), 1e-9)
	assert.InEpsilon(t, math.Hypot(0.01, 0.05/math.Sqrt(3)), e.U, 1e-14)
	double := e.Scaled(-2)
	assert.InEpsilon(t, 2*e.HalfWidth(), double.HalfWidth(), 1e-12)
	assert.InEpsilon(t, 2*e.HalfWidth(), Budget{c, evenPart(0.05)}.Scaled(-2).Estimate(0).HalfWidth(), 1e-12)
	c.U = 0.04
	assert.InEpsilon(t, math.Hypot(0.04*12.706204736174707, 0.95*0.05), Budget{c, evenPart(0.05)}.Estimate(0).HalfWidth(), 1e-9)
}

// genBudget is a scatter, mostly, and up to five parts of a tool.
func genBudget(t *rapid.T) Budget {
	var b Budget
	if rapid.IntRange(0, 5).Draw(t, "scatter") > 0 {
		u := rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(1e-3, 1)).Draw(t, "s")
		b = append(b, scatterPart(u, float64(rapid.IntRange(1, 12).Draw(t, "dof"))))
	}
	for i := range rapid.IntRange(0, 5).Draw(t, "parts") {
		b = append(b, genPart(t, fmt.Sprint("part ", i)))
	}
	return b
}

func genPart(t *rapid.T, label string) Component {
	size := rapid.Float64Range(1e-4, 1).Draw(t, label)
	if rapid.IntRange(0, 4).Draw(t, label+" is normal") == 0 {
		return normalPart(size)
	}
	return evenPart(size)
}

// What is missed with q is missed with q. The corner sum divides by all its parts, so that
// small ones cost digits that nobody sees.
func TestMissedIsHalfWidthTurnedRound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := genBudget(t).Estimate(0)
		if e.U == 0 {
			return
		}
		digits, sides := 1e-9, e.doubts.Sides
		for _, a := range sides {
			if a > 0 && a < 0.05*sides[0] {
				digits = 1e-6
			}
		}
		q := math.Exp(rapid.Float64Range(-9, -0.01).Draw(t, "ln q"))
		// Where the end of an even part is near, a little wider is missed far less often.
		wide := e.halfWidth(q)
		steep := 0.001 / (1 - e.halfWidth(q*1.001)/wide)
		assert.InEpsilon(t, q, e.missed(wide), digits+2e-12*steep)
		x := e.U * rapid.Float64Range(0.01, 4).Draw(t, "x")
		if q := e.missed(x); q > 1e-6 && q < 1 {
			assert.InEpsilon(t, x, e.halfWidth(q), digits)
		}
	})
}

// To know of one more thing that may be wrong never makes the interval narrower.
func TestIntervalGrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := genBudget(t)
		more := append(b[:len(b):len(b)], genPart(t, "more"))
		e, wider := b.Estimate(0), more.Estimate(0)
		for _, q := range []float64{0.5, 0.32, 0.1, 0.05, 0.02, 0.01, 0.002} {
			assert.GreaterOrEqual(t, wider.halfWidth(q), e.halfWidth(q)*(1-1e-9), "missed with %v", q)
			assert.GreaterOrEqual(t, e.halfWidth(q/2), e.halfWidth(q))
		}
	})
}

// A wider scatter of as many runs never makes it narrower, and the Guide's is a bound from five runs on.
func TestIntervalGrowsWithTheScatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := append(genBudget(t), scatterPart(0, 1))
		dof := float64(rapid.IntRange(1, 12).Draw(t, "degrees of freedom"))
		b = b.Fixed()
		s := rapid.Float64Range(1e-3, 1).Draw(t, "scatter")
		narrow := append(b[:len(b):len(b)], scatterPart(s, dof)).Estimate(0)
		wide := append(b[:len(b):len(b)], scatterPart(s*rapid.Float64Range(1, 3).Draw(t, "times"), dof)).Estimate(0)
		for _, q := range []float64{0.32, 0.05, 0.01} {
			if dof < manyRuns {
				assert.GreaterOrEqual(t, wide.halfWidth(q), narrow.halfWidth(q)*(1-1e-12))
				continue
			}
			assert.GreaterOrEqual(t, narrow.halfWidth(q), narrow.U*distribution.Span(q, narrow.Dof)*(1-1e-12))
		}
	})
}
