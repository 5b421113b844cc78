package drive

import (
	"math"
	"testing"

	"striderule/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestBead(t *testing.T) {
	// 0.2·(0.45 − 0.2) + π·0.04/4, by hand.
	assert.InEpsilon(t, 0.0814159265359, BeadArea(0.45, 0.2), 1e-12)
	assert.InEpsilon(t, 0.0429203673205, float64(Rounding(0.2)), 1e-12)
	// As wide as it is high, it is round.
	assert.InEpsilon(t, math.Pi/4*0.3*0.3, BeadArea(0.3, 0.3), 1e-12)
	rapid.Check(t, func(t *rapid.T) {
		h := rapid.Float64Range(0.05, 1).Draw(t, "layer")
		w := h * rapid.Float64Range(1, 20).Draw(t, "width over layer")
		require.InEpsilon(t, h*(w-h)+math.Pi*h*h/4, BeadArea(unit.Length(w), unit.Length(h)), 1e-12)
	})
}

func TestFilamentMass(t *testing.T) {
	// 1 m of 1.75 mm: 2.405282 cm³, of 1.24 g/cm³ 2.982549 g.
	assert.InEpsilon(t, 2.982549525, float64(FilamentMass(1000, 1.75, 1.24)), 1e-9)
}
