package view

import (
	"strings"
	"unicode/utf8"
)

// leads are what to put before the texts of a column, so that the decimal points of its numbers
// stand below each other: spaces as wide as a digit.
func leads(column []string) []string {
	widths, most := make([]int, len(column)), 0
	for i, text := range column {
		widths[i] = wholeWidth(text)
		most = max(most, widths[i])
	}
	leads := make([]string, len(column))
	for i, w := range widths {
		if w > 0 {
			leads[i] = strings.Repeat("\u2007", most-w)
		}
	}
	return leads
}

// wholeWidth is how many signs of a number stand before its decimal point; 0 if it is none.
func wholeWidth(text string) int {
	whole := strings.TrimLeft(strings.TrimLeft(text, "+-−"), "0123456789")
	digits := len(strings.TrimLeft(text, "+-−")) - len(whole)
	if digits == 0 || strings.HasPrefix(whole, ":") {
		return 0
	}
	return utf8.RuneCountInString(text) - utf8.RuneCountInString(whole)
}
