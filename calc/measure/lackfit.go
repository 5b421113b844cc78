package measure

import (
	"math"

	"striderule/calc/distribution"
)

// LackOfFit says whether points bend away from a line by more than repeats at
// the same x scatter. Source: N. R. Draper, H. Smith, Applied Regression
// Analysis, 3rd ed., 2.1; an F test of two mean squares.
type LackOfFit struct {
	PureSD           float64 // standard deviation of repeats, all together
	DofLack, DofPure float64
	F, P             float64
	Adequate         bool // P is at least 0.05: nothing speaks against the line

	noise, dofNoise float64 // what the readings were compared with
}

// significance is from where on something is not put down to chance.
const significance = 0.05

// A group is the readings at one x.
type group struct {
	x  float64
	ys Series
}

// groups returns the points by x, from the smallest.
func groups(points []Point) []group {
	var list []group
	for _, p := range points {
		i := len(list)
		for i > 0 && list[i-1].x > p.X {
			i--
		}
		if i == 0 || list[i-1].x != p.X {
			list = append(list, group{})
			copy(list[i+1:], list[i:])
			list[i] = group{x: p.X}
			i++
		}
		list[i-1].ys = append(list[i-1].ys, p.Y)
	}
	return list
}

// pure is the sum of squares of the repeats within groups, and its degrees of
// freedom.
func pure(list []group) (squares, dof float64) {
	for _, g := range list {
		squares += g.ys.squares()
		dof += float64(len(g.ys) - 1)
	}
	return squares, dof
}

// LackOfFit tests the line. It needs repeats, and one x more than the line has
// parameters (ErrTooFew), and repeats that are not all equal (ErrNoSpread).
func (l Line) LackOfFit() (LackOfFit, error) { return l.lackOfFit(0) }

// lackOfFit compares with the scatter of the repeats, or with a rounding, as a standard
// uncertainty, where that is the larger: repeats that are the same on the lines of a tool do
// not say that a reading is known to the last digit.
func (l Line) lackOfFit(rounding float64) (LackOfFit, error) {
	list := groups(l.Points)
	squares, dof := pure(list)
	t := LackOfFit{DofPure: dof, DofLack: float64(len(list)-len(l.Points)) + l.Dof}
	if t.DofLack < 1 || t.DofPure < 1 {
		return LackOfFit{}, ErrTooFew
	}
	lack := 0.0
	for _, g := range list {
		d := (g.ys.Mean() - l.MeanY) - l.Slope*(g.x-l.MeanX)
		lack += float64(len(g.ys)) * d * d
	}
	if t.PureSD = math.Sqrt(squares / dof); t.PureSD <= l.rounding {
		t.PureSD = 0
	}
	t.noise, t.dofNoise = t.PureSD, dof
	// Repeats are rounded alike: their mean is no better than one of them.
	rounding *= math.Sqrt(float64(len(l.Points)) / float64(len(list)))
	if rounding > t.noise {
		t.noise, t.dofNoise = rounding, exactDof
	}
	t.F = lack / t.DofLack / (t.noise * t.noise) // Draper and Smith, 2.1
	if t.noise == 0 || !finite(t.F) {
		return LackOfFit{}, ErrNoSpread
	}
	p, err := distribution.FisherUpper(t.F, t.DofLack, t.dofNoise)
	t.P, t.Adequate = p, p >= significance
	return t, err
}

// exactDof stands for the endless degrees of freedom of what is known without readings.
const exactDof = 1e6
