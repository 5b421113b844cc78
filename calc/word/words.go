package word

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"striderule/calc/unit"
)

// Table are texts by the word that each belongs to.
type Table [][2]string

// Of returns a word's text, empty if it has none.
func (texts Table) Of(word string) string {
	for _, t := range texts {
		if t[0] == word {
			return t[1]
		}
	}
	return ""
}

// Capital writes the first letter large.
func Capital(s string) string {
	r, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[size:]
}

// Quote puts a text in quotation marks.
func Quote(s string) string { return "“" + s + "”" }

// Lower writes the first letter small.
func Lower(s string) string {
	r, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(unicode.ToLower(r)) + s[size:]
}

// Number writes a number for reading, in seven digits at most.
func Number(v float64) string { return unit.Trim(v, 7) }

// Plural writes a number with what it counts.
func Plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// OneLine makes any text one line of valid UTF-8, as an input element holds it.
func OneLine(s string) string {
	if !strings.ContainsFunc(s, func(r rune) bool { return r < ' ' || r > '~' }) {
		return s // most texts are that simple, and a log has tens of thousands
	}
	s = strings.ToValidUTF8(s, string(utf8.RuneError))
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == '\u2028' || r == '\u2029' { // the last two break lines as well
			return ' '
		}
		return r
	}, s)
}

// Clip shortens a text to so many characters, for a sentence.
func Clip(text string, most int) string {
	text = OneLine(strings.TrimSpace(text))
	if utf8.RuneCountInString(text) > most {
		return string([]rune(text)[:most]) + "…"
	}
	return text
}
