package unit

import (
	"math"
	"strconv"
	"strings"
)

// Digits writes v with the given number of significant digits, zeros kept:
// Digits(80, 4) is "80.00". It uses no exponent for what people meet here
// (1e-6 to 1e15). v must be finite; digits 1 to 17.
func Digits(v float64, digits int) string { return Shown(PlainDigits(v, digits)) }

// PlainDigits is Digits with the point in every language, for a link or a machine.
func PlainDigits(v float64, digits int) string {
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
func Trim(v float64, digits int) string { return Shown(PlainTrim(v, digits)) }

// PlainTrim is Trim with the point in every language.
func PlainTrim(v float64, digits int) string {
	s := PlainDigits(v, digits)
	mantissa, exponent := s, ""
	if e := strings.IndexByte(s, 'e'); e >= 0 {
		mantissa, exponent = s[:e], s[e:]
	}
	if strings.ContainsRune(mantissa, '.') {
		mantissa = strings.TrimRight(strings.TrimRight(mantissa, "0"), ".")
	}
	return mantissa + exponent
}

// Measured writes a value with its expanded uncertainty, both to the digits
// that the uncertainty supports: its own two significant ones.
// Measured(564.3357, 2.632) is "564.3" and "2.6". u must be above 0, both
// finite. Source: JCGM 100, 7.2.6.
func Measured(v, u float64) (value, uncertainty string) {
	value, uncertainty = PlainMeasured(v, u)
	return Shown(value), Shown(uncertainty)
}

// PlainMeasured is Measured with the point in every language.
func PlainMeasured(v, u float64) (value, uncertainty string) {
	e := strconv.FormatFloat(u, 'e', 1, 64) // rounds, so 0.0996 counts as 0.10
	power, _ := strconv.Atoi(e[strings.IndexByte(e, 'e')+1:])
	decimals := 1 - power
	if decimals < 0 { // 5640 ± 260
		step := math.Pow(10, float64(-decimals))
		return strconv.FormatFloat(math.Round(v/step)*step, 'f', 0, 64), strconv.FormatFloat(math.Round(u/step)*step, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'f', decimals, 64), strconv.FormatFloat(u, 'f', decimals, 64)
}

// Shown is a number as the language writes it.
func Shown(number string) string {
	if decimalMark != "." {
		number = strings.Replace(number, ".", decimalMark, 1)
	}
	return number
}

// Plain is a number that was written for people, with the point.
func Plain(number string) string {
	if decimalMark != "." {
		number = strings.Replace(number, decimalMark, ".", 1)
	}
	return number
}

// Whole is Full as people read it.
func Whole(v float64) string { return Shown(shortest(v)) }

// Full writes v with as many digits as it takes to read back the same value, with the point in
// every language.
func Full(v float64) string { return shortest(v) }

// Finite reports whether v can be shown at all.
func Finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
