package machine

import (
	"strings"
	"unicode/utf8"
)

// isSimilar reports whether two names may be meant for the same: they differ in blanks, marks and
// capitals, or in one letter. With other digits it is another machine.
func isSimilar(a, b string) bool {
	a, b = bare(a), bare(b)
	if a == "" || b == "" || digitsOf(a) != digitsOf(b) {
		return false
	}
	return strings.EqualFold(a, b) || len(a) >= shortest && len(b) >= shortest && isOneEdit(a, b)
}

// shortest is how long a name must be for a letter in it to be a slip, in bytes.
const shortest = 4

// bare is a name without blanks, marks, and capitals of English.
func bare(name string) string {
	return without(name, func(c byte) bool { return !isLetter(c) && !isDigit(c) })
}

func digitsOf(name string) string { return without(name, func(c byte) bool { return !isDigit(c) }) }

func isDigit(c byte) bool  { return c >= '0' && c <= '9' }
func isLetter(c byte) bool { return c >= 'a' && c <= 'z' || c >= utf8.RuneSelf }

func without(name string, drop func(byte) bool) string {
	var left []byte
	for _, c := range []byte(name) {
		if c >= 'A' && c <= 'Z' {
			c += 'a' - 'A'
		}
		if !drop(c) {
			left = append(left, c)
		}
	}
	return string(left)
}

// isOneEdit reports whether one byte is another, too many, missing, or changed places with the next.
func isOneEdit(a, b string) bool {
	for len(a) > 0 && len(b) > 0 && a[0] == b[0] {
		a, b = a[1:], b[1:]
	}
	for len(a) > 0 && len(b) > 0 && a[len(a)-1] == b[len(b)-1] {
		a, b = a[:len(a)-1], b[:len(b)-1]
	}
	return len(a) <= 1 && len(b) <= 1 || len(a) == 2 && len(b) == 2 && a[0] == b[1] && a[1] == b[0]
}
