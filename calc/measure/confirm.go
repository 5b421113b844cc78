package measure

import "math"

// Next returns in which length the mean of some runs (mostly one) of the same
// test should lie once the setting is changed to what m and the commanded
// length, in mm, ask for.
//
// The interval is one for a prediction: the scatter of the new runs is in it,
// and that of the old ones through the correction. So are the instrument's
// steps, of both rounds. Its limits of error are not: the same instrument errs
// in both rounds alike, so that the new reading comes out at the commanded
// length, whatever the true one. Source: JCGM 100, 5.1.2, F.1.2.3.
//
// With one old run the placing of the mark stands for the scatter. Of a
// TwoMeans there is no such test to repeat: ErrUnpaired.
func (m Measured) Next(commanded float64, runs int) (Estimate, error) {
	t := m.Test
	switch {
	case !finite(commanded):
		return Estimate{}, ErrNotFinite
	case commanded <= 0 || m.Length <= 0:
		return Estimate{}, ErrLength
	case runs < 1:
		return Estimate{}, ErrNoReading
	case t.Runs < 1:
		return Estimate{}, ErrUnpaired
	}
	c := commanded / m.Length
	old, now := float64(t.Runs), float64(runs)
	scatter := Component{ID: Scatter, U: t.Scatter, Dof: math.Inf(1)}
	if t.Known() {
		scatter = t.single()
	}
	b := Budget{scatter}.Scaled(math.Sqrt(c*c/old + 1/now)) // s²·(c²/n + 1/m), JCGM 100, 5.1.2 (10)
	b = append(b, t.steps().Scaled(c)...)
	return append(b, t.steps()...).Estimate(commanded), nil
}
