package measure

import (
	"math"
	"slices"
)

// A Series is readings of one thing, in the order they were made: of lengths,
// what each of several runs moved.
type Series []float64

// Check returns ErrNoReading or ErrNotFinite if there is nothing to work with.
func (s Series) Check() error {
	if len(s) == 0 {
		return ErrNoReading
	}
	if !finite(s...) {
		return ErrNotFinite
	}
	return nil
}

// Mean returns the arithmetic mean, 0 of no readings at all.
// Source: JCGM 100, 4.2.1 (3).
func (s Series) Mean() float64 {
	if len(s) == 0 {
		return 0
	}
	if s.Equal() {
		return s[0]
	}
	n := float64(len(s))
	sum := 0.0
	for _, x := range s {
		sum += x
	}
	mean, rest := sum/n, 0.0
	for _, x := range s { // what rounding lost of the sum
		rest += x - mean
	}
	return mean + rest/n // JCGM 100, 4.2.1 (3)
}

// Spread returns the experimental standard deviation (n−1), false with fewer
// than two readings, which cannot show any. Source: JCGM 100, 4.2.2 (4).
func (s Series) Spread() (float64, bool) {
	if len(s) < 2 {
		return 0, false
	}
	return math.Sqrt(s.squares() / float64(len(s)-1)), true // JCGM 100, 4.2.2 (4)
}

// squares is the sum of the squared deviations from the mean.
func (s Series) squares() float64 {
	if s.Equal() {
		return 0
	}
	mean, sum, rest := s.Mean(), 0.0, 0.0
	for _, x := range s {
		sum += (x - mean) * (x - mean)
		rest += x - mean
	}
	return max(0, sum-rest*rest/float64(len(s)))
}

// onGrid returns the readings with those that differ by what rounding leaves made the same:
// differences and lengths of mixed units that are equal on paper, and not in the last bit.
func (s Series) onGrid(most float64) Series {
	on := slices.Clone(s)
	for i, x := range on {
		for _, y := range on[:i] {
			if math.Abs(x-y) <= most {
				on[i] = y
				break
			}
		}
	}
	return on
}

// Equal reports whether all readings are the same.
func (s Series) Equal() bool {
	for _, x := range s {
		if x != s[0] {
			return false
		}
	}
	return true
}

// without returns the series without one reading.
func (s Series) without(i int) Series {
	rest := make(Series, 0, len(s))
	return append(append(rest, s[:i]...), s[i+1:]...)
}

// longest is the reading that is largest in size.
func (s Series) longest() float64 {
	most := 0.0
	for _, x := range s {
		most = max(most, math.Abs(x))
	}
	return most
}

// Correction returns c = commanded/measured, the factor of steps per mm; the
// travel per revolution is divided by it. Both must be above 0; 0 is returned
// if nothing was measured.
func Correction(commanded, measured float64) float64 { return ratio(commanded, measured) }

// Error returns measured/commanded − 1: negative where too little moved. Both
// must be above 0; 0 is returned if nothing was commanded.
func Error(commanded, measured float64) float64 {
	if commanded == 0 {
		return 0
	}
	return measured/commanded - 1
}

func ratio(a, b float64) float64 {
	if b == 0 {
		return 0
	}
	return a / b
}
