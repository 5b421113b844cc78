package drive

import "math"

// exact is num/den · π^pi. Counts multiply without rounding while their
// product is below 2^53, so that one division is the only one.
type exact struct {
	num, den float64
	pi       int
}

func whole(n float64) exact { return exact{num: n, den: 1} }

func (a exact) times(b exact) exact {
	return exact{a.num * b.num, a.den * b.den, a.pi + b.pi}
}

func (a exact) over(b exact) exact {
	return exact{a.num * b.den, a.den * b.num, a.pi - b.pi}
}

func (a exact) value() float64 {
	v := a.num / a.den
	switch a.pi {
	case 0:
		return v
	case 1:
		return v * math.Pi
	case -1:
		return v / math.Pi
	}
	return v * math.Pow(math.Pi, float64(a.pi))
}
