package axis

import (
	"strings"

	"striderule/calc/drive"
)

// A screwValue reads designations and leads; see drive.ParseScrew.
type screwValue struct {
	Value drive.Screw
	Given bool
	text  string
}

// Set reads a screw.
func (s *screwValue) Set(text string) error {
	text = s.Plain(text)
	*s = screwValue{}
	if text == "" {
		return nil
	}
	v, err := drive.ParseScrew(text)
	if err != nil {
		return err
	}
	*s = screwValue{v, true, text}
	return nil
}

// String returns the designation.
func (s *screwValue) String() string { return s.text }

// Plain returns the text, trimmed.
func (s *screwValue) Plain(text string) string { return strings.TrimSpace(text) }

// About says what is read.
func (s *screwValue) About() string { return screwAbout }
