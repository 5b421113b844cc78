package distribution

import "math"

// A Sum is the sum of errors that are independent of each other, all in one unit.
type Sum struct {
	Scatter float64 // standard uncertainty that was found from the scatter of readings
	Dof     float64 // its degrees of freedom
	Normal  float64 // standard uncertainty of what is normally distributed and known
	Sides   Rectangles
}

// Scaled returns the sum multiplied by an exact factor.
func (s Sum) Scaled(factor float64) Sum {
	factor = math.Abs(factor)
	s.Scatter *= factor
	s.Normal *= factor
	for i := range s.Sides {
		s.Sides[i] *= factor
	}
	return s
}

// None reports whether nothing is known to be doubtful.
func (s *Sum) None() bool { return s.Scatter == 0 && s.Normal == 0 && s.Sides[0] == 0 }

// Fixed returns the half-width that is left with endless runs, missed with probability q above 0.
func (s *Sum) Fixed(q float64) float64 {
	wide := s.Sides.HalfWidth(q)
	if s.Normal > 0 {
		wide = math.Hypot(wide, s.Normal*Span(q, math.Inf(1)))
	}
	return wide
}

// HalfWidth returns the half-width that is missed with probability q, which is above 0:
//
//	U = √((t·u)² + R²)
//
// of a scatter u, with Student's t of the scatter's degrees of freedom, and R the half-width of
// what is known otherwise. Welch-Satterthwaite instead, with one t for all of u, covers 87 to 94 % of what it
// should with two to four runs: t falls where the scatter seems small by chance. Drawing lots
// from the same distributions (JCGM 101) gives at most 3.4 % more (one rectangle of twice the
// scatter, seven runs), and covers more than it should there; this covers 95 % from one degree
// of freedom to twenty, whatever the shares.
func (s *Sum) HalfWidth(q float64) float64 {
	wide := s.Fixed(q)
	if s.Scatter > 0 {
		wide = math.Hypot(wide, s.Scatter*Span(q, s.Dof))
	}
	return wide
}

// Missed returns the probability with which half-width x, above 0, misses: HalfWidth turned
// round, to a relative 1e-12 but for the digits that the rectangles lose. Below Least it is
// somewhere below that.
func (s *Sum) Missed(x float64) float64 {
	sides := s.Sides[0] > 0
	switch {
	case !(x < biggest):
		return 0
	case s.Scatter > 0 && !sides && s.Normal == 0:
		return Missed(x/s.Scatter, s.Dof)
	case s.Scatter == 0 && !sides && s.Normal > 0:
		return Missed(x/s.Normal, math.Inf(1))
	case s.Scatter == 0 && s.Normal == 0:
		p, _ := s.Sides.Beyond(x)
		return 2 * p
	}
	return s.shared(x)
}

// shared is Missed of several parts. x is shared among them, squares adding up, so that each is
// missed with as much: the rectangles, or the normal part where there are none, are given a
// share, which says how much that is; the last part has what is left. The larger the share, the
// less the first is missed and the more the last: the answer lies between both.
func (s *Sum) shared(x float64) float64 {
	sides, last, dof := s.Sides[0] > 0, s.Scatter, s.Dof
	if last == 0 {
		last, dof = s.Normal, math.Inf(1)
	}
	var first, left float64 // with how much the share is missed, and what is left of x
	var known float64       // the half-width of all but the last
	off := func(share float64) float64 {
		if sides {
			first, _ = s.Sides.Beyond(share)
			first *= 2
		} else {
			first = Missed(share/s.Normal, math.Inf(1))
		}
		first = max(first, Least)
		known, left = share, 1
		if sides && s.Scatter > 0 && s.Normal > 0 && first < 1 {
			known = math.Hypot(share, s.Normal*Span(first, math.Inf(1)))
		}
		if known < x {
			left = Missed(math.Sqrt((x-known)*(x+known))/last, dof)
		}
		return math.Log(first / left)
	}
	low, high := 0.0, x
	if sides {
		high = min(x, s.Sides.most())
	}
	leftLow, offHigh := Missed(x/last, dof), off(high)
	if offHigh >= 0 {
		return left
	}
	offLow, leftHigh := -math.Log(leftLow), left
	// Regula falsi, the other end weighed as N. Anderson and A. Björck have it (BIT 13 (1973), 253),
	// and halves where it creeps.
	for turn, wide, side := 0, high, 0; ; turn++ {
		share := (low*offHigh - high*offLow) / (offHigh - offLow)
		creeps := turn%3 == 2 && high-low > wide/2
		if turn%3 == 2 {
			wide = high - low
		}
		if creeps || !(share > low && share < high) {
			share = (low + high) / 2
		}
		at := off(share)
		switch {
		case math.Abs(at) <= 1e-12 || leftHigh-leftLow <= 1e-12*leftHigh || high-low <= 1e-15*high || turn == 200:
			if known > 0.9*x { // what is left of x has lost its digits
				return first
			}
			return left
		case at > 0:
			if side > 0 {
				offHigh *= weight(at, offLow)
			}
			low, offLow, leftLow, side = share, at, left, 1
		default:
			if side < 0 {
				offLow *= weight(at, offHigh)
			}
			high, offHigh, leftHigh, side = share, at, left, -1
		}
	}
}

// weight is by what the value at an end that stays is multiplied, when the other one was before
// and is at now.
func weight(at, before float64) float64 {
	if w := 1 - at/before; w > 0 {
		return w
	}
	return 0.5
}
