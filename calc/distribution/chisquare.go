package distribution

import "math"

// ReducedChiSquare is the quantile of χ²/ν, the square of how many times its true value a
// standard deviation of ν degrees of freedom may be, with the probability with which the normal
// distribution is below z. z lies within ±2, ν is 1 or more. For 80 and 20 % its root is good to
// 0.7 %, and better of more degrees of freedom; but for 20 % of one, 7 % too small.
// Source: E. B. Wilson, M. M. Hilferty, Proceedings of the National Academy of Sciences 17
// (1931), 684.
func ReducedChiSquare(z, dof float64) float64 {
	part := 2 / (9 * dof)
	return math.Pow(1-part+z*math.Sqrt(part), 3)
}
