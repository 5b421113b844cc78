package measure

import (
	"math"

	"striderule/calc/distribution"
)

// manyRuns is the degrees of freedom of a scatter from which on an interval is never narrower
// than the Guide's: with fewer the Guide's is too narrow, with more it is the wider one, and
// the one of both covers at least what it says. They are those of five runs.
const manyRuns = 4

// doubts are what the interval of an estimate is made of, in the unit of the value.
type doubts struct{ distribution.Sum }

// doubts are those of all components. The scatter of several is combined as the Guide does.
func (b Budget) doubts() doubts {
	d := doubts{distribution.Sum{Dof: math.Inf(1)}}
	var scatter Budget
	var sides []float64
	for _, c := range b {
		switch {
		case c.Shape == Rectangular:
			sides = append(sides, c.U*math.Sqrt(3)) // JCGM 100, 4.3.7 (7)
		case c.TypeA && !math.IsInf(c.Dof, 1):
			c.U = max(c.U, c.Least)
			scatter = append(scatter, c)
		default:
			d.Normal = math.Hypot(d.Normal, c.U)
		}
	}
	var rest float64
	d.Sides, rest = distribution.RectanglesOf(sides)
	d.Normal = math.Sqrt(d.Normal*d.Normal + rest)
	if len(scatter) > 0 {
		d.Scatter, d.Dof = scatter.Combined(), scatter.Dof()
		if d.Scatter == 0 {
			d.Dof = scatter[0].Dof
		}
	}
	return d
}

// estimate is a value with these doubts.
func (d doubts) estimate(value float64) Estimate {
	u := math.Hypot(d.Scatter, d.Normal)
	for _, a := range d.Sides {
		u = math.Hypot(u, a/math.Sqrt(3)) // JCGM 100, 4.3.7 (7)
	}
	e := Estimate{Value: value, U: u, Dof: math.Inf(1), doubts: d}
	if d.Scatter > 0 && !math.IsInf(d.Dof, 1) {
		e.Dof = d.Dof * math.Pow(u/d.Scatter, 4) // JCGM 100, G.4.1 (G.2b)
	}
	return e
}

// many reports whether the scatter is that of many runs. Degrees of freedom that are combined
// come out at a whole number but for rounding. Where nothing scatters, all that is left has an
// end, and to repeat the same reading once more must not widen it.
func (d *doubts) many() bool {
	return (d.Scatter > 0 || d.Normal > 0) && d.Dof >= manyRuns*(1-1e-9)
}

// parts are what the interval is made of: all of U is scatter where nothing else is said.
func (e *Estimate) parts() doubts {
	if e.doubts.None() {
		return doubts{distribution.Sum{Scatter: e.U, Dof: e.Dof}}
	}
	return e.doubts
}

// HalfWidth returns the half-width of the 95 % interval, which is what ± says on the pages.
// It is not the Guide's: see distribution.Sum. From five runs on it is never below that.
func (e Estimate) HalfWidth() float64 { return e.halfWidth(1 - Sure) }

// halfWidth is that of the interval that is missed with probability q.
func (e *Estimate) halfWidth(q float64) float64 {
	if e.U == 0 {
		return 0
	}
	d := e.parts()
	wide := d.HalfWidth(q)
	if d.many() {
		wide = max(wide, e.U*distribution.Span(q, e.Dof))
	}
	return wide
}

// missed is the probability that the value is off by more than x.
func (e *Estimate) missed(x float64) float64 {
	if e.U == 0 || x <= 0 {
		return 1
	}
	d := e.parts()
	q := d.Missed(x)
	if d.many() {
		q = max(q, distribution.Missed(x/e.U, e.Dof))
	}
	return min(q, 1)
}

// Interval returns the ends of the 95 % interval.
func (e Estimate) Interval() (low, high float64) {
	u := e.HalfWidth()
	return e.Value - u, e.Value + u
}
