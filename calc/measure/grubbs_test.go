package measure

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
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

// What the statistic finds by arithmetic alone, of rounded readings, is not pointed out.
func TestStandsOut(t *testing.T) {
	found := func(half float64, s ...float64) bool {
		t.Helper()
		p, err := StandsOut(s, half)
		require.NoError(t, err)
		return p.Found
	}
	ties, err := Grubbs(Series{28.7, 28.7, 28.8}, 0.05)
	require.NoError(t, err)
	require.True(t, ties.Found, "two equal ones of three, whatever the third")
	assert.False(t, found(0.05, 28.7, 28.7, 28.8))
	assert.False(t, found(0.05, 28.7, 28.7, 28.9))
	assert.False(t, found(0.05, 28.7, 28.7, 28.7, 28.8))
	assert.True(t, found(0.05, 28.7, 28.7, 28.7, 28.7, 30.5))
	// By hand: 0.35 from four equal ones that may differ by 0.1 in squares is just too little.
	assert.False(t, found(0.05, 28.7, 28.7, 28.7, 28.7, 29.15))
	assert.True(t, found(0.05, 28.7, 28.7, 28.7, 28.7, 29.2))
	for n, s := range map[int]Series{
		5:  {28.7, 28.8, 28.6, 28.7, 25.7},
		6:  {28.7, 28.8, 28.6, 28.7, 28.9, 26.7},
		7:  {28.7, 28.8, 28.6, 28.7, 28.9, 28.6, 27.2},
		8:  {28.7, 28.8, 28.6, 28.7, 28.9, 28.6, 28.5, 27.2},
		10: {28.7, 28.8, 28.6, 28.7, 28.9, 28.6, 28.5, 28.8, 28.7, 27.5},
	} {
		p, err := StandsOut(s, 0.05)
		require.NoError(t, err)
		assert.True(t, p.Found, "of %d", n)
		assert.Equal(t, len(s)-1, p.Index)
	}
	_, err = StandsOut(Series{1, 1, 1}, 0.05)
	assert.ErrorIs(t, err, ErrNoSpread)
}

// What stands out would be found whatever the readings were before they were rounded.
func TestStandsOutBeforeRounding(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		half := rapid.SampledFrom([]float64{0.005, 0.05, 0.5}).Draw(t, "half")
		n := rapid.IntRange(3, 10).Draw(t, "n")
		s := make(Series, n)
		for i := range s {
			s[i] = 30 + 2*half*float64(rapid.IntRange(-2, 2).Draw(t, "line"))
		}
		s[0] += 2 * half * float64(rapid.IntRange(5, 60).Draw(t, "off"))
		p, err := StandsOut(s, half)
		if err != nil || !p.Found {
			return
		}
		for range 20 {
			before := make(Series, n)
			for i, x := range s {
				before[i] = x + half*rapid.SampledFrom([]float64{-1, 1, rapid.Float64Range(-1, 1).Draw(t, "between")}).Draw(t, "before")
			}
			q, err := Grubbs(before, significance)
			require.NoError(t, err)
			assert.True(t, q.Found, "%v before it was %v", before, s)
			assert.Equal(t, p.Index, q.Index)
		}
	})
}

// Without rounding it is Grubbs.
func TestStandsOutOfExactReadings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Series(rapid.SliceOfN(rapid.Float64Range(29, 31), 3, 10).Draw(t, "readings"))
		s[0] += rapid.Float64Range(-6, 6).Draw(t, "off")
		plain, err := Grubbs(s, significance)
		if err != nil || math.Abs(plain.G-plain.Critical) < 1e-6 {
			return
		}
		p, err := StandsOut(s, 0)
		require.NoError(t, err)
		assert.Equal(t, plain, p)
	})
}
