package simulation

import (
	"math"

	"striderule/calc/measure"
)

// Spread returns the standard deviation that the distributions of JCGM 101 have
// together: that of scatter is wider than Combined has it, by (n−1)/(n−3) in
// its square. False if a scatter of three readings or fewer has none.
func Spread(b measure.Budget) (float64, bool) {
	u := 0.0
	for _, c := range b {
		part := c.U
		if c.Shape == measure.ScaledT && c.U > 0 {
			if c.Dof <= 2 {
				return 0, false
			}
			part *= math.Sqrt(1 / (1 - 2/c.Dof)) // JCGM 101, 6.4.9.4
		}
		u = math.Hypot(u, part)
	}
	return u, true
}

// Validation compares both intervals of one result.
type Validation struct {
	Tolerance         float64 // half a unit in the last of the digits that U is given with
	LowDiff, HighDiff float64 // how far the ends are apart
	Validated         bool    // neither by more than Tolerance
}

// Validate compares an interval of JCGM 100 with a drawn one, for a standard
// uncertainty given with some significant digits (1 or 2).
// Sources: JCGM 101, 7.9.2 and 8.1.
func (d Drawn) Validate(e measure.Estimate, low, high float64, digits int) Validation {
	v := Validation{Tolerance: lastDigit(e.U, digits) / 2} // JCGM 101, 7.9.2
	v.LowDiff = math.Abs(low - d.Low)                      // JCGM 101, 8.1
	v.HighDiff = math.Abs(high - d.High)                   // JCGM 101, 8.1
	v.Validated = v.LowDiff <= v.Tolerance && v.HighDiff <= v.Tolerance
	return v
}

// lastDigit is what a 1 in the last of some significant digits of u stands for.
func lastDigit(u float64, digits int) float64 {
	if !(u > 0) || digits < 1 {
		return 0
	}
	power := math.Floor(math.Log10(u)) - float64(digits-1)
	if math.Round(u/math.Pow(10, power)) >= math.Pow(10, float64(digits)) { // 9.96 is 1·10¹ with one digit
		power++
	}
	return math.Pow(10, power)
}
