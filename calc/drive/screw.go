package drive

import (
	"errors"
	"math"
	"strings"
	"unicode"

	"striderule/calc/unit"
)

// ErrScrew is returned for a text that designates no screw.
var ErrScrew = errors.New("not a screw")

// A Screw moves its nut by its lead with every turn.
type Screw struct {
	Pitch    unit.Length
	Starts   unit.Count
	Diameter unit.Length // nominal; 0 if not known
	LeftHand bool
}

func (Screw) Name() string   { return "screw" }
func (Screw) Angular() bool  { return false }
func (s Screw) Check() error { return positive(float64(s.Pitch), float64(s.Starts)) }
func (s Screw) perTurn() exact {
	return whole(float64(s.Pitch)).times(whole(float64(s.Starts)))
}

// Lead returns the travel of a screw per revolution: pitch times starts.
// It is what moves the nut; a four-start screw of 2 mm pitch has a lead of
// 8 mm. Source: ISO 5408, lead.
func (s Screw) Lead() unit.Length { return s.Pitch * unit.Length(s.Starts) }

// ParseScrew reads a screw: a designation of ISO 2904 ("Tr8x8(P2)": nominal
// diameter x lead, pitch in brackets; "Tr8x2": pitch alone, one start; "LH"
// for left hand) or of ISO 261 ("M8x1.25"), a bare lead ("8 mm"), or pitch
// times starts ("2 mm x 4"). It returns an error that wraps ErrScrew.
func ParseScrew(text string) (Screw, error) {
	s := unit.Replaced(strings.TrimSpace(text), "×", "x", "X", "x", "*", "x", "–", "-", "−", "-")
	s = strings.Map(plainSpace, s)
	hand := false
	if t := strings.ToLower(s); strings.HasSuffix(t, "lh") {
		s, hand = strings.TrimRight(s[:len(s)-2], " -"), true
	}
	var screw Screw
	var err error
	switch lower := strings.ToLower(s); {
	case strings.HasPrefix(lower, "tr"):
		screw, err = designation(s[2:])
	case strings.HasPrefix(lower, "m") && len(s) > 1 && strings.ContainsAny(s[1:2], "0123456789 "):
		screw, err = designation(s[1:])
	default:
		screw, err = bareScrew(s)
	}
	screw.LeftHand = hand
	if err == nil {
		err = screw.Check()
	}
	if err != nil {
		return Screw{}, &unit.Error{Text: text, Problem: "not a screw", Advice: screwAdvice(err), Cause: ErrScrew}
	}
	return screw, nil
}

var errStarts = errors.New("the lead must be a whole number of pitches")

func screwAdvice(err error) string {
	if errors.Is(err, errStarts) {
		return "the lead must be a whole number of pitches, as in Tr8x8(P2)"
	}
	return "a screw looks like Tr8x8(P2), M8x1.25, 8 mm (its lead) or 2 mm x 4 (pitch x starts)"
}

// mostStarts is more than any screw has.
const mostStarts = 100

func plainSpace(r rune) rune {
	if unicode.IsSpace(r) {
		return ' '
	}
	return r
}

// designation reads what follows the letters: "8x8(P2)", "10 x 3".
func designation(s string) (Screw, error) {
	size, lead, ok := strings.Cut(s, "x")
	if !ok {
		return Screw{}, ErrScrew
	}
	lead, pitch, multi := strings.Cut(lead, "(")
	d, errD := sizeOf(size)
	l, errL := sizeOf(lead)
	if err := errors.Join(errD, errL); err != nil {
		return Screw{}, err
	}
	if !multi {
		return Screw{Pitch: l, Starts: 1, Diameter: d}, nil
	}
	pitch, closed := strings.CutSuffix(strings.TrimSpace(pitch), ")")
	if !closed || !strings.HasPrefix(strings.ToLower(pitch), "p") {
		return Screw{}, ErrScrew
	}
	p, err := sizeOf(pitch[1:])
	if err != nil {
		return Screw{}, err
	}
	starts := math.Round(float64(l / p))
	if starts > mostStarts {
		return Screw{}, ErrScrew
	}
	if starts < 1 || math.Abs(float64(l/p)-starts) > 1e-9*starts {
		return Screw{}, errStarts
	}
	return Screw{Pitch: p, Starts: unit.Count(starts), Diameter: d}, nil
}

// bareScrew reads "8 mm" (a lead) and "2 mm x 4" (pitch x starts).
func bareScrew(s string) (Screw, error) {
	pitch, starts, multi := strings.Cut(s, "x")
	p, err := sizeOf(pitch)
	if err != nil || !multi {
		return Screw{Pitch: p, Starts: 1}, err
	}
	n := unit.Starts.Input("", 1, mostStarts)
	if err := n.Entry().Set(starts); err != nil || !n.Given {
		return Screw{}, ErrScrew
	}
	return Screw{Pitch: p, Starts: n.Value()}, nil
}

// sizeOf reads one length of a designation.
func sizeOf(s string) (unit.Length, error) {
	in := unit.Lengths.Input("mm", 0.001, 999) // below 1000, so that "1,000" is 1
	if err := in.Entry().Set(s); err != nil {
		return 0, err
	}
	if !in.Given {
		return 0, ErrScrew
	}
	return in.Value(), nil
}
