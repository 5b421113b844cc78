package sheet

import (
	"strings"

	"striderule/calc/unit"
)

// A Flag is yes or no; no where nothing is typed.
type Flag struct {
	On    bool
	about string
}

// NewFlag makes a flag; about says what yes means.
func NewFlag(about string) Flag { return Flag{about: about} }

const flagOn = "yes"

// Set takes yes or nothing.
func (f *Flag) Set(text string) error {
	f.On = f.Plain(text) == flagOn
	if !f.On && strings.TrimSpace(text) != "" {
		return &unit.Error{Text: text, Problem: noFlag, Cause: errChoice}
	}
	return nil
}

// String returns yes, or nothing.
func (f *Flag) String() string {
	if f.On {
		return flagOn
	}
	return ""
}

// Plain returns the text, trimmed.
func (f *Flag) Plain(text string) string { return strings.TrimSpace(text) }

// About says what yes means.
func (f *Flag) About() string { return aboutFlag.Fill("meaning", f.about) }
