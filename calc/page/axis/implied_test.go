package axis

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/unit"
)

func TestNearestLead(t *testing.T) {
	for lead, want := range map[float64]float64{
		4: 4, 3.996: 4, 8.03: 8, 1.24: 1.25, 2.49: 2.5, 0.79: 0.8, 0.02: 0.5, 12.7: 13, 1.11: 1, 1.13: 1.25, 25.4: 25, 999.6: 1000,
	} {
		assert.Equal(t, want, nearestLead(lead), "%v", lead)
	}
	for _, usual := range []float64{0.5, 0.7, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 4} {
		assert.Equal(t, usual, nearestLead(usual))
	}
}

func TestNearOnlyWhereAPartCanBeMeant(t *testing.T) {
	near := func(value, nearest float64, whole bool) bool {
		return Implied{Value: value, Nearest: nearest, whole: whole}.near()
	}
	assert.True(t, near(17.98, 18, true))
	assert.False(t, near(17.8, 18, true), "1.1 % off")
	assert.True(t, near(90.2, 90, true))
	assert.True(t, near(50.25, 50, true))
	assert.False(t, near(math.Nextafter(50.25, 51), 50, true))
	assert.False(t, near(90.4, 90, true), "of large counts some whole one is always near")
	assert.True(t, near(8.05, 8, false))
	assert.False(t, near(12.7, 13, false))
}

// Where no part can be, none is named; what somebody typed as a part is taken for one.
func TestNoPartOfAHandfulOfTeeth(t *testing.T) {
	belt := NewOutputEntry()
	require.NoError(t, belt.Pitch.Entry().Set("2"))
	says := func(perTurn float64) string { return belt.Implied(perTurn).Says() }
	for _, perTurn := range []float64{0.1, 2, 6, 14.6} {
		assert.Contains(t, says(perTurn), "No such pulley exists: its tooth count would be "+unit.Trim(perTurn/2, 3)+". Check", perTurn)
	}
	assert.Equal(t, "A pulley with 5 teeth gives exactly this setting.", says(10))
	assert.Contains(t, says(15.9), "The nearest real part is a pulley with 8 teeth.")
	assert.Contains(t, ImpliedGear(0.1, 20).Says(), "No such gear exists: its tooth count would be 2. Check")
	assert.Contains(t, ImpliedGear(90.1125, 1).Says(), "a gear pair of 1 → 90 teeth. Your setting calls for a part 0.12% larger. That's close enough")
}
