package unit_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc/unit"
)

func TestDigits(t *testing.T) {
	check := func(v float64, digits int, want string) {
		t.Helper()
		assert.Equal(t, want, unit.Digits(v, digits))
	}
	check(80, 4, "80.00")
	check(-80, 4, "-80.00")
	check(80, 2, "80")
	check(80, 1, "80")
	check(0, 1, "0")
	check(0, 4, "0.000")
	check(math.Copysign(0, -1), 4, "0.000")
	check(123456, 2, "120000")
	check(564.3356643356643, 7, "564.3357")
	check(0.00012345, 3, "0.000123")

	// Ties that binary holds exactly go to the even digit; one ulp decides.
	check(math.Nextafter(2.5, 0), 1, "2")
	check(2.5, 1, "2")
	check(math.Nextafter(2.5, 3), 1, "3")
	check(math.Nextafter(3.5, 0), 1, "3")
	check(3.5, 1, "4")
	// A carry to the next power of ten keeps the number of digits.
	check(math.Nextafter(9.5, 0), 1, "9")
	check(9.5, 1, "10")
	check(math.Nextafter(99.5, 0), 2, "99")
	check(99.5, 2, "100")
	check(math.Nextafter(9.9375, 0), 4, "9.937") // 9.9375 = 9 + 15/16
	check(9.9375, 4, "9.938")
	check(math.Nextafter(0.9995, 0), 3, "0.999") // 0.9995 lies just above the tie
	check(0.9995, 3, "1.00")
	check(math.Nextafter(999.5, 0), 3, "999")
	check(999.5, 3, "1000")

	// No exponent from 1e-6 up to 1e15, after rounding.
	check(1e-6, 3, "0.00000100")
	check(math.Nextafter(1e-6, 0), 3, "0.00000100") // rounds to 1e-6
	check(math.Nextafter(1e-6, 0), 16, "9.999999999999997e-07")
	check(9.99e-7, 3, "9.99e-07")
	check(9.99e14, 3, "999000000000000")
	check(math.Nextafter(1e15, 0), 3, "1.00e+15") // rounds to 1e15
	check(math.Nextafter(1e15, 0), 16, "999999999999999.9")
	check(1e15, 3, "1.00e+15")
}

func TestTrim(t *testing.T) {
	check := func(v float64, digits int, want string) {
		t.Helper()
		assert.Equal(t, want, unit.Trim(v, digits))
	}
	check(80, 7, "80")
	check(80.5, 7, "80.5")
	check(100, 3, "100") // zeros before the mark stay
	check(1200, 2, "1200")
	check(0, 5, "0")
	check(-0.25, 5, "-0.25")
	check(1./3, 4, "0.3333")
	check(2./3, 4, "0.6667")
	check(0.99999995, 7, "0.9999999") // lies just below the tie
	check(math.Nextafter(0.99999995, 1), 7, "1")
	check(1.5e-7, 7, "1.5e-07")
	check(1e-9, 7, "1e-09")
	check(-1.25e20, 5, "-1.25e+20")
}

func TestFull(t *testing.T) {
	check := func(v float64, want string) {
		t.Helper()
		assert.Equal(t, want, unit.Full(v))
	}
	check(0, "0")
	check(0.1, "0.1")
	check(math.Nextafter(0.3, 1), "0.30000000000000004")
	check(564.3356643356643, "564.3356643356643")
	check(1e-6, "0.000001")
	check(math.Nextafter(1e-6, 0), "9.999999999999997e-07")
	check(math.Nextafter(1e15, 0), "999999999999999.9")
	check(1e15, "1e+15")
	check(5e-324, "5e-324")
}

func TestFinite(t *testing.T) {
	assert.True(t, unit.Finite(math.MaxFloat64))
	assert.True(t, unit.Finite(0))
	assert.False(t, unit.Finite(math.NaN()))
	assert.False(t, unit.Finite(math.Inf(1)))
	assert.False(t, unit.Finite(math.Inf(-1)))
}

// Digits rounds as strconv does and only moves the mark.
func TestDigitsProperty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64().Filter(finite).Draw(t, "v")
		if rapid.Bool().Draw(t, "common size") {
			v = rapid.Float64Range(-1e6, 1e6).Draw(t, "v")
		}
		digits := rapid.IntRange(1, 17).Draw(t, "digits")
		want, err := strconv.ParseFloat(strconv.FormatFloat(v, 'e', digits-1, 64), 64)
		if err != nil {
			return // rounded beyond the largest float64
		}
		for _, s := range []string{unit.Digits(v, digits), unit.Trim(v, digits)} {
			got, err := strconv.ParseFloat(s, 64)
			assert.NoError(t, err)
			assert.Equal(t, want, got, s)
		}
		mantissa, _, _ := strings.Cut(unit.Trim(v, digits), "e")
		assert.Falsef(t, strings.Contains(mantissa, ".") && strings.HasSuffix(mantissa, "0"), "zeros left in %s", mantissa)
		if a := math.Abs(v); a >= 1e-6 && a < 9e14 {
			assert.NotContains(t, unit.Digits(v, digits), "e")
		}
		got, err := strconv.ParseFloat(unit.Full(v), 64)
		assert.NoError(t, err)
		assert.Equal(t, v, got)
	})
}

func TestMeasured(t *testing.T) {
	check := func(v, u float64, value, uncertainty string) {
		t.Helper()
		gotV, gotU := unit.Measured(v, u)
		assert.Equal(t, []string{value, uncertainty}, []string{gotV, gotU})
	}
	check(564.3357, 2.632, "564.3", "2.6")
	check(5.670384, 0.02645, "5.670", "0.026")
	check(5643.357, 263.2, "5640", "260")
	check(56433, 2632, "56400", "2600")
	check(564.3357, 26.32, "564", "26")
	check(100, 0.0996, "100.00", "0.10") // rounds up to the next power
	check(100, 9.96, "100", "10")
	check(100, 99.6, "100", "100")
	check(-4.6667, 0.4453, "-4.67", "0.45")
	check(1e-9, 3e-10, "0.00000000100", "0.00000000030")
}

// So that a value can be entered as it is shown.
func TestMeasuredRoundsBelowATenth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, u := rapid.Float64Range(1e-3, 1e6).Draw(t, "v"), rapid.Float64Range(1e-9, 1e3).Draw(t, "u")
		value, _ := unit.Measured(v, u)
		back, err := strconv.ParseFloat(value, 64)
		require.NoError(t, err)
		require.Less(t, math.Abs(back-v), u/10+1e-9*v)
	})
}
