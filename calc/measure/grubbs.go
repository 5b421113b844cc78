package measure

import (
	"math"

	"striderule/calc/distribution"
)

// A Suspect is the reading that lies farthest from the mean. It is pointed
// out; whether to set it aside is for the person who read it. Two equal
// outliers hide each other from this test.
type Suspect struct {
	Index         int // from 0; the first of equals
	Value         float64
	Mean, Spread  float64 // of all readings
	G, Critical   float64 // distance in spreads, and what it may be
	Found         bool    // G is above Critical
	MeanWithout   float64
	SpreadWithout float64 // 0 if only one reading stays
}

// Grubbs tests the reading farthest from the mean, on both sides, at the
// significance alpha (0.05). It needs three readings that are not all equal.
// Sources: F. E. Grubbs, Technometrics 11 (1969), 1; ISO 5725-2:1994, 7.3.4.
func Grubbs(s Series, alpha float64) (Suspect, error) {
	if err := s.Check(); err != nil {
		return Suspect{}, err
	}
	critical, err := GrubbsCritical(len(s), alpha)
	if err != nil {
		return Suspect{}, err
	}
	p := Suspect{Mean: s.Mean(), Critical: critical}
	p.Spread, _ = s.Spread()
	if s.Equal() || p.Spread == 0 {
		return Suspect{}, ErrNoSpread
	}
	for i, x := range s {
		if g := math.Abs(x-p.Mean) / p.Spread; g > p.G*(1+1e-12) { // Grubbs 1969, (1)
			p.Index, p.Value, p.G = i, x, g
		}
	}
	p.Found = p.G > critical
	rest := s.without(p.Index)
	p.MeanWithout = rest.Mean()
	p.SpreadWithout, _ = rest.Spread()
	return p, nil
}

// StandsOut is Grubbs for readings that are rounded, each by at most half. It is found only
// where it would be whatever the readings were before: with three, two equal ones make G pass
// by arithmetic alone, however near the third is. Its distance from the mean of the others is
// then less by 2·half at most, and the root of their sum of squares more by half·√(n−1), as
// their deviations are a vector that rounding moves by no more.
func StandsOut(s Series, half float64) (Suspect, error) {
	p, err := Grubbs(s, significance)
	if err != nil {
		return p, err
	}
	n := float64(len(s))
	away := max(0, math.Abs(p.Value-p.MeanWithout)-2*half)
	others := p.SpreadWithout*math.Sqrt(n-2) + half*math.Sqrt(n-1)
	spread := math.Hypot(others, away*math.Sqrt(1-1/n)) / math.Sqrt(n-1)
	p.Found = away*(1-1/n) > p.Critical*spread // Grubbs 1969, (1)
	return p, nil
}

// GrubbsCritical returns what G may be among n readings, two-sided at alpha.
// It is ErrTooFew below three readings.
func GrubbsCritical(n int, alpha float64) (float64, error) {
	if n < 3 {
		return 0, ErrTooFew
	}
	if !(alpha > 0 && alpha < 1) {
		return 0, ErrProbability
	}
	size := float64(n)
	tail := alpha / size // both tails; the upper α/(2n) point
	t := distribution.Span(tail, size-2)
	if math.IsInf(t, 1) {
		return 0, ErrRange
	}
	return (size - 1) / math.Sqrt(size) / math.Sqrt(1+(size-2)/t/t), nil // Grubbs 1969; ISO 5725-2:1994, 7.3.4
}
