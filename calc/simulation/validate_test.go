package simulation

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/measure"
)

func TestValidate(t *testing.T) {
	check := func(u float64, digits int, want float64) {
		t.Helper()
		assert.InEpsilon(t, want, Drawn{}.Validate(measure.Estimate{U: u}, 0, 0, digits).Tolerance, 1e-12)
	}
	check(0.00025, 2, 5e-6) // 25·10⁻⁵
	check(0.00025, 1, 5e-5)
	check(0.0996, 2, 5e-3) // 10·10⁻²: rounded up into another power
	check(0.0994, 2, 5e-4)
	check(0.96, 1, 0.5)
	check(1, 1, 0.5)
	check(12, 2, 0.5)
	assert.Zero(t, Drawn{}.Validate(measure.Estimate{}, 0, 0, 2).Tolerance)
	assert.Zero(t, Drawn{}.Validate(measure.Estimate{U: 1}, 0, 0, 0).Tolerance)
	v := Drawn{Low: 1, High: 3}.Validate(measure.Estimate{U: 1}, 1.25, 2.5, 1)
	assert.Equal(t, Validation{0.5, 0.25, 0.5, true}, v)
	assert.False(t, Drawn{Low: 1, High: 3}.Validate(measure.Estimate{U: 1}, 1.25, 2.4, 1).Validated)
	assert.False(t, Drawn{Low: 1, High: 3}.Validate(measure.Estimate{U: 1}, 1.75, 3, 1).Validated)
}

// 4/(4−2) is 2, and 3/(3−2) is 3: a scatter of four readings, with three degrees of freedom, is
// the least that has a standard deviation, however small it is.
func TestSpread(t *testing.T) {
	scatter := func(u, dof float64) measure.Component {
		return measure.Component{U: u, Dof: dof, Shape: measure.ScaledT}
	}
	check := func(want float64, b measure.Budget) {
		t.Helper()
		u, ok := Spread(b)
		require.True(t, ok)
		assert.InDelta(t, want, u, 1e-14*want)
	}
	check(math.Sqrt(9*2+4), measure.Budget{scatter(3, 4), {U: 2, Dof: math.Inf(1)}})
	check(3*math.Sqrt(3), measure.Budget{scatter(3, 3)})
	check(0.5*math.Sqrt2, measure.Budget{scatter(0.5, 4)})
	check(0, measure.Budget{scatter(0, 1)})
	for _, u := range []float64{3, 0.5} {
		_, ok := Spread(measure.Budget{scatter(u, 2)})
		assert.False(t, ok)
	}
}
