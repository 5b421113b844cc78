package distribution

import (
	"math"

	"striderule/calc/lists"
)

// mostSides is how many rectangles are summed exactly.
const mostSides = 4

// negligible is the share of the largest rectangle below which another one is left out: the
// width of the sum changes by its square, and the corner sum loses the digits that it divides by.
const negligible = 1e-3

// Rectangles are the half-widths of errors that are independent of each other, each evenly
// spread within ± its half-width; the largest first, 0 where there is none.
type Rectangles [mostSides]float64

// RectanglesOf takes the largest half-widths, none of them negative, in any one unit, and returns
// the variance of what is one too many. It sorts them.
func RectanglesOf(sides []float64) (r Rectangles, rest float64) {
	lists.Sort(sides, func(x, y float64) bool { return x > y })
	for i, a := range sides {
		if i < mostSides && a > negligible*sides[0] {
			r[i] = a
		} else if i >= mostSides {
			rest += a * a / 3 // JCGM 100, 4.3.7 (7)
		}
	}
	return r, rest
}

// count is how many there are.
func (r *Rectangles) count() int {
	n := 0
	for n < mostSides && r[n] > 0 {
		n++
	}
	return n
}

// most is the largest that the sum can be.
func (r *Rectangles) most() float64 {
	most := 0.0
	for _, a := range r {
		most += a
	}
	return most
}

// Beyond returns the probability that the sum is above x, which is not negative, and its density
// there. Source: the volume of a box that a plane cuts off, by inclusion and exclusion of its
// corners: P(Σ > x) = Σ ±(±a₁ … ±a_N − x)₊^N / (N! ∏ 2aᵢ), the sign that of the corner.
func (r *Rectangles) Beyond(x float64) (p, density float64) {
	n := r.count()
	scale := 1.0
	for i := range n {
		scale *= float64(i+1) * 2 * r[i] // N! ∏ 2aᵢ
	}
	for corner := range 1 << n {
		at, sign := -x, 1.0
		for i := range n {
			if corner>>i&1 == 0 {
				at += r[i]
			} else {
				at, sign = at-r[i], -sign
			}
		}
		if at > 0 {
			power := sign
			for range n - 1 {
				power *= at
			}
			p, density = p+power*at, density+power
		}
	}
	return p / scale, density * float64(n) / scale
}

// HalfWidth returns the x with P(|Σ| > x) = q, of a q above 0; 0 where q is 1 or more. One
// rectangle: a(1 − q). Two equal ones: 2a(1 − √q).
func (r *Rectangles) HalfWidth(q float64) float64 {
	n := r.count()
	if n == 0 || q >= 1 {
		return 0
	}
	if n == 1 {
		return r[0] * (1 - q)
	}
	most, corner := r.most(), q/2
	for i := range n {
		corner *= float64(i+1) * 2 * r[i]
	}
	// Outside of the second corner only the first one cuts.
	if cut := math.Pow(corner, 1/float64(n)); cut <= 2*r[n-1] {
		return most - cut
	}
	low, high := 0.0, most
	x := most / 2
	for range 100 {
		p, density := r.Beyond(x)
		if p > q/2 {
			low = x
		} else {
			high = x
		}
		next := x + (p-q/2)/density
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		step := math.Abs(next - x)
		if x = next; step <= 1e-13*most {
			break
		}
	}
	return x
}
