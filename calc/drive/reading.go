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
	// Rest reports that they leave an error of the axis' own, as is common after a swap.
	Rest bool
}

// farOff is the error beyond which a mistake with an error of its own is the likelier story.
var farOff = math.Log(1.2)

// ReadRatio compares a ratio of measured to commanded travel, whose relative
// expanded uncertainty is u, with the usual mistakes. Where no single one fits and the ratio is
// far from 1, one may have left an error of the axis' own, of so much at most (as a share). Else
// combinations of two are tried. A ratio that agrees with 1 needs no explanation.
//
// Both ratio and u must be above 0 and finite, else nothing fits.
func ReadRatio(ratio, u, own float64, mistakes []Mistake) RatioReading {
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
	var r RatioReading
	within := func(u float64) {
		for _, m := range mistakes {
			if off(m) <= u {
				r.Fits = append(r.Fits, []Mistake{m})
			}
		}
	}
	within(u)
	if len(r.Fits) == 0 && math.Abs(found) > farOff {
		within(own)
		r.Rest = len(r.Fits) > 0
	}
	if len(r.Fits) == 0 {
		for i, a := range mistakes {
			for _, b := range mistakes[i+1:] {
				if a.Kind != b.Kind && off(a, b) <= u {
					r.Fits = append(r.Fits, []Mistake{a, b})
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
	lists.Sort(r.Fits, func(a, b []Mistake) bool {
		if ra, rb := rank(a), rank(b); ra != rb {
			return ra < rb
		}
		return off(a...) < off(b...)
	})
	return r
}
