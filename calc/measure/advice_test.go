package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// marked is 80 mm commanded, marked at 105 mm, with the fed lengths given.
func marked(t *testing.T, with Instrument, fed ...float64) Scale {
	t.Helper()
	test := MarkTest{Marks: Series{105}, With: with}
	for _, f := range fed {
		test.Remaining = append(test.Remaining, 105-f)
	}
	m, err := test.Measure()
	require.NoError(t, err)
	s, err := ScaleOf(80, m)
	require.NoError(t, err)
	return s
}

func advise(t *testing.T, s Scale) (map[Means]Remedy, []Means) {
	t.Helper()
	list, err := s.Advise(0.005)
	require.NoError(t, err)
	by, order := map[Means]Remedy{}, []Means(nil)
	for _, r := range list {
		by[r.Means] = r
		order = append(order, r.Means)
	}
	return by, order
}

func TestAdviseRuns(t *testing.T) {
	s := marked(t, caliper, 79.05, 79.35, 79.35)
	j, err := s.Judge(0.005)
	require.NoError(t, err)
	require.Equal(t, MeasureMore, j.Verdict)
	by, order := advise(t, s)
	assert.Equal(t, MoreRuns, order[0])
	runs := by[MoreRuns]
	assert.Equal(t, 4, runs.Next.Runs)
	require.NotEqual(t, MeasureMore, runs.Verdict)
	at := func(n int) Verdict { return s.promised(s.withRuns(n), math.Sqrt(float64(n)/3-1), 0.005) }
	assert.Equal(t, runs.Verdict, at(runs.Enough.Runs))
	assert.Equal(t, MeasureMore, at(runs.Enough.Runs-1), "no fewer would do")
	assert.Equal(t, runs.Verdict, s.withRuns(runs.Enough.Runs).settled(0.005), "nor does it say something else without bad luck")
	assert.InEpsilon(t, s.withRuns(4).Ratio.HalfWidth(), runs.U, 1e-14)

	longer, ok := by[LongerMove]
	require.True(t, ok)
	assert.Equal(t, 125.0, longer.Next.Commanded, "the caliper reaches no farther")
	assert.LessOrEqual(t, longer.Next.Mark, 150.0)
	assert.InDelta(t, 105-79.25, longer.Next.Mark-longer.Next.Length, 1e-6, "the mark moves with it")
}

// With two or three runs it is one more run that helps most, unless the
// scatter is nothing beside the instrument.
func TestAdviseOrder(t *testing.T) {
	first := func(want Means, s Scale) {
		t.Helper()
		_, order := advise(t, s)
		require.NotEmpty(t, order)
		assert.Equal(t, want, order[0])
	}
	first(MoreRuns, marked(t, caliper, 79.6))
	first(MoreRuns, marked(t, caliper, 79.6, 79.9))
	first(MoreRuns, marked(t, caliper, 79.6, 79.9, 79.5))
	first(LongerMove, marked(t, caliper, 79.6, 79.9, 79.5, 79.7, 79.8, 79.6))
	coarse := Instrument{Resolution: 0.5, Reach: 150}
	first(BetterInstrument, marked(t, coarse, 79.6, 79.6, 79.6))
}

// Where the instrument is hopeless, more runs are no remedy.
func TestAdviseHopeless(t *testing.T) {
	rule, ok := InstrumentOf("rule")
	require.True(t, ok)
	s := marked(t, rule, 76, 76, 76.5)
	j, err := s.Judge(0.005)
	require.NoError(t, err)
	require.Equal(t, NotWithThis, j.Verdict)
	by, _ := advise(t, s)
	assert.NotContains(t, by, MoreRuns)
	better := by[BetterInstrument]
	assert.Equal(t, "caliper-0.1", better.Next.With.ID)
	longer, ok := by[LongerMove]
	require.True(t, ok)
	assert.Equal(t, 160.0, longer.Next.Commanded)
	assert.Equal(t, ChangeIt, longer.Verdict)
	assert.LessOrEqual(t, longer.Enough.Mark, 300.0)
	assert.LessOrEqual(t, s.as(longer.Enough).Floor, 0.005, "no verdict from a hopeless length")
	assert.Zero(t, int(longer.Enough.Commanded)%5, "a round figure")
}

func TestAdviseInstrument(t *testing.T) {
	stated := caliper
	stated.Accuracy = 0.5
	s := marked(t, stated, 79.6, 79.6, 79.65)
	by, _ := advise(t, s)
	better := by[BetterInstrument]
	assert.Equal(t, "caliper-0.02", better.Next.With.ID)
	assert.Equal(t, 0.03, better.Next.With.Accuracy, "the usual ones of the other, whatever was stated")
	s.Test.With.Accuracy = 0.01
	assert.InDelta(t, 0.01, s.Test.finer(Instruments[5]).With.Accuracy, 1e-15, "no worse than what there is")
	s.Test.With.Accuracy = 0
	assert.Equal(t, 0.03, s.Test.finer(Instruments[5]).With.Accuracy, "nothing was stated: the usual ones")

	// Of two instruments the coarser one is replaced, and the given one is left alone.
	rule, _ := InstrumentOf("rule")
	two := s.Test
	two.RemainingWith = &rule
	finer := two.finer(caliper)
	assert.Equal(t, 0.05, finer.RemainingWith.Resolution)
	assert.Equal(t, 1.0, rule.Resolution)
	two.With, two.RemainingWith = rule, &caliper
	finer = two.finer(Instruments[5])
	assert.Equal(t, 0.01, finer.With.Resolution)
	assert.Equal(t, 0.05, finer.RemainingWith.Resolution)

	m, err := MarkTest{Marks: Series{105}, Remaining: Series{25.4, 25.4, 25.5}, With: caliper, RemainingWith: &rule}.Measure()
	require.NoError(t, err)
	s, err = ScaleOf(80, m)
	require.NoError(t, err)
	by, _ = advise(t, s)
	assert.Equal(t, 0.1, by[BetterInstrument].Next.RemainingWith.Resolution)
}

func TestAdviseSettled(t *testing.T) {
	s := heron(t)
	by, order := advise(t, s)
	assert.Equal(t, MoreRuns, order[0])
	assert.Equal(t, ChangeIt, by[MoreRuns].Verdict)
	assert.Equal(t, s.Test, by[MoreRuns].Enough, "it is settled")
	assert.NotContains(t, by, BetterInstrument, "it would bring less than a tenth, and settle nothing")

	fifty := known(0.5, 0.1, 0.01, 49)
	fifty.Runs = 50
	list, err := fifty.Advise(0.005)
	require.NoError(t, err)
	assert.Empty(t, list)

	finest := marked(t, Instruments[5], 79.6, 79.7, 79.8)
	finest.Test.With.Reach = finest.Test.Mark
	_, order = advise(t, finest)
	assert.Equal(t, []Means{MoreRuns}, order, "no finer instrument, and no room for a longer move")
}
