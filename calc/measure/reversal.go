package measure

import "math"

// A Target is a position that was approached from both sides, with the
// positions, in mm, that were reached.
type Target struct {
	Position          float64
	Forward, Backward Series
}

// A Reversal is what positions approached from both sides show. Deviations are
// actual less target position, mm. Source: ISO 230-2, whose terms stand beside
// the lines; their clauses are numbered differently from edition to edition.
type Reversal struct {
	Forward, Backward []float64 // mean deviation of each target, by direction
	Mean              []float64 // bidirectional mean deviation of each target
	PerTarget         []float64 // reversal value of each target, with its sign: forward less backward
	B                 float64   // reversal value of the axis: the largest in size
	MeanReversal      Estimate  // with its sign; U is 0 where HasSpread is false
	M                 float64   // range of the mean bidirectional deviation
	E                 float64   // bidirectional systematic deviation
	EForward          float64
	EBackward         float64

	// The rest needs two approaches of every target from either side.
	HasSpread bool
	SForward  []float64 // standard deviations (n−1)
	SBackward []float64
	R         float64 // bidirectional repeatability
	RForward  float64
	RBackward float64
	A         float64 // bidirectional accuracy
	Slope     float64 // of the mean actual against the target positions
	HasSlope  bool    // there are two target positions
	Warnings  []Warning
}

// WarnOneApproach is the doubt of positions that were approached once.
const WarnOneApproach Warning = "one-approach"

// Bidirectional evaluates targets, read with one instrument. Each needs a reading from both
// sides, else it is ErrOneDirection. The error of the instrument itself is the same from
// either side, so that it leaves the reversal value alone, but for its step: that of either
// side, in full, as targets that are whole steps apart are all rounded alike.
func Bidirectional(targets []Target, with Instrument) (Reversal, error) {
	if len(targets) == 0 {
		return Reversal{}, ErrNoReading
	}
	r := Reversal{HasSpread: true}
	var budget Budget
	count := float64(len(targets))
	for _, t := range targets {
		if len(t.Forward) == 0 || len(t.Backward) == 0 {
			return Reversal{}, ErrOneDirection
		}
		if !finite(t.Position) || !finite(t.Forward...) || !finite(t.Backward...) {
			return Reversal{}, ErrNotFinite
		}
		f, b := t.deviations(t.Forward), t.deviations(t.Backward)
		r.Forward = append(r.Forward, f.Mean()) // ISO 230-2, mean unidirectional positional deviation at a position
		r.Backward = append(r.Backward, b.Mean())
		r.Mean = append(r.Mean, f.Mean()/2+b.Mean()/2)       // mean bidirectional positional deviation at a position
		r.PerTarget = append(r.PerTarget, f.Mean()-b.Mean()) // reversal value at a position
		r.B = max(r.B, math.Abs(f.Mean()-b.Mean()))          // reversal value of an axis
		for _, s := range []Series{f, b} {
			spread, ok := s.Spread()
			r.HasSpread = r.HasSpread && ok
			u := spread / math.Sqrt(float64(len(s))) // JCGM 100, 4.2.3 (5)
			budget = append(budget, Component{ID: Scatter, U: u / count, Dof: float64(len(s) - 1), TypeA: true, Shape: ScaledT})
		}
		sf, _ := f.Spread()
		sb, _ := b.Spread()
		r.SForward = append(r.SForward, sf) // estimator of unidirectional positioning repeatability at a position
		r.SBackward = append(r.SBackward, sb)
	}
	r.M = spanOf(r.Mean)           // mean bidirectional positional deviation of an axis
	r.EForward = spanOf(r.Forward) // unidirectional systematic positional deviation of an axis
	r.EBackward = spanOf(r.Backward)
	r.E = spanOf(r.Forward, r.Backward) // bidirectional systematic positional deviation of an axis
	mean := Series(r.PerTarget).Mean()  // mean reversal value of an axis
	r.MeanReversal = Estimate{Value: mean, Dof: math.Inf(1)}
	if r.HasSpread {
		r.repeatability()
		step := with.resolution(Resolution)
		r.MeanReversal = append(budget, step, step).Estimate(mean)
	} else {
		r.SForward, r.SBackward = nil, nil
		r.Warnings = append(r.Warnings, WarnOneApproach)
	}
	r.slope(targets)
	return r, nil
}

// deviations are actual less target position.
func (t Target) deviations(actual Series) Series {
	d := make(Series, len(actual))
	for i, x := range actual {
		d[i] = x - t.Position // deviation of position
	}
	return d.onGrid(max(actual.longest(), math.Abs(t.Position)) * noise)
}

// spanOf is the largest less the smallest of all values.
func spanOf(lists ...[]float64) float64 {
	least, most := math.Inf(1), math.Inf(-1)
	for _, list := range lists {
		for _, v := range list {
			least, most = min(least, v), max(most, v)
		}
	}
	return most - least
}

// repeatability is what needs the spreads.
func (r *Reversal) repeatability() {
	var ends []float64
	for i, b := range r.PerTarget {
		sf, sb := r.SForward[i], r.SBackward[i]
		r.RForward = max(r.RForward, 4*sf) // unidirectional positioning repeatability of an axis
		r.RBackward = max(r.RBackward, 4*sb)
		r.R = max(r.R, 2*sf+2*sb+math.Abs(b), 4*sf, 4*sb) // bidirectional positioning repeatability of an axis
		ends = append(ends, r.Forward[i]+2*sf, r.Forward[i]-2*sf, r.Backward[i]+2*sb, r.Backward[i]-2*sb)
	}
	r.A = spanOf(ends) // bidirectional accuracy of an axis
}

// slope fits the bidirectional mean positions against the targets: the scale,
// as slack moves all of them alike. Source: JCGM 100, H.3.2 (H.13b).
func (r *Reversal) slope(targets []Target) {
	var xs Series
	for _, t := range targets {
		xs = append(xs, t.Position)
	}
	mean, sxy := xs.Mean(), 0.0
	sxx := xs.squares()
	for i, x := range xs {
		sxy += (x - mean) * r.Mean[i]
	}
	if r.HasSlope = sxx > 0 && finite(sxy/sxx); r.HasSlope {
		r.Slope = 1 + sxy/sxx
	}
}
