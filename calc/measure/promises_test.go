package measure

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// √(χ²₀.₈/ν) and √(ν/χ²₀.₂), worked out with 25 digits from the incomplete gamma function.
// What may be shown is 0.8 to 1.5 % more than exact, what may be true 7.7 % more of one degree
// of freedom, and up to 0.5 % less of more.
func TestPromisedSpreads(t *testing.T) {
	for _, c := range []struct{ dof, shown, taken, real float64 }{
		{1, 1.28155156554, 1.29198562936, 3.94715387554},
		{2, 1.26863624118, 1.28359199086, 2.11693649355},
		{3, 1.24386865278, 1.25988597706, 1.72758729408},
		{4, 1.22358251602, 1.24002596566, 1.55757542256},
		{5, 1.2074167571, 1.22405862817, 1.46097243623},
		{8, 1.17420672319, 1.19099966055, 1.31968309457},
		{20, 1.11887232604, 1.13541484017, 1.17127664223},
		{49, 1.07929142651, 1.09541310947, 1.09947680649},
		{100, 1.05672471892, 1.07255155208, 1.0663348276},
	} {
		assert.InDelta(t, 1.0115, shownBy8of10(c.dof)/c.shown, 0.0036)
		if c.dof == 1 {
			assert.InEpsilon(t, 1.0771*c.real, trueIn8of10(c.dof), 0.001)
			continue
		}
		assert.InEpsilon(t, c.real, trueIn8of10(c.dof), 0.005)
	}
	assert.InEpsilon(t, (1+math.Erf(normal80/math.Sqrt2))/2, 0.8, 1e-15)
}

// By hand: five runs with a scatter of 0.15 mm and two steps of 0.05 mm show
// √(0.15² + 2·0.05²/12)·1.2236 at most in eight of ten tests, for which 1.5 % is added.
func TestExpectByHand(t *testing.T) {
	test := Test{Commanded: 80, Length: 80, Mark: 105, Scatter: 0.15, With: caliper}
	e, err := test.Expect(Design{Repeats: 5})
	require.NoError(t, err)
	shown := math.Sqrt(0.15*0.15+0.05*0.05/6) * 1.22358251602 * 1.015
	assert.InEpsilon(t, math.Hypot(t4*shown/math.Sqrt(5), 0.05*(1-math.Sqrt(0.05)))/80, e.HalfWidth(), 0.002)
	assert.InEpsilon(t, math.Hypot(shown/math.Sqrt(5), 0.05/math.Sqrt(6))/80, e.U, 0.002)

	// Two runs that scatter by 0.25 differ by √(0.25² + 2·0.1²/12)·1.2816·√2 = 0.459 at most in
	// eight of ten tests, read to 0.1: by 0.5.
	e, err = Test{Commanded: 300, Length: 300, Mark: 325, Scatter: 0.25, With: Instrument{Resolution: 0.1}}.Expect(Design{Repeats: 2})
	require.NoError(t, err)
	assert.InEpsilon(t, math.Hypot(0.5/2, 0.1/math.Sqrt(6))/300, e.U, 1e-9)

	// A line at no speed: 1, 2, 4, 8 thrice reach back by 3.75 of a root of 86.25; the step once each.
	e, err = Test{Commanded: 100, Scatter: 0.15, With: caliper}.Expect(Design{Places: []float64{1, 2, 4, 8}, Zero: true, Repeats: 3})
	require.NoError(t, err)
	step := 0.05 / math.Sqrt(12)
	scatter := math.Hypot(0.15, step) * 1.1761713786 * math.Sqrt(1./12+3.75*3.75/86.25)
	// It reaches farther to the mean of the slowest: t of eight degrees of freedom, √(χ²₀.₈/8) of
	// which is 1.1742, and 1.06 of how far this and the line lie apart by chance.
	apart := math.Sqrt(1./12 + 3.75*3.75/86.25 + 1./3 - 2*(1./12+3.75*2.75/86.25))
	slowest := math.Hypot(0.15, step) * (1.06*apart + 2.306004135204166*1.19099966055/math.Sqrt(3))
	assert.Greater(t, slowest, 2.2281388519649385*scatter)
	scatter = slowest / 2.2281388519649385
	rounding := step * max(1, math.Sqrt(1./4+3.75*3.75/28.75))
	assert.InEpsilon(t, math.Hypot(scatter, rounding)/100, e.U, 1e-9)
	assert.InEpsilon(t, math.Hypot(2.2281388519649385*scatter, 1.959963984540054*rounding)/100, e.HalfWidth(), 1e-9)

	// Lengths of a fifth, half and all: the slope, whose step counts once at each.
	e, err = Test{Commanded: 100, Scatter: 0.15, With: caliper}.Expect(Design{Places: []float64{0.2, 0.5, 1}, Repeats: 3})
	require.NoError(t, err)
	sxx := math.Pow(0.2-17./30, 2) + math.Pow(0.5-17./30, 2) + math.Pow(1-17./30, 2)
	assert.InEpsilon(t, math.Hypot(math.Hypot(0.15, step)*1.183412130858*1.015/math.Sqrt(3*sxx), step/math.Sqrt(sxx))/100, e.U, 0.001)
}

// Eight of ten tests that scatter as a plan supposes are known as well as it says, or better.
func TestSimulatedPlan(t *testing.T) {
	with := Instrument{Resolution: 0.05, Accuracy: 0.05}
	for _, runs := range []int{3, 5, 10} {
		plan, err := Test{Commanded: simCommanded, Length: simCommanded, Mark: simMark, Scatter: 0.15, With: with}.Expect(Design{Repeats: runs})
		require.NoError(t, err)
		kept, tests := 0, 2000
		for i := range tests {
			if s, _ := newMachine(i, 1, 0.15, with).measure(t, runs); s.Ratio.HalfWidth() <= plan.HalfWidth() {
				kept++
			}
		}
		share := 100 * float64(kept) / float64(tests)
		assert.InDelta(t, 80, share, 4, "%d runs", runs)
		t.Logf("%d runs: %.1f %%", runs, share)
	}
}

// Promised is what is still so where the error comes out off by some bad luck, on either side.
func TestPromisedReckonsWithBadLuck(t *testing.T) {
	for _, e := range []float64{0.0032, -0.0032, 0.0068, -0.0068} {
		s := Scale{Ratio: Budget{scatterPart(0.0008, 9), evenPart(0.0002)}.Estimate(1 + e), Runs: 10}
		then := s.withRuns(50)
		want := LeaveIt
		if math.Abs(e) > 0.005 {
			want = ChangeIt
		}
		assert.Equal(t, want, s.promised(then, 0, 0.005))
		// On the very edge of a verdict, a scatter that may be wider than it seems promises nothing.
		edge := then
		far := 0.005 - math.Copysign(then.Ratio.halfWidth(2*then.level())*1.05, 0.005-math.Abs(e))
		edge.Ratio.Value = 1 + math.Copysign(far, e)
		assert.Equal(t, want, edge.settled(0.005))
		assert.Equal(t, MeasureMore, s.promised(edge, 0, 0.005))
		// 0.84 of the scatter then, which may be 1.27 of what it seems, five times: 0.0019.
		assert.Equal(t, MeasureMore, s.promised(then, 5, 0.005))
	}
}

// Another test has bad luck of its own, beside that of the one that was made.
func TestPromisedByAnotherTest(t *testing.T) {
	both := 0
	for shift := range 60 {
		at := 79.2 + 0.005*float64(shift)
		s := marked(t, caliper, at-0.1, at+0.1, at-0.05, at+0.05, at, at)
		want := s.promised(s.as(s.Test), math.Sqrt2, 0.005) // as many runs of the same scatter
		assert.Equal(t, want, s.promisedBy(s.Test, 0.005))
		if want != s.promised(s.as(s.Test), 1, 0.005) {
			both++
		}
	}
	assert.Positive(t, both, "else this shows nothing")
}

// What is promised of more runs holds for eight of ten tests. With fewer than five it is only
// said what happens if all stays as it was found.
func TestSimulatedPromises(t *testing.T) {
	const tolerance = 0.005
	with := Instrument{Resolution: 0.05, Accuracy: 0.05}
	lots := rand.New(rand.NewPCG(3, 4))
	open, promised, kept := 0, 0, 0
	for i := range 3000 {
		m := newMachine(i, 1+0.02*(lots.Float64()-0.5), 0.1+0.2*lots.Float64(), with)
		s, first := m.measure(t, 5)
		if s.settled(tolerance) != MeasureMore {
			continue
		}
		open++
		r := s.moreRuns(tolerance)
		if !r.Settles() {
			continue
		}
		promised++
		require.False(t, s.about())
		_, more := m.measure(t, r.Enough.Runs-5)
		together := MarkTest{With: with}
		for _, x := range append(first.Runs, more.Runs...) {
			together.Marks, together.Remaining = append(together.Marks, simMark), append(together.Remaining, simMark-x)
		}
		if _, verdict := judged(t, simCommanded, together); verdict == r.Verdict {
			kept++
		}
	}
	require.Greater(t, promised, 50, "else this shows nothing")
	share := 100 * float64(kept) / float64(promised)
	t.Logf("%d tests without a verdict, %d promises, %.1f %% were kept", open, promised, share)
	assert.GreaterOrEqual(t, share, 80.0)
}

// What is known of five runs or more is promised: by the scatter that eight of ten machines that
// show as much have at most, and with an error that chance has put by that much too near. What
// is known of fewer is about: as it was found, no more, no less.
func TestAboutIsAsItWasFound(t *testing.T) {
	const tolerance = 0.005
	fed := []float64{79.65, 79.95, 79.8, 79.85, 79.7}
	remedies := func(earlier Spread, fed ...float64) (Scale, []Remedy) {
		t.Helper()
		test := MarkTest{Marks: Series{105}, With: caliper, Earlier: earlier}
		for _, f := range fed {
			test.Remaining = append(test.Remaining, 105-f)
		}
		s, verdict := judged(t, 80, test)
		require.Equal(t, MeasureMore, verdict)
		list, err := s.Advise(tolerance)
		require.NoError(t, err)
		return s, list
	}
	for n := 2; n <= 4; n++ {
		s, list := remedies(Spread{}, fed[:n]...)
		settles := 0
		for _, r := range list {
			require.Equal(t, r.Settles(), r.About, "%d runs", n)
			if !r.Settles() {
				continue
			}
			settles++
			then := s.withRuns(r.Enough.Runs)
			if r.Means != MoreRuns {
				then = s.as(r.Enough)
			}
			assert.Equal(t, r.Verdict, then.settled(tolerance), "%d runs", n)
			if r.Means == MoreRuns {
				assert.Equal(t, MeasureMore, s.withRuns(r.Enough.Runs-1).settled(tolerance), "%d runs: no fewer, if they come out so", n)
			}
		}
		assert.Positive(t, settles, "%d runs", n)
	}
	// A fifth, or a scatter from before that is known as well: a promise, which asks for more.
	few, _ := remedies(Spread{}, fed[:4]...)
	for _, c := range []struct {
		earlier Spread
		runs    int
		about   bool
	}{{Spread{}, 5, false}, {Spread{few.Test.Scatter, 1}, 4, false}, {Spread{few.Test.Scatter, 0.99}, 4, true}} {
		s, list := remedies(c.earlier, fed[:c.runs]...)
		runs := list[slices.IndexFunc(list, func(r Remedy) bool { return r.Means == MoreRuns })]
		require.True(t, runs.Settles())
		assert.Equal(t, c.about, runs.About)
		least := s.Runs + 1
		for s.withRuns(least).settled(tolerance) == MeasureMore {
			least++
		}
		assert.Equal(t, c.about, runs.Enough.Runs == least, "a promise asks for more than what it takes if all stays as it was found")
		assert.GreaterOrEqual(t, runs.Enough.Runs, least)
	}

	// The promise by hand: 1.56 is √(ν/χ²₀.₂) of four degrees of freedom, 0.84 the normal 80 %; the
	// mean of all runs may lie as far from that of the five as their difference in variance allows.
	s, list := remedies(Spread{}, fed...)
	runs := list[slices.IndexFunc(list, func(r Remedy) bool { return r.Means == MoreRuns })]
	kept := func(n float64) bool {
		scatter := trueIn8of10(4) * s.Test.Scatter
		then := Budget{scatterPart(scatter/math.Sqrt(n), n-1), evenPart(0.025), evenPart(0.025)}.Estimate(0)
		off := normal80 * scatter * math.Sqrt(1./5-1/n)
		return 0.4-(80-s.Test.Length)-off >= then.halfWidth(2*0.055/n)
	}
	assert.True(t, kept(float64(runs.Enough.Runs)))
	assert.False(t, kept(float64(runs.Enough.Runs-1)))

	// One run shows no scatter: there is nothing that more of the same would be like.
	_, list = remedies(Spread{}, 79.7)
	for _, r := range list {
		assert.False(t, r.Settles() || r.About)
	}
}

// With fewer than five runs no more than "about" is said, unless earlier ones make up for it.
func TestPromisesOfFewRunsAreAbout(t *testing.T) {
	about := func(earlier Spread, fed ...float64) bool {
		t.Helper()
		s, verdict := judged(t, 100, Repeated{Readings: fed, With: Instrument{Resolution: 0.01}, Earlier: earlier})
		require.Equal(t, MeasureMore, verdict)
		by, _ := advise(t, s)
		require.True(t, by[MoreRuns].Settles())
		return by[MoreRuns].About
	}
	assert.True(t, about(Spread{}, 100.1, 100.3))
	assert.True(t, about(Spread{}, 100, 100.5, 99.9, 100.3))
	assert.False(t, about(Spread{0.36, 9}, 99.9, 100.1))
	assert.False(t, about(Spread{0.238, 4}, 100))
}

// An interval of half of the value says nothing of a setting.
func TestVague(t *testing.T) {
	vague := func(u float64) bool {
		return Scale{Ratio: Budget{scatterPart(0, 2), evenPart(u / 0.95)}.Estimate(0.8)}.Vague()
	}
	assert.False(t, vague(0.399))
	assert.True(t, vague(0.401))
}
