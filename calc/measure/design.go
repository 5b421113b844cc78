package measure

import "math"

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
// error of 0, with its uncertainty. t.Commanded is the longest length, t.Scatter
// what the runs are expected to scatter by. It needs more runs than it
// determines values (ErrTooFew), at more than one place if there are places
// (ErrOneLength). Source: JCGM 100, 5.1.2.
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
	b := Budget{{ID: Scatter, U: t.Scatter * factor, Dof: dof, TypeA: true, Shape: ScaledT}}
	if len(d.Places) > 0 && !d.Zero { // the step is read once for each length
		once, _ := Design{Places: d.Places, Repeats: 1}.leverage()
		b = append(b, t.steps().Scaled(once)...)
		b = append(b, t.common()...)
	} else {
		b = append(b, t.Budget().Fixed()...)
	}
	return b.Scaled(1 / t.Commanded).Estimate(0), nil
}

// RunsFor returns the design with the fewest repeats, at least as many as d has
// and at most most, whose expanded uncertainty is at most u; false if there is
// none.
func (t Test) RunsFor(u float64, d Design, most int) (Design, bool) {
	for ; d.Repeats <= most; d.Repeats++ {
		if e, err := t.Expect(d); err == nil && e.Expanded() <= u {
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
		return err == nil && e.Expanded() <= u
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
	step := t.With.resolution(Resolution).U
	return Budget{{ID: Scatter, U: t.Scatter * math.Sqrt(2/n), Dof: 2 * (n - 1), TypeA: true, Shape: ScaledT},
		{ID: Resolution, U: step * math.Sqrt2, Dof: math.Inf(1), Fixed: true}}.Estimate(0), nil
}
