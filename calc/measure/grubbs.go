package measure

import "math"

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
	t := quantile(1-tail, tail, size-2)
	if math.IsInf(t, 1) {
		return 0, ErrRange
	}
	return (size - 1) / math.Sqrt(size) / math.Sqrt(1+(size-2)/t/t), nil // Grubbs 1969; ISO 5725-2:1994, 7.3.4
}
