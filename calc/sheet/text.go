package sheet

import (
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"

	"striderule/calc/unit"
	"striderule/calc/word"
)

var (
	errChoice = errors.New("not-an-option")
	errText   = errors.New("not-a-text")
)

// A Text is free text of one line.
type Text struct {
	Value string
	most  int // characters
	about string
}

// NewText makes a text of so many characters at most.
func NewText(most int, about string) Text { return Text{most: most, about: about} }

// Set takes the text as it shows, trimmed.
func (t *Text) Set(text string) error {
	t.Value = ""
	text = strings.TrimSpace(word.Shown(text))
	if utf8.RuneCountInString(text) > t.most {
		return errLongText(text, t.most)
	}
	t.Value = text
	return nil
}

func errLongText(text string, most int) error {
	return &unit.Error{Text: text, Problem: tooLong, Parts: []string{"n", strconv.Itoa(most)}, Cause: errText}
}

// String returns the text.
func (t *Text) String() string { return t.Value }

// Plain returns the text, trimmed.
func (t *Text) Plain(text string) string { return strings.TrimSpace(text) }

// About says what the text is for.
func (t *Text) About() string { return aboutText.Fill("what", t.about, "n", strconv.Itoa(t.most)) }
