package unit

import (
	"math"
	"strconv"
	"strings"
)

// Digits writes v with the given number of significant digits, zeros kept:
// Digits(80, 4) is "80.00". It uses no exponent for what people meet here
// (1e-6 to 1e15). v must be finite; digits 1 to 17.
func Digits(v float64, digits int) string {
	if v == 0 {
		return strconv.FormatFloat(0, 'f', digits-1, 64)
	}
	e := strconv.FormatFloat(v, 'e', digits-1, 64) // rounds, so 9.999 counts as 10.0
	mark := strings.IndexByte(e, 'e')
	power, _ := strconv.Atoi(e[mark+1:])
	if power < -6 || power >= 15 {
		return e
	}
	rounded, _ := strconv.ParseFloat(e, 64)
	return strconv.FormatFloat(rounded, 'f', max(0, digits-1-power), 64)
}

// Trim writes v with at most the given number of significant digits, without
// zeros at the end: Trim(80, 7) is "80".
func Trim(v float64, digits int) string {
	s := Digits(v, digits)
	mantissa, exponent := s, ""
	if e := strings.IndexByte(s, 'e'); e >= 0 {
		mantissa, exponent = s[:e], s[e:]
	}
	if strings.ContainsRune(mantissa, '.') {
		mantissa = strings.TrimRight(strings.TrimRight(mantissa, "0"), ".")
	}
	return mantissa + exponent
}

// Full writes v with as many digits as it takes to read back the same value.
func Full(v float64) string { return shortest(v) }

// Finite reports whether v can be shown at all.
func Finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
