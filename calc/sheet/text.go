package sheet

import (
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"

	"striderule/calc/unit"
)

var (
	errChoice = errors.New("not one of the choices")
	errText   = errors.New("text too long")
)

// A Text is free text of one line.
type Text struct {
	Value string
	most  int // characters
	about string
}

// NewText makes a text of so many characters at most.
func NewText(most int, about string) Text { return Text{most: most, about: about} }

// Set takes the text, trimmed.
func (t *Text) Set(text string) error {
	t.Value = ""
	text = strings.TrimSpace(text)
	if utf8.RuneCountInString(text) > t.most {
		return errLongText(text, t.most)
	}
	t.Value = text
	return nil
}

func errLongText(text string, most int) error {
	return &unit.Error{Text: text, Problem: "longer than " + strconv.Itoa(most) + " characters", Advice: "shorten it", Cause: errText}
}

// String returns the text.
func (t *Text) String() string { return t.Value }

// Plain returns the text, trimmed.
func (t *Text) Plain(text string) string { return strings.TrimSpace(text) }

// About says what the text is for.
func (t *Text) About() string { return t.about + ", at most " + strconv.Itoa(t.most) + " characters" }
