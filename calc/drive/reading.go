package drive

import (
	"math"

	"striderule/calc/lists"
)

// A RatioReading is what a found ratio of measured to commanded travel may
// mean.
type RatioReading struct {
	// Fits are the explanations that agree with the ratio within its
	// uncertainty, the most plausible first: single mistakes, or combinations
	// of two where no single one fits.
	Fits [][]Mistake
}

// ReadRatio compares a ratio of measured to commanded travel, whose relative
// expanded uncertainty is u, with the usual mistakes and with combinations of
// two of them. A ratio that agrees with 1 needs no explanation.
//
// Both ratio and u must be above 0 and finite, else nothing fits.
func ReadRatio(ratio, u float64, mistakes []Mistake) RatioReading {
	found := math.Log(ratio)
	if !(ratio > 0) || !(u > 0) || math.IsInf(found, 0) || math.IsInf(u, 0) || math.Abs(found) <= u {
		return RatioReading{}
	}
	off := func(ms ...Mistake) float64 {
		x := found
		for _, m := range ms {
			x -= math.Log(m.Ratio)
		}
		return math.Abs(x)
	}
	var fits [][]Mistake
	for _, m := range mistakes {
		if off(m) <= u {
			fits = append(fits, []Mistake{m})
		}
	}
	if len(fits) == 0 {
		for i, a := range mistakes {
			for _, b := range mistakes[i+1:] {
				if a.Kind != b.Kind && off(a, b) <= u {
					fits = append(fits, []Mistake{a, b})
				}
			}
		}
	}
	rank := func(ms []Mistake) int {
		sum := 0
		for _, m := range ms {
			sum += m.Rank
		}
		return sum
	}
	lists.Sort(fits, func(a, b []Mistake) bool {
		if ra, rb := rank(a), rank(b); ra != rb {
			return ra < rb
		}
		return off(a...) < off(b...)
	})
	return RatioReading{fits}
}
