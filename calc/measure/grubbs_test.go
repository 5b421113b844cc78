package measure

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1: isotopic
// ratios of uranium by mass spectrometry, G = 2.4687, critical 2.1266 one
// wants at α = 0.05 on both sides.
func ExampleGrubbs() {
	p, _ := Grubbs(Series{199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57}, 0.05)
	fmt.Printf("%v: G %.4f, critical %.4f, found %v\n", p.Value, p.G, p.Critical, p.Found)
	// Output: 245.57: G 2.4688, critical 2.1266, found true
}

func TestGrubbs(t *testing.T) {
	fails := func(want error, alpha float64, s ...float64) {
		t.Helper()
		p, err := Grubbs(s, alpha)
		assert.ErrorIs(t, err, want)
		assert.Zero(t, p)
	}
	fails(ErrNoReading, 0.05)
	fails(ErrTooFew, 0.05, 1, 2)
	fails(ErrNoSpread, 0.05, 2, 2, 2)
	fails(ErrNotFinite, 0.05, 2, 2, math.NaN())
	for _, alpha := range []float64{0, 1, -1, math.NaN()} {
		fails(ErrProbability, alpha, 1, 2, 3)
	}
	fails(ErrRange, 1e-320, 1, 2, 3)

	two, err := Grubbs(Series{1, 1.1, 0.9, 1, 9, 9}, 0.05)
	require.NoError(t, err)
	assert.False(t, two.Found, "two equal outliers hide each other")
	tie, err := Grubbs(Series{3, 1, 2}, 0.05)
	require.NoError(t, err)
	assert.Equal(t, 0, tie.Index, "the first of equals")
	assert.Equal(t, 1.5, tie.MeanWithout)
	low, err := Grubbs(Series{9.9, 10, 10.1, 10, 5}, 0.05)
	require.NoError(t, err)
	assert.True(t, low.Found)
	assert.Equal(t, 4, low.Index)
	assert.InDelta(t, 10, low.MeanWithout, 1e-12)
	assert.InDelta(t, math.Sqrt(0.02/3), low.SpreadWithout, 1e-12)
}
