package unit

import (
	"math"
	"strconv"
	"strings"
	"unicode"
)

// A number is what readNumber found at the front of a text.
type number struct {
	value     float64
	thousands float64 // the other reading of "1,000", NaN if there is none
	plain     string  // as typed, with the point as decimal mark and no grouping
	gap       string  // " " if a space stands before the unit
	unit      string  // what follows the number, trimmed
}

// maxText is more than any quantity takes to write.
const maxText = 200 // bytes

// readNumber reads the number that text begins with. Decimal comma and point
// are both read; "1 000", "1'000" and "1,000.5" may group by three; fractions
// ("5/16", "1 5/16") and exponents ("1e-3") are numbers too.
// It reports false if there is no finite number.
func readNumber(text string) (number, bool) {
	n := number{thousands: math.NaN()}
	text = strings.TrimSpace(text)
	if len(text) > maxText {
		return n, false
	}
	digits, rest := cutNumber(text)
	n.unit = strings.TrimSpace(rest)
	if len(n.unit) < len(rest) {
		n.gap = " "
	}
	sign := ""
	switch {
	case strings.HasPrefix(digits, "-"):
		sign, digits = "-", digits[1:]
	case strings.HasPrefix(digits, "+"):
		digits = digits[1:]
	}
	digits = strings.TrimSpace(digits)
	whole, numerator, denominator, isFraction := cutFraction(digits)
	if isFraction {
		return n.fraction(sign, whole, numerator, denominator)
	}
	plain, grouped, ok := plainDecimal(digits)
	if !ok {
		return n, false
	}
	n.plain = sign + plain
	if n.value, ok = parse(n.plain); !ok {
		return n, false
	}
	if grouped != "" {
		n.thousands, _ = parse(sign + grouped)
	}
	return n, true
}

func (n number) fraction(sign, whole, numerator, denominator string) (number, bool) {
	w, okW := 0.0, true
	if whole != "" {
		w, okW = parse(whole)
	}
	a, groupedA, okA := plainDecimal(numerator)
	b, groupedB, okB := plainDecimal(denominator)
	if !okW || !okA || !okB || groupedA != "" || groupedB != "" {
		return n, false // "1,000/5" may be 200
	}
	num, okA := parse(a)
	den, okB := parse(b)
	n.plain = sign + a + "/" + b
	if whole != "" {
		if num >= den || strings.HasPrefix(a, "0") {
			return n, false // "1 600/5" may be 320
		}
		n.plain = sign + whole + " " + a + "/" + b
	}
	n.value = (w*den + num) / den // one division: 1 5/16 is 21/16
	if sign != "" {
		n.value = -n.value
	}
	return n, okA && okB && !math.IsInf(n.value, 0) && !math.IsNaN(n.value)
}

// cutFraction takes "1 5/16" and "5/16" apart.
func cutFraction(s string) (whole, numerator, denominator string, ok bool) {
	numerator, denominator, ok = strings.Cut(s, "/")
	numerator, denominator = strings.TrimSpace(numerator), strings.TrimSpace(denominator)
	if w, n, mixed := strings.Cut(numerator, " "); mixed && ok {
		return w, strings.TrimSpace(n), denominator, onlyDigits(w)
	}
	return "", numerator, denominator, ok
}

// cutNumber returns the longest front of text that can belong to a number,
// with spaces and signs in their plain form, and what follows.
func cutNumber(text string) (digits, rest string) {
	var b strings.Builder
	runes := []rune(text)
	i := 0
	for ; i < len(runes); i++ {
		r := runes[i]
		switch {
		case r >= '0' && r <= '9', r == '.', r == ',', r == '/' && followedByDigit(runes, i):
			b.WriteRune(r)
		case (r == '-' || r == '−' || r == '+') && i == 0:
			b.WriteRune(plainSign(r))
		case unicode.IsSpace(r) && followedByDigit(runes, i):
			b.WriteRune(' ')
		case unicode.IsSpace(r) && b.Len() > 0 && i+1 < len(runes) && runes[i+1] == '/' && followedByDigit(runes, i+1):
			// "5 /16": the slash joins
		case (r == '\'' || r == '’') && followedByDigit(runes, i):
			b.WriteRune(' ')
		case (r == 'e' || r == 'E') && endsInDigit(b.String()) && exponentFollows(runes[i+1:]):
			b.WriteByte('e')
			if s := runes[i+1]; s == '-' || s == '−' || s == '+' {
				b.WriteRune(plainSign(s))
				i++
			}
		default:
			return strings.TrimSpace(b.String()), string(runes[i:])
		}
	}
	return strings.TrimSpace(b.String()), ""
}

func plainSign(r rune) rune {
	if r == '−' {
		return '-'
	}
	return r
}

func followedByDigit(runes []rune, i int) bool {
	for i++; i < len(runes); i++ {
		if !unicode.IsSpace(runes[i]) {
			return runes[i] >= '0' && runes[i] <= '9' ||
				(runes[i] == '.' || runes[i] == ',') && i+1 < len(runes) && runes[i+1] >= '0' && runes[i+1] <= '9'
		}
	}
	return false
}

func exponentFollows(after []rune) bool {
	if len(after) > 0 && (after[0] == '-' || after[0] == '−' || after[0] == '+') {
		after = after[1:]
	}
	return len(after) > 0 && after[0] >= '0' && after[0] <= '9'
}

func endsInDigit(s string) bool { return s != "" && s[len(s)-1] >= '0' && s[len(s)-1] <= '9' }

func onlyDigits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

// plainDecimal writes digits with the point as decimal mark and no grouping.
// grouped is the other reading of "1,000" (a comma with exactly three digits
// after it), else empty.
func plainDecimal(s string) (plain, grouped string, ok bool) {
	mantissa, exponent, _ := strings.Cut(s, "e")
	if exponent != "" {
		exponent = "e" + exponent
	}
	commas, points := strings.Count(mantissa, ","), strings.Count(mantissa, ".")
	mark := "" // the decimal mark
	switch {
	case commas > 0 && points > 0: // the last one is the decimal mark
		mark = mantissa[strings.LastIndexAny(mantissa, ",."):][:1]
	case commas == 1:
		mark = ","
	case points == 1:
		mark = "."
	}
	whole, fraction := mantissa, ""
	if mark != "" {
		whole, fraction, _ = strings.Cut(mantissa, mark)
	}
	if mark != "" && fraction != "" && !onlyDigits(fraction) {
		return "", "", false
	}
	ungrouped, ok := ungroup(whole)
	if !ok || ungrouped == "" && fraction == "" {
		return "", "", false
	}
	plain = ungrouped
	if mark != "" {
		plain += "." + fraction
	}
	if mark == "," && len(fraction) == 3 && len(whole) <= 3 && onlyDigits(whole) && whole[0] != '0' {
		grouped = whole + fraction + exponent
	}
	return plain + exponent, grouped, true
}

// ungroup removes separators that group a whole number by three.
func ungroup(s string) (string, bool) {
	i := strings.IndexAny(s, ",. ")
	if i < 0 {
		return s, s == "" || onlyDigits(s)
	}
	groups := strings.Split(s, s[i:i+1])
	for j, g := range groups {
		if !onlyDigits(g) || j > 0 && len(g) != 3 || j == 0 && (len(g) > 3 || g[0] == '0') {
			return "", false
		}
	}
	return strings.Join(groups, ""), true
}

func parse(plain string) (float64, bool) {
	v, err := strconv.ParseFloat(plain, 64)
	return v, err == nil
}
