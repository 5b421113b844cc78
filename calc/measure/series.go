package measure

import "math"

// A Series is the length that each of several runs moved.
type Series []float64

// Mean returns the arithmetic mean. The series must not be empty.
// Source: JCGM 100, 4.2.1 (3).
func (s Series) Mean() float64 {
	sum := 0.0
	for _, x := range s {
		sum += x
	}
	return sum / float64(len(s))
}

// Spread returns the experimental standard deviation (n−1), false with fewer
// than two runs, which cannot show any. Source: JCGM 100, 4.2.2 (4).
func (s Series) Spread() (float64, bool) {
	if len(s) < 2 {
		return 0, false
	}
	mean, sum := s.Mean(), 0.0
	for _, x := range s {
		sum += (x - mean) * (x - mean)
	}
	return math.Sqrt(sum / float64(len(s)-1)), true
}

// Correction returns c = commanded/measured, the factor of steps per mm; the
// travel per revolution is divided by it. Both must be above 0.
func Correction(commanded, measured float64) float64 { return commanded / measured }

// Error returns measured/commanded − 1: negative where too little moved.
func Error(commanded, measured float64) float64 { return measured/commanded - 1 }
