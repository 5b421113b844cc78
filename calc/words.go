package calc

import (
	"slices"
	"strconv"
	"unicode"
	"unicode/utf8"
)

func itoa(n int) string { return strconv.Itoa(n) }

func capital(s string) string {
	r, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[size:]
}

// concat joins slices into a new one.
func concat[T any](parts ...[]T) []T { return slices.Concat(parts...) }

func quote(s string) string { return "“" + s + "”" }

// lower writes the first letter small.
func lower(s string) string {
	r, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(unicode.ToLower(r)) + s[size:]
}
