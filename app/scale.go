package main

import (
	"math"

	"striderule/calc"
)

// A span maps values to pixels along one axis.
type span struct {
	lo, hi   float64 // values at the ends
	from, to float64 // pixels at the ends
}

func (s span) at(v float64) float64 {
	if s.hi == s.lo {
		return (s.from + s.to) / 2
	}
	return s.from + (v-s.lo)/(s.hi-s.lo)*(s.to-s.from)
}

// widened is a span that holds all values, with a margin at both ends.
func widened(values []float64, margin, from, to float64) span {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, v := range values {
		lo, hi = min(lo, v), max(hi, v)
	}
	if lo > hi {
		lo, hi = 0, 1
	}
	if lo == hi {
		lo, hi = lo-max(1e-9, math.Abs(lo)*1e-3), hi+max(1e-9, math.Abs(hi)*1e-3)
	}
	m := (hi - lo) * margin
	return span{lo - m, hi + m, from, to}
}

// ticks are at most n round values inside a span: steps of 1, 2 or 5.
func ticks(s span, n int) []float64 {
	width := s.hi - s.lo
	if !(width > 0) || n < 1 {
		return nil
	}
	step := math.Pow(10, math.Floor(math.Log10(width/float64(n))))
	for _, f := range []float64{1, 2, 5, 10} {
		if width/(step*f) <= float64(n) {
			step *= f
			break
		}
	}
	var all []float64
	for i := math.Ceil(s.lo / step); i*step <= s.hi; i++ {
		all = append(all, i*step+0) // no negative zero
	}
	return all
}

// extent lists all values that a chart's axis must hold.
func extent(c calc.Chart) (xs, ys []float64) {
	for _, p := range c.Points {
		xs, ys = append(xs, p.X), append(ys, p.Y, p.Lo, p.Hi)
	}
	for _, b := range c.Bands {
		ys = append(ys, b.Lo, b.Hi)
	}
	for _, l := range c.Lines {
		xs, ys = append(xs, l.X1, l.X2), append(ys, l.Y1, l.Y2)
	}
	if n := len(c.X.Names); n > 0 {
		xs = append(xs, 0.5, float64(n)+0.5)
	}
	return xs, ys
}
