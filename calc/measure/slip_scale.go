package measure

import "math"

// scale takes the error at no speed, with an interval that reaches over the mean of the
// slowest speed too. What is common to all runs is in its uncertainty once; the steps are read
// at each speed. Source: JCGM 100, 5.1.2, F.1.2.3.
func (r *SlipResult) scale(t SlipTest, list []group) {
	line, places := r.Line, list
	own := line.InterceptEstimate()
	squares, dof := pure(list)
	if r.Misfit() && r.Trouble == SlipFound {
		r.Basis, places = FromSlowest, list[:2]
		own = atRest(places, math.Sqrt(squares/dof), dof)
	}
	// The mean of the slowest speed, seen from the line at no speed. Where nothing shows how well
	// either is known, their distance is no ± yet.
	if known := own.U > 0 || squares > 0 || t.Common.Combined() > 0; known && dof >= 1 {
		n := float64(len(list[0].ys))
		slow := Estimate{Value: list[0].ys.Mean(), U: math.Sqrt(squares / dof / n), Dof: dof} // JCGM 100, 4.2.3 (5)
		if u := math.Abs(own.Value-slow.Value) + slow.HalfWidth(); u > own.HalfWidth() {
			own.U = u / own.K()
		}
	}
	b := Budget{{ID: LineFit, U: own.U, Dof: own.Dof, TypeA: true, Shape: ScaledT}}
	b = append(b, t.Common.withoutSteps().Scaled(1/t.Commanded)...)
	once := Design{Zero: true, Repeats: 1}
	for _, g := range places {
		once.Places = append(once.Places, g.x)
	}
	if u := t.Common.steps().Combined() / t.Commanded; u > 0 {
		lever, _ := once.leverage()
		b = append(b, Component{ID: Resolution, U: u * max(1, lever), Dof: math.Inf(1), Fixed: true, Step: true})
	}
	like := Test{Runs: len(t.Runs), Scatter: r.Line.ResidualSD, With: Instrument{Resolution: t.coarsest()}}
	if r.Misfit() {
		like.Scatter = r.Lack.PureSD
	}
	r.Scale = Scale{Ratio: b.Estimate(1 + own.Value), Floor: like.floor(b), Runs: len(t.Runs)}
}

// atRest is the line through the means of two groups where x is 0, from the scatter of
// single readings.
func atRest(two []group, scatter, dof float64) Estimate {
	slow, fast := two[0], two[1]
	far := slow.x / (fast.x - slow.x) // how far the line reaches back, in distances of the two
	u := math.Hypot((1+far)/math.Sqrt(float64(len(slow.ys))), far/math.Sqrt(float64(len(fast.ys))))
	return Estimate{Value: slow.ys.Mean() - far*(fast.ys.Mean()-slow.ys.Mean()), U: scatter * u, Dof: dof} // JCGM 100, 5.1.2 (10)
}

// rounding is the standard uncertainty of an error by the steps that it was read with.
func (t SlipTest) rounding() float64 {
	return max(t.Common.steps().Combined(), t.Grid) / t.Commanded
}

// coarsest is the largest step that a length was read with, as an error.
func (t SlipTest) coarsest() float64 {
	largest := 0.0
	for _, c := range t.Common.steps() {
		largest = max(largest, c.U)
	}
	return largest * math.Sqrt(12) / t.Commanded // JCGM 100, F.2.2.1
}
