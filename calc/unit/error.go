package unit

import (
	"errors"

	"striderule/calc/word"
)

// Causes for which a text is refused; match them with errors.Is.
var (
	ErrNumber    = errors.New("not-a-number")
	ErrUnit      = errors.New("unknown-unit")
	ErrRange     = errors.New("outside-the-range")
	ErrWhole     = errors.New("not-whole")
	ErrAmbiguous = errors.New("ambiguous-decimal-mark")
)

// An Error refuses a typed text. Its sentences name the field, which only a form knows: In
// completes them.
type Error struct {
	Text    string        // as typed
	Problem word.Template // what is wrong, with the parts {field} and {typed}, and those below
	Advice  word.Template // what would be right, a sentence of its own; empty if Problem says it
	Parts   []string      // a name, its text, a name, its text ...
	Cause   error         // one of the sentinels, for errors.Is
}

// Error names the cause, for who writes programs; people read In.
func (e *Error) Error() string { return "“" + quoted(e.Text) + "”: " + e.Cause.Error() }

// In says what is wrong with the text in a field of this name, and what would be right.
func (e *Error) In(field string) string {
	parts := append([]string{"field", field, "typed", quoted(e.Text)}, e.Parts...)
	return word.Together(e.Problem.Fill(parts...), e.Advice.Fill(parts...))
}

// How much of a text a sentence repeats, in characters: as much as the longest text that a
// field takes, and more than a unit has.
const (
	mostQuoted = 200
	mostUnit   = 60
)

func quoted(text string) string { return word.Clip(text, mostQuoted) }

// Unwrap returns the cause.
func (e *Error) Unwrap() error { return e.Cause }
