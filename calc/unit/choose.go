package unit

import (
	"math"
	"strings"
)

// Units returns the symbols of the units to choose from beside the number; none where they
// are only written. The keyboard that a phone shows for numbers has no letters.
func (e *Entry) Units() []string {
	if !e.takes.Chosen {
		return nil
	}
	symbols := make([]string, len(e.takes.Units))
	for i := range symbols {
		symbols[i] = e.takes.Units[i].Symbol
	}
	return symbols
}

// Parted returns a text's number as it was typed, and the symbol of its unit: of the bare one
// where it names none. ok is false of what is no number with a unit of this kind.
func (e *Entry) Parted(text string) (number, symbol string, ok bool) {
	text = strings.TrimSpace(text)
	n, ok := readNumber(text)
	if !ok {
		return text, "", false
	}
	u := e.takes.bare
	if n.unit != "" {
		u = e.takes.spelled(n.unit)
	}
	if u == nil {
		return text, "", false
	}
	return strings.TrimSpace(text[:len(text)-len(n.unit)]), u.Symbol, true
}

// In returns the text of a text's number in the unit of a symbol, as a link carries it: a bare
// number has the unit of its field. What Parted can't part stays as it is.
func (e *Entry) In(text, symbol string) string {
	number, _, ok := e.Parted(text)
	if !ok || symbol == e.Unit() {
		return number
	}
	return withSymbol(number, symbol)
}

// Shown is a text with its unit, whether that was typed or not.
func (e *Entry) Shown(text string) string {
	if number, symbol, ok := e.Parted(text); ok && symbol == e.Unit() && symbol != "" {
		return withSymbol(number, symbol)
	}
	return strings.TrimSpace(text)
}

// Meanings returns what a bare number of an unlikely size was read as, and what may have been
// meant: "150 pulses/s" and "150 kHz". Both are empty where there is nothing to ask.
func (e *Entry) Meanings() (read, rather string) {
	u := e.takes.bare
	if !e.Given || u.Rather == "" || strings.TrimRight(e.plain, "0123456789.") == e.plain {
		return "", ""
	}
	if v := math.Abs(u.FromBase(e.Number)); v >= u.Least && (u.Most == 0 || v <= u.Most) {
		return "", ""
	}
	return withSymbol(e.plain, u.Symbol), withSymbol(e.plain, u.Rather)
}

// askedLength is for what a slow speed is shown by, in mm.
const askedLength = 100

// Asks is the question about a number of an unlikely size; nil if there is none.
func (e *Entry) Asks() *Error {
	read, rather := e.Meanings()
	if read == "" {
		return nil
	}
	u := e.takes.bare
	minutes := Trim(askedLength/u.FromBase(e.Number), 2)
	return &Error{Text: e.typed, Problem: u.Asks, Parts: []string{"read", read, "rather", rather, "minutes", minutes}}
}
