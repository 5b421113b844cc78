package word

import (
	"strings"
	"unicode"
	"unicode/utf8"
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

// Day writes a day, as 2026-11-25 or 2026-11-25T10:03, as people do.
func Day(day string) string {
	if dayForm != "{year}-{month}-{day}" && len(day) >= len("2026-11-25") {
		day = strings.Replace(day, day[:10], dayForm.Fill("year", day[:4], "month", day[5:7], "day", day[8:10]), 1)
	}
	return strings.Replace(day, "T", " ", 1)
}

// Quote puts a text in quotation marks.
func Quote(s string) string { return "“" + s + "”" }

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

// unseen are signs that cannot be seen though Unicode counts them among those that can.
const unseen = "\u034f\u115f\u1160\u17b4\u17b5\u2800\u3164\uffa0"

// Shown is a text in one line without what cannot be seen or turns the text round, for
// texts that others read. What joins or parts letters of scripts that need it stays.
func Shown(s string) string {
	before := rune(0)
	return strings.Map(func(r rune) rune {
		joins := (r == '\u200c' || r == '\u200d') && before > '\u02ff'
		if r > '~' && !joins && (unicode.Is(unicode.Cf, r) || strings.ContainsRune(unseen, r) || r&^0xfff == 0xe0000) {
			return -1
		}
		before = r
		return r
	}, OneLine(s))
}

// Clip shortens a text to so many characters, for a sentence.
func Clip(text string, most int) string {
	text = OneLine(strings.TrimSpace(text))
	if utf8.RuneCountInString(text) > most {
		return string([]rune(text)[:most]) + "…"
	}
	return text
}
