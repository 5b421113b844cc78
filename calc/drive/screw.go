package drive

import (
	"errors"
	"math"
	"strings"
	"unicode"

	"striderule/calc/unit"
)

// ErrScrew is returned for a text that designates no screw.
var ErrScrew = errors.New("not-a-screw")

// A Screw moves its nut by its lead with every turn. Its thread is known by its
// pitch, or by how many there are to the inch.
type Screw struct {
	Pitch    unit.Length         // from thread to thread; 0 where Threads says it
	Threads  unit.ThreadsPerInch // 0 where Pitch says it
	Starts   unit.Count
	Diameter unit.Length // nominal; 0 if not known
	LeftHand bool
}

func (Screw) Name() string   { return "screw" }
func (Screw) Angular() bool  { return false }
func (s Screw) Check() error { return positive(s.pitch().value(), float64(s.Starts)) }
func (s Screw) perTurn() exact {
	return s.pitch().times(whole(float64(s.Starts)))
}

// pitch is 25.4/n mm for n threads to the inch: 127/(5·n), which are whole numbers.
func (s Screw) pitch() exact {
	if s.Threads != 0 {
		return exact{5 * unit.Inch, 5 * float64(s.Threads), 0}
	}
	return whole(float64(s.Pitch))
}

// Lead returns the travel of a screw per revolution: pitch times starts.
// It is what moves the nut; a four-start screw of 2 mm pitch has a lead of
// 8 mm. Source: ISO 5408, lead.
func (s Screw) Lead() unit.Length { return unit.Length(s.perTurn().value()) }

// ParseScrew reads a screw: a designation of ISO 2904 ("Tr8x8(P2)": nominal
// diameter x lead, pitch in brackets; "Tr8x2": pitch alone, one start; "LH"
// for left hand) or of ISO 261 ("M8x1.25"), a bare lead ("8 mm"), pitch times
// starts ("2 mm x 4"), or threads per inch and starts ("20 tpi", "20 tpi x 2").
// It returns an error that wraps ErrScrew.
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
		refused := &unit.Error{Text: text, Problem: notScrew, Advice: likeScrew, Cause: ErrScrew}
		switch {
		case errors.Is(err, errStarts):
			refused.Advice = wholeStarts
		case errors.Is(err, errThreads):
			refused.Advice = threadsRange
			refused.Parts = []string{"least", unit.Whole(fewestThreads), "most", unit.Whole(mostThreads)}
		case inchDesignation(s):
			refused.Advice = byThreads
		}
		return Screw{}, refused
	}
	return screw, nil
}

var (
	errStarts  = errors.New("starts-not-whole")
	errThreads = errors.New("threads-out-of-range")
)

// inchDesignation reports whether a text is like 1/4-20, a diameter in inches and
// threads per inch with a dash between them.
func inchDesignation(s string) bool {
	digit := func(c byte) bool { return c >= '0' && c <= '9' }
	for i := 1; i+1 < len(s) && digit(s[0]); i++ {
		if s[i] == '-' && digit(s[i+1]) && (digit(s[i-1]) || s[i-1] == '"') {
			return true
		}
	}
	return false
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

// bareScrew reads "8 mm" (a lead), "2 mm x 4" (pitch x starts) and the same with
// threads per inch.
func bareScrew(s string) (Screw, error) {
	pitch, starts, multi := strings.Cut(s, "x")
	screw, err := threadOf(pitch)
	if err != nil || !multi {
		return screw, err
	}
	n := unit.Starts.Input("", 1, mostStarts)
	if err := n.Entry().Set(starts); err != nil || !n.Given {
		return Screw{}, ErrScrew
	}
	screw.Starts = n.Value()
	return screw, nil
}

// Threads that a screw can have to the inch. Below 1000, so that "1,000" is 1.
const fewestThreads, mostThreads = 0.1, 500

// threadOf reads the thread of a screw of one start: its pitch, or its threads
// per inch, which have to say so.
func threadOf(s string) (Screw, error) {
	p, err := sizeOf(s)
	if !errors.Is(err, unit.ErrUnit) {
		return Screw{Pitch: p, Starts: 1}, err
	}
	in := unit.Threads.Input("tpi", fewestThreads, mostThreads)
	if err = in.Entry().Set(s); errors.Is(err, unit.ErrRange) {
		return Screw{}, errThreads
	}
	return Screw{Threads: in.Value(), Starts: 1}, err
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
