package drive

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/calc/unit"
)

// Only the first power of π occurs in a machine; the others must still be right.
func TestPowersOfPi(t *testing.T) {
	check := func(pi int, want float64) {
		t.Helper()
		assert.InEpsilon(t, want, exact{3, 2, pi}.value(), 1e-15)
	}
	check(0, 1.5)
	check(1, 1.5*math.Pi)
	check(-1, 1.5/math.Pi)
	check(2, 1.5*math.Pi*math.Pi)
	check(-2, 1.5/math.Pi/math.Pi)
}

func TestProductsAddPowers(t *testing.T) {
	a, b := exact{3, 2, 1}, exact{5, 7, 1}
	assert.Equal(t, exact{15, 14, 2}, a.times(b))
	assert.Equal(t, exact{21, 10, 0}, a.over(b))
}

// π enters by one division, so that nothing is rounded twice.
func TestDiameterIsRoundedOnce(t *testing.T) {
	for travel := 1.; travel < 200; travel++ {
		assert.Equal(t, unit.Length(travel/math.Pi), EffectiveDiameter(travel))
	}
}
