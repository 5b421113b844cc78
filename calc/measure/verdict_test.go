package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// known is a scale with a relative error of e, its uncertainty and floor, all
// in percent, from three runs.
func known(e, u, floor float64, dof float64) Scale {
	return Scale{Ratio: Estimate{Value: 1 + e/100, U: u / 100, Dof: dof}, Floor: floor / 100, Runs: 3}
}

func TestJudge(t *testing.T) {
	inf := math.Inf(1)
	check := func(want Verdict, s Scale) Judgement {
		t.Helper()
		j, err := s.Judge(0.005)
		require.NoError(t, err)
		assert.Equal(t, want, j.Verdict)
		assert.InDelta(t, 1, j.Within+j.Above+j.Below, 1e-12)
		return j
	}
	check(LeaveIt, known(0, 0.1, 0.1, inf))
	// Three runs that were not planned may err in 1.83 %: 2.09 u.
	check(LeaveIt, known(0.29, 0.1, 0.1, inf))
	check(MeasureMore, known(0.292, 0.1, 0.02, inf))
	check(ChangeIt, known(0.71, 0.1, 0.1, inf))
	check(ChangeIt, known(-0.71, 0.1, 0.1, inf))
	check(MeasureMore, known(-0.708, 0.1, 0.02, inf))
	check(MeasureMore, known(-0.71, 0.1, 0.02, 2)) // t is 5 there
	// Those of a plan in 1/20: 1.645 u. Before it is through there is no verdict.
	planned := func(e float64, plan int) Scale {
		s := known(e, 0.1, 0.02, inf)
		s.Plan = plan
		return s
	}
	check(LeaveIt, planned(0.335, 3))
	check(MeasureMore, planned(0.337, 3))
	check(ChangeIt, planned(0.665, 3))
	check(MeasureMore, planned(0.663, 3))
	check(MeasureMore, planned(30, 4))
	check(MeasureMore, planned(0.665, 2)) // after it, each look counts as before
	check(ChangeIt, planned(0.71, 2))

	// Hopeless: the floor alone, whatever the value and whatever the rest.
	check(LeaveIt, known(0, 0.1, 0.5*0.9999, inf))
	check(NotWithThis, known(0, 0.1, 0.5*1.0001, inf))
	far := check(NotWithThis, known(-30, 0.1, 0.5*1.0001, inf))
	assert.True(t, far.Beyond(), "off for certain, and still not to be set right with this")
	check(NotWithThis, known(-30, 3, 0.5*1.0001, 2))
	// A large scatter alone is not hopeless: more runs, or enough already.
	check(MeasureMore, known(0, 3, 0.01, 2))
	check(ChangeIt, known(-30, 3, 0.01, 2))
	check(MeasureMore, known(0, 10, 0.01, inf)) // beyond for sure, but on which side?
	check(ChangeIt, heron(t))

	// Either is fine: near the tolerance for certain, and not to be parted.
	check(EitherIsFine, known(0.5, 0.05, 0.05, 4))
	check(EitherIsFine, known(-0.5, 0.05, 0.05, 4))
	check(MeasureMore, known(0.5, 0.2, 0.05, 2))    // it may be far from it yet
	check(MeasureMore, known(0.42, 0.06, 0.001, 4)) // more runs would tell

	many := known(0.5, 0.05, 0.02, 58) // more than anybody is asked for
	many.Runs = 60
	check(EitherIsFine, many)

	// Nothing known: no answer that sounds like one.
	j := check(MeasureMore, known(-30, 0, 0, inf))
	assert.Equal(t, []Warning{WarnNothingKnown}, j.Warnings)
}

func TestJudgeRefuses(t *testing.T) {
	fails := func(want error, s Scale, tolerance float64) {
		t.Helper()
		_, err := s.Judge(tolerance)
		assert.ErrorIs(t, err, want)
		_, err = s.Advise(tolerance)
		assert.ErrorIs(t, err, want)
	}
	fails(ErrTolerance, known(0, 1, 1, 3), 0)
	fails(ErrTolerance, known(0, 1, 1, 3), -1)
	fails(ErrNotFinite, known(0, 1, 1, 3), math.NaN())
	fails(ErrNotFinite, known(math.NaN(), 1, 1, 3), 0.1)
	fails(ErrUncertainty, known(0, -1, 1, 3), 0.1)
	fails(ErrNothingMoved, known(-100, 1, 1, 3), 0.1)
	fails(ErrNotFinite, known(0, 1, math.NaN(), 3), 0.1)

	m, err := Repeated{Readings: Series{80}}.Measure()
	require.NoError(t, err)
	for _, commanded := range []float64{0, -80} {
		_, err = ScaleOf(commanded, m)
		assert.ErrorIs(t, err, ErrLength)
	}
	_, err = ScaleOf(math.Inf(1), m)
	assert.ErrorIs(t, err, ErrNotFinite)
	_, err = ScaleOf(80, Measured{})
	assert.ErrorIs(t, err, ErrNothingMoved)
	assert.Zero(t, Scale{}.Steps(80))
}

func TestVerdictIsTheSameBothWays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := rapid.Float64Range(-2, 2).Draw(t, "e")
		u := rapid.Float64Range(1e-4, 1).Draw(t, "u")
		floor := u * rapid.Float64Range(0, 1).Draw(t, "floor")
		dof := rapid.Float64Range(1, 100).Draw(t, "dof")
		j, err := known(e, u, floor, dof).Judge(0.005)
		require.NoError(t, err)
		back, err := known(-e, u, floor, dof).Judge(0.005)
		require.NoError(t, err)
		assert.Equal(t, j.Verdict, back.Verdict)
		assert.InDelta(t, j.Above, back.Below, 1e-9)
		assert.InDelta(t, j.Within, back.Within, 1e-9)
	})
}

// What all evidence must hold, whichever kind it is.
func TestEvidenceLaws(t *testing.T) {
	kinds := map[string]func(with Instrument, mark float64, remaining Series) Evidence{
		"mark test": func(with Instrument, mark float64, remaining Series) Evidence {
			return MarkTest{Marks: Series{mark}, Remaining: remaining, With: with}
		},
		"mark test, each marked": func(with Instrument, mark float64, remaining Series) Evidence {
			test := MarkTest{With: with, RemainingWith: &with}
			for _, r := range remaining { // marks that belong to their runs
				test.Marks = append(test.Marks, mark+r/10)
				test.Remaining = append(test.Remaining, r)
			}
			return test
		},
		"repeated": func(with Instrument, _ float64, remaining Series) Evidence {
			return Repeated{Readings: remaining, With: with}
		},
		"two means": func(with Instrument, mark float64, remaining Series) Evidence {
			return TwoMeans{Repeated{Readings: Series{mark, mark * 1.01}, With: with}, Repeated{Readings: remaining, With: with}}
		},
	}
	for name, evidence := range kinds {
		t.Run(name, func(t *testing.T) { rapid.Check(t, func(t *rapid.T) { checkEvidence(t, evidence) }) })
	}
}

func checkEvidence(t *rapid.T, evidence func(with Instrument, mark float64, remaining Series) Evidence) {
	remaining := Series(rapid.SliceOfN(rapid.Float64Range(5, 60), 1, 8).Draw(t, "remaining"))
	with := Instrument{
		Resolution: rapid.Float64Range(0.01, 1).Draw(t, "d"),
		Accuracy:   rapid.Float64Range(0, 1).Draw(t, "a"),
		Eye:        rapid.Float64Range(0.01, 1).Draw(t, "eye"),
	}
	scaleOf := func(f float64, order []int) Scale {
		longer := with
		longer.Resolution *= f
		longer.Accuracy *= f
		longer.Eye *= f
		var list Series
		for _, i := range order {
			list = append(list, remaining[i]*f)
		}
		m, err := evidence(longer, 100*f, list).Measure()
		require.NoError(t, err)
		s, err := ScaleOf(80*f, m)
		require.NoError(t, err)
		return s
	}
	order := make([]int, len(remaining))
	for i := range order {
		order[i] = i
	}
	s := scaleOf(1, order)
	same := func(a, b Estimate) {
		t.Helper()
		assert.InDelta(t, a.Value, b.Value, 1e-11)
		assert.InDelta(t, a.U, b.U, 1e-11)
		assert.InEpsilon(t, 1+1/a.Dof, 1+1/b.Dof, 1e-6)
	}
	same(s.Ratio, scaleOf(1, rapid.Permutation(order).Draw(t, "order")).Ratio)
	same(s.Ratio, scaleOf(rapid.Float64Range(0.1, 30).Draw(t, "longer"), order).Ratio)

	c := s.Factor()
	assert.InEpsilon(t, 1, c.Value*s.Ratio.Value, 1e-14)
	assert.InEpsilon(t, s.Ratio.U/s.Ratio.Value, c.U/c.Value, 1e-12)
	assert.InEpsilon(t, 400*c.U, s.Steps(400).U, 1e-12)
	assert.InEpsilon(t, 400.0, s.Steps(400).Scaled(s.Ratio.Value).Value, 1e-12)
	assert.InEpsilon(t, 5*s.Ratio.Value, s.Travel(5).Value, 1e-14)
	assert.InEpsilon(t, 5*s.Ratio.U, s.Travel(5).U, 1e-14)
	assert.Equal(t, math.Abs(c.Value-1) > c.Expanded(), s.Significant())

	// More runs, looked ahead by either way, are the same; and they help.
	further := s.withRuns(s.Runs + 3)
	now, then := s.Ratio.parts(), further.Ratio.parts() // from five runs on the Guide's is a bound, and may be wider than that of four
	assert.LessOrEqual(t, then.HalfWidth(0.05), now.HalfWidth(0.05)*(1+1e-12))
	assert.GreaterOrEqual(t, further.Ratio.HalfWidth(), s.Floor*(1-1e-12))
	if next := s.Test; next.Runs > 0 {
		same(s.Ratio, s.as(next).Ratio)
		assert.InDelta(t, s.Floor, s.as(next).Floor, 1e-12*s.Ratio.U)
		next.Runs += 3
		if s.Runs != 2 { // of which the scatter is not taken to be below a step
			want := next.Budget().Estimate(s.Test.Length).Scaled(1 / s.Test.Commanded)
			assert.InEpsilon(t, want.U, further.Ratio.U, 1e-6)
			assert.InEpsilon(t, want.HalfWidth(), further.Ratio.HalfWidth(), 1e-6)
		}
	}
	j, err := s.Judge(0.005)
	require.NoError(t, err)
	assert.InDelta(t, 1, j.Within+j.Above+j.Below, 1e-12)
	list, err := s.Advise(0.005)
	require.NoError(t, err)
	for _, r := range list {
		assert.True(t, finite(r.U) && r.U > 0)
	}
}
