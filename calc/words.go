package calc

import (
	"math"
	"strconv"
	"unicode"
	"unicode/utf8"

	"striderule/calc/unit"
)

// worded are texts by the word that each belongs to.
type worded []struct{ word, text string }

// of returns a word's text, empty if it has none.
func (texts worded) of(word string) string {
	for _, t := range texts {
		if t.word == word {
			return t.text
		}
	}
	return ""
}

func itoa(n int) string { return strconv.Itoa(n) }

func capital(s string) string {
	r, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[size:]
}

// concat joins slices into a new one.
func concat[T any](parts ...[]T) []T {
	var all []T
	for _, p := range parts {
		all = append(all, p...)
	}
	return all
}

func quote(s string) string { return "“" + s + "”" }

// lower writes the first letter small.
func lower(s string) string {
	r, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(unicode.ToLower(r)) + s[size:]
}

// thousandth is how finely moves are commanded, in mm.
const thousandth = 0.001

// nearest rounds a length to be commanded.
func nearest(v float64) float64 { return math.Round(v/thousandth) / 1000 }

// decimal writes a length to be commanded: no exponent, at most three decimals.
func decimal(v float64) string { return unit.Full(nearest(v)) }

func number(v float64) string { return unit.Trim(v, 7) }

func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return itoa(n) + " " + many
}
