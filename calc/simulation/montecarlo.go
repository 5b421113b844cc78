// Package simulation checks an uncertainty by drawing lots: each component of a budget from its
// distribution, many times. Source: JCGM 101.
package simulation

import (
	"errors"
	"math"
	"math/rand/v2"

	"striderule/calc/distribution"
	"striderule/calc/measure"
)

// ErrNothingToDraw is that of a budget without any doubt, or of no draws.
var ErrNothingToDraw = errors.New("there is nothing uncertain to draw, or no draws")

// MonteCarlo draws lots instead of combining uncertainties: each component
// from its distribution, many times, and the 95 % that lie in the middle.
// Source: JCGM 101, 5.9 and 7. The scatter of few readings is drawn from a
// wider distribution than JCGM 100 gives it, as measure.Estimate.HalfWidth has
// it too: both agree within some hundredths where there are few runs.
//
// It is a value that is stepped, so that a page can stay alive beside it.
type MonteCarlo struct {
	value  float64
	budget measure.Budget
	of     func(float64) float64
	lots   *rand.Rand
	drawn  []float64
	want   int
}

// New prepares draws of a value with a budget, and of what follows
// from it: of takes the value to the result, nil leaves it. The same seed
// gives the same lots.
func New(value float64, b measure.Budget, of func(float64) float64, draws int, seed uint64) (*MonteCarlo, error) {
	if !distribution.Finite(value, b.Combined()) {
		return nil, measure.ErrNotFinite
	}
	if draws < 1 || b.Combined() == 0 {
		return nil, ErrNothingToDraw
	}
	for _, c := range b {
		if c.U < 0 || c.Shape == measure.ScaledT && !(c.Dof > 0) {
			return nil, measure.ErrUncertainty
		}
	}
	if of == nil {
		of = func(v float64) float64 { return v }
	}
	lots := rand.New(rand.NewPCG(seed, 0))
	return &MonteCarlo{value, b, of, lots, make([]float64, 0, draws), draws}, nil
}

// Step makes up to n more draws, and reports whether all are made.
func (m *MonteCarlo) Step(n int) (done bool) {
	for ; n > 0 && len(m.drawn) < m.want; n-- {
		v := m.value
		for _, c := range m.budget {
			v += draw(m.lots, c)
		}
		if v = m.of(v); math.IsNaN(v) {
			v = math.Inf(1) // counted, at the end where it does least harm
		}
		m.drawn = append(m.drawn, v)
	}
	return len(m.drawn) >= m.want
}

// Progress returns the share of the draws that are made, 0 to 1.
func (m *MonteCarlo) Progress() float64 { return float64(len(m.drawn)) / float64(m.want) }

// draw draws from a component's distribution about 0.
func draw(lots *rand.Rand, c measure.Component) float64 {
	switch {
	case c.U == 0:
		return 0
	case c.Shape == measure.Rectangular:
		return c.U * math.Sqrt(3) * (2*lots.Float64() - 1) // JCGM 101, 6.4.2
	case c.Shape == measure.ScaledT && !math.IsInf(c.Dof, 1):
		return max(c.U, c.Least) * drawT(lots, c.Dof) // JCGM 101, 6.4.9
	}
	return c.U * lots.NormFloat64() // JCGM 101, 6.4.7
}

// drawT draws from Student's t of real degrees of freedom. Source: R. W.
// Bailey, Mathematics of Computation 62 (1994), 779: the polar method.
func drawT(lots *rand.Rand, dof float64) float64 {
	for {
		u, v := 2*lots.Float64()-1, 2*lots.Float64()-1
		if w := u*u + v*v; w > 0 && w <= 1 {
			return u * math.Sqrt(dof*math.Expm1(-2/dof*math.Log(w))/w)
		}
	}
}

// Drawn is what the lots show.
type Drawn struct {
	Draws     int
	Low, High float64 // ends of the 95 % interval, equally likely to be missed on either side
}

// Result returns the interval of the draws made so far, of which there must be
// forty at least, else it is measure.ErrTooFew. Source: JCGM 101, 7.7.2.
func (m *MonteCarlo) Result() (Drawn, error) {
	n := len(m.drawn)
	if n < 40 {
		return Drawn{}, measure.ErrTooFew
	}
	covered := int(math.Round(measure.Sure * float64(n))) // q = pM
	low := (n - covered + 1) / 2                          // r, counted from 1; the half of an odd rest is rounded up
	d := Drawn{Draws: n, Low: nth(m.drawn, low-1), High: nth(m.drawn, low+covered-1)}
	if !distribution.Finite(d.Low, d.High) {
		return Drawn{}, measure.ErrRange
	}
	return d, nil
}

// nth returns the value that would stand at i if values were sorted, and
// reorders them on the way. Source: C. A. R. Hoare, Algorithm 65, Communications
// of the ACM 4 (1961), 321.
func nth(values []float64, i int) float64 {
	low, high := 0, len(values)-1
	for low < high {
		pivot := values[low+(high-low)/2]
		left, right := low, high
		for left <= right {
			for values[left] < pivot {
				left++
			}
			for pivot < values[right] {
				right--
			}
			if left <= right {
				values[left], values[right] = values[right], values[left]
				left++
				right--
			}
		}
		switch {
		case i <= right:
			high = right
		case i >= left:
			low = left
		default:
			return values[i]
		}
	}
	return values[i]
}
