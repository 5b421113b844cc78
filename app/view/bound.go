package view

import "strings"

// noBreak is a space at which no line ends.
const noBreak = "\u00a0"

// Bound is a text in which no number stands at the end of a line with its unit on the next, and
// no ± with its number there.
func Bound(text string) string {
	bound := ""
	for at := 1; at < len(text)-1; at++ {
		if text[at] == ' ' && '0' <= text[at-1] && text[at-1] <= '9' && isUnit(text[at+1:]) {
			bound += text[:at] + noBreak
			text, at = text[at+1:], 0
		}
	}
	return strings.ReplaceAll(bound+text, "± ", "±"+noBreak)
}

// isUnit reports whether a text begins with a unit.
func isUnit(text string) bool {
	if end := strings.IndexAny(text, " /,.;:)?!·"); end >= 0 {
		text = text[:end]
	}
	return strings.Contains(units, " "+text+" ")
}
