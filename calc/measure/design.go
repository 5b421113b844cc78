package measure

import (
	"math"

	"striderule/calc/distribution"
)

// A Design is where the runs of a test lie: at several speeds for slip, at
// several lengths for a fixed offset, or at none in particular, which is a test
// of one length.
type Design struct {
	Places  []float64 // speeds in any unit, or lengths as shares of the longest one, which is 1
	Zero    bool      // the line's value at no speed is sought, not its slope
	Repeats int       // runs at each place, or in all
}

// Runs returns the number of all runs.
func (d Design) Runs() int { return max(1, len(d.Places)) * d.Repeats }

// leverage returns by what the scatter of a run is multiplied, and its degrees
// of freedom. Source: JCGM 100, 4.2.3 and H.3.3.
func (d Design) leverage() (factor, dof float64) {
	n := float64(d.Runs())
	if len(d.Places) == 0 {
		return 1 / math.Sqrt(n), n - 1
	}
	xs := Series(d.Places)
	sxx := xs.squares() * float64(d.Repeats)
	if d.Zero {
		return math.Sqrt(1/n + xs.Mean()*xs.Mean()/sxx), n - 2
	}
	return 1 / math.Sqrt(sxx), n - 2
}

// Expect returns what a test would say of an axis without error: a relative
// error of 0, with its uncertainty, which eight of ten such tests keep to.
// t.Commanded is the longest length, t.Scatter what the runs are expected to
// scatter by. It needs more runs than it determines values (ErrTooFew), at more
// than one place if there are places (ErrOneLength). Source: JCGM 100, 5.1.2.
func (t Test) Expect(d Design) (Estimate, error) {
	factor, dof := d.leverage()
	switch {
	case !(t.Commanded > 0):
		return Estimate{}, ErrLength
	case !(dof >= 1):
		return Estimate{}, ErrTooFew
	case !finite(factor):
		return Estimate{}, ErrOneLength
	}
	t.Runs = d.Runs()
	spread := math.Hypot(t.Scatter, t.steps().Combined()) * shownBy8of10(dof)
	if step := t.With.Resolution; t.Runs == 2 && step > 0 { // they differ by whole steps
		spread = math.Ceil(spread*math.Sqrt2/step) * step / math.Sqrt2
	}
	own := Estimate{U: spread * factor, Dof: dof}
	if d.Zero {
		own.U = max(own.U, t.withSlowest(d)/own.K())
	}
	b := Budget{{ID: Scatter, U: own.U, Dof: dof, TypeA: true, Shape: ScaledT}}
	steps := t.steps()
	if len(d.Places) > 0 { // the step is read once at each of them
		once, _ := Design{Places: d.Places, Zero: d.Zero, Repeats: 1}.leverage()
		if d.Zero {
			once = max(1, once)
		}
		steps = Budget{{ID: Resolution, U: steps.Combined() * once, Dof: math.Inf(1), Fixed: true, Step: true}}
	}
	b = append(append(b, steps...), t.common()...)
	return b.Scaled(1 / t.Commanded).Estimate(0), nil
}

// reached is how many of its standard deviations the distance of the slowest runs from the line
// takes, so that eight of ten tests keep to it together with a scatter that eight of ten show;
// found by simulation of three and four speeds.
const reached = 1.06

// withSlowest is the half-width that reaches from the line at no speed over the mean of the
// slowest runs, as SlipTest has it: 0 where those are not repeated.
func (t Test) withSlowest(d Design) float64 {
	n, repeats := float64(d.Runs()), float64(d.Repeats)
	dof := n - float64(len(d.Places))
	if dof < 1 {
		return 0
	}
	xs := Series(d.Places)
	slowest, mean := xs[0], xs.Mean()
	for _, x := range xs {
		slowest = min(slowest, x)
	}
	factor, _ := d.leverage()
	share := 1/n - mean*(slowest-mean)/(xs.squares()*repeats)   // of each of the slowest runs, in the line
	apart := math.Sqrt(max(0, factor*factor+1/repeats-2*share)) // JCGM 100, 5.2.2
	scatter := math.Hypot(t.Scatter, t.steps().Combined())
	slow := Estimate{U: scatter * shownBy8of10(dof) / math.Sqrt(repeats), Dof: dof} // JCGM 100, 4.2.3 (5)
	return reached*apart*scatter + slow.Expanded()
}

// shownBy8of10 is how many times the true standard deviation the one that readings show may be
// in eight of ten tests: √(χ²₀.₈/ν). The quantile is up to 0.7 % too small, for which a little is
// added.
func shownBy8of10(dof float64) float64 {
	return 1.015 * math.Sqrt(distribution.ReducedChiSquare(normal80, dof))
}

// trueIn8of10 is how many times the one that readings show the true standard deviation may be
// in eight of ten tests: √(ν/χ²₀.₂). Of one degree of freedom it is 8 % too large, which
// promises less, and good to 0.5 % of more.
func trueIn8of10(dof float64) float64 {
	return 1 / math.Sqrt(distribution.ReducedChiSquare(-normal80, dof))
}

// normal80 is the one-sided 80 % quantile of the normal distribution.
const normal80 = 0.8416212335729143

// RunsFor returns the design with the fewest repeats, at least as many as d has
// and at most most, whose expanded uncertainty is at most u; false if there is
// none.
func (t Test) RunsFor(u float64, d Design, most int) (Design, bool) {
	for ; d.Repeats <= most; d.Repeats++ {
		if e, err := t.Expect(d); err == nil && e.HalfWidth() <= u {
			return d, true
		}
	}
	return d, false
}

// LengthFor returns the shortest test with an expanded uncertainty of at most u
// among those that at makes of a length: whole multiples of step up to most,
// in mm. False if there is none. A longer move is taken to be no worse.
func LengthFor(u float64, d Design, step, most float64, at func(length float64) Test) (Test, bool) {
	enough := func(n int) bool {
		e, err := at(float64(n) * step).Expect(d)
		return err == nil && e.HalfWidth() <= u
	}
	low, high := 0, int(most/step) // low is not enough
	if high < 1 || !enough(high) {
		return Test{}, false
	}
	for high-low > 1 {
		if mid := (low + high) / 2; enough(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return at(float64(high) * step), true
}

// ExpectLost returns how well the difference between both directions at one
// target would be known, in mm, from positions read so many times from either
// side. It needs two of each (ErrTooFew). Source: JCGM 100, 5.1.2.
func (t Test) ExpectLost(repeats int) (Estimate, error) {
	if repeats < 2 {
		return Estimate{}, ErrTooFew
	}
	n := float64(repeats)
	step, dof := t.With.resolution(Resolution), 2*(n-1)
	spread := math.Hypot(t.Scatter, step.U) * shownBy8of10(dof)
	return Budget{{ID: Scatter, U: spread * math.Sqrt(2/n), Dof: dof, TypeA: true, Shape: ScaledT}, step, step}.Estimate(0), nil
}
