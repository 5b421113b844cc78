package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// speeds is 100 mm commanded, with the lengths at each speed.
func speeds(lengths map[float64]Series) SlipTest {
	test := SlipTest{Commanded: 100}
	for v := 0.5; v < 20; v += 0.5 {
		for _, length := range lengths[v] {
			test.Runs = append(test.Runs, SpeedRun{v, length})
		}
	}
	return test
}

var (
	slipping  = speeds(map[float64]Series{1: {99.71, 99.74, 99.69}, 2: {99.52, 99.49, 99.55}, 4: {99.08, 99.11, 99.05}, 8: {98.29, 98.33, 98.24}})
	gripping  = speeds(map[float64]Series{1: {98.91, 98.94, 98.88}, 2: {98.93, 98.9, 98.92}, 4: {98.89, 98.95, 98.91}, 8: {98.91, 98.89, 98.94}})
	threshold = speeds(map[float64]Series{1: {99.50, 99.52, 99.48}, 2: {99.49, 99.51, 99.52}, 4: {99.50, 99.48, 99.51}, 8: {97.29, 97.33, 97.24}})
)

func solveSlip(t *testing.T, test SlipTest) SlipResult {
	t.Helper()
	r, err := test.Solve()
	require.NoError(t, err)
	return r
}

// unionOf is what the interval is to reach over: the line at no speed, and the mean of the
// slowest speed as its repeats have it. All are relative errors.
func unionOf(line, lineHalf, slow, slowHalf float64) float64 {
	return max(lineHalf, math.Abs(line-slow)+slowHalf)
}

// The figures were worked out apart from this code, with 30 digits.
func TestSlipBasis(t *testing.T) {
	zero := solveSlip(t, slipping)
	assert.Equal(t, SlipFound, zero.Trouble)
	assert.Equal(t, FromZeroSpeed, zero.Basis)
	assert.InDelta(t, 1+zero.Line.Intercept, zero.Scale.Ratio.Value, 1e-15)
	assert.InEpsilon(t, 0.0001611839205649, zero.Line.SEIntercept(), 1e-9)
	assert.InEpsilon(t, unionOf(-0.0008260869565217, 0.0003591401557262, -0.002866666666667, 0.0004448987961047), zero.Scale.Ratio.HalfWidth(), 1e-9)
	assert.InDelta(t, 10, zero.Scale.Ratio.Dof, 1e-9)
	assert.Equal(t, 12, zero.Scale.Runs)
	assert.Empty(t, zero.Warnings)

	none := solveSlip(t, gripping)
	assert.Equal(t, NoSlipFound, none.Trouble)
	assert.Equal(t, FromZeroSpeed, none.Basis, "not the mean of all runs: no test on itself says that there is no slip")
	assert.InDelta(t, 1-0.01086376811594, none.Scale.Ratio.Value, 1e-12)
	assert.InEpsilon(t, 0.0003821325043386, none.Scale.Ratio.HalfWidth(), 1e-9)
	assert.Empty(t, none.Warnings)

	// A drive that holds and then gives way: the line is significant, and wrong.
	flat := solveSlip(t, threshold)
	assert.True(t, flat.Significant)
	assert.False(t, flat.Lack.Adequate)
	assert.True(t, flat.Misfit())
	assert.Equal(t, SlipFound, flat.Trouble)
	assert.Equal(t, FromSlowest, flat.Basis)
	assert.InDelta(t, 1-0.005066666666667, flat.Scale.Ratio.Value, 1e-12)
	assert.InEpsilon(t, 0.0008015921580304, flat.Scale.Ratio.HalfWidth(), 1e-9)
	assert.InDelta(t, 8, flat.Scale.Ratio.Dof, 1e-9)
	assert.Equal(t, 12, flat.Scale.Runs)
	assert.Greater(t, flat.Line.Intercept, 0.001, "what the intercept would have said: too much instead of too little")
	assert.Equal(t, []Warning{WarnBent}, flat.Warnings)

	// It gives way before the second speed: the slowest one is within the interval all the same.
	early := solveSlip(t, speeds(map[float64]Series{1: {99.9, 99.92}, 2: {97, 97.03}, 4: {97.02, 97.04}}))
	assert.Equal(t, SlipFound, early.Trouble)
	assert.Equal(t, FromSlowest, early.Basis)
	assert.InDelta(t, 1.02805, early.Scale.Ratio.Value, 1e-12)
	assert.InEpsilon(t, 0.02932878687528, early.Scale.Ratio.HalfWidth(), 1e-9)
	assert.Equal(t, []Warning{WarnBent}, early.Warnings)

	rising := solveSlip(t, speeds(map[float64]Series{1: {99, 99.02}, 2: {99.3, 99.31}, 4: {99.9, 99.91}}))
	assert.Equal(t, ErrorRises, rising.Trouble)
	assert.Equal(t, FromZeroSpeed, rising.Basis)
	assert.InEpsilon(t, 0.003225032936323, rising.Scale.Ratio.HalfWidth(), 1e-9)
	assert.Equal(t, []Warning{WarnErrorRises}, rising.Warnings)
	assert.Equal(t, "no_slip_found slip error_rises_with_speed uneven", NoSlipFound.String()+" "+SlipFound.String()+" "+ErrorRises.String()+" "+ErrorUneven.String())
}

// Where the line does not fit, one mean differs from another by the scatter of the difference
// of two means.
func TestSlipMeansDiffer(t *testing.T) {
	// Three runs each, with a standard deviation of 0.1: one mean is t times the standard
	// uncertainty of the difference off; 2.45 is too much with six degrees of freedom.
	at := func(mean float64) Series { return Series{mean - 0.1, mean, mean + 0.1} }
	off := func(t float64) float64 { return t * 0.1 * math.Sqrt(2.0/3) }
	bump := func(t1, t2, t3 float64) SlipTest {
		return speeds(map[float64]Series{1: at(99 + off(t1)), 2: at(99 + off(t2)), 3: at(99 + off(t3))})
	}
	for _, c := range []struct {
		test SlipTest
		want Trouble
	}{
		{bump(0, 0, -5), SlipFound},
		{bump(0, 2.4, -4), SlipFound},    // up, but not by more than chance explains
		{bump(0, 2.5, -4), ErrorUneven},  // up, and down again
		{bump(0, -3, 3), ErrorUneven},    // down, and up again
		{bump(0, -2.4, 3), ErrorRises},   // down, but not by more than chance explains
		{bump(0, 2.9, 0), ErrorUneven},   // up and back
		{bump(0, 6, 2.6), ErrorUneven},   // the last above the first, but down on the way
		{bump(0, 2.4, 0.1), ErrorUneven}, // the line does not fit, and no pair differs: nothing is claimed
	} {
		r := solveSlip(t, c.test)
		require.True(t, r.Misfit())
		assert.Equal(t, c.want, r.Trouble, r.MeanErrors)
		assert.Equal(t, c.want == SlipFound, r.Basis == FromSlowest, "only slip is taken from the two slowest")
		want := map[Trouble]Warning{SlipFound: WarnBent, ErrorRises: WarnErrorRises, ErrorUneven: WarnErrorUneven}
		assert.Equal(t, []Warning{want[c.want]}, r.Warnings)
	}
}

// The tool's limits are in the uncertainty once, and its steps as the line carries them that
// goes through each speed once.
func TestSlipCommonPart(t *testing.T) {
	m, err := MarkTest{Marks: Series{120}, Remaining: Series{20, 20.1}, With: Instrument{Resolution: 0.1, Accuracy: 0.5}}.Measure()
	require.NoError(t, err)
	steps, limits := 0.1*math.Sqrt(2.0/12)/100, 0.5/math.Sqrt(3)*(99.95/120)/100
	line := math.Hypot(1/math.Sqrt(4), 3.75/math.Sqrt(28.75)) // 1, 2, 4, 8: mean 3.75, squares 28.75
	two := math.Hypot(1/math.Sqrt2, 1.5/math.Sqrt(0.5))       // 1, 2
	for _, c := range []struct {
		test  SlipTest
		lever float64
	}{{slipping, max(1, line)}, {gripping, max(1, line)}, {threshold, two}} {
		plain := solveSlip(t, c.test)
		c.test.Common = m.Budget.Fixed()
		with := solveSlip(t, c.test)
		assert.Equal(t, plain.Scale.Ratio.Value, with.Scale.Ratio.Value)
		assert.Equal(t, plain.P, with.P, "it is common to all runs: the slope does not know of it")
		assert.InEpsilon(t, math.Hypot(plain.Scale.Ratio.U, math.Hypot(limits, steps*c.lever)), with.Scale.Ratio.U, 1e-12)
		assert.InEpsilon(t, math.Hypot(0.95*limits*math.Sqrt(3), 1.959963984540054*steps*c.lever), with.Scale.Floor, 1e-9)
		j, err := with.Scale.Judge(0.02)
		require.NoError(t, err)
		assert.Equal(t, LeaveIt, j.Verdict)
	}
}

func TestHoldsUpTo(t *testing.T) {
	r := solveSlip(t, slipping)
	a, b := r.Line.Intercept, r.Line.Slope
	v, ok := r.HoldsUpTo(0.01, false)
	require.True(t, ok)
	assert.InDelta(t, -0.01, a+b*v, 1e-12)
	v, ok = r.HoldsUpTo(0.01, true)
	require.True(t, ok)
	assert.InDelta(t, -0.01, (1+a+b*v)/(1+a)-1, 1e-12)
	v, ok = r.HoldsUpTo(0.0001, false)
	assert.True(t, ok)
	assert.Zero(t, v, "beyond at any speed")
	_, ok = r.HoldsUpTo(0, false)
	assert.False(t, ok)
	for _, other := range []SlipTest{gripping, threshold} {
		_, ok = solveSlip(t, other).HoldsUpTo(0.01, false)
		assert.False(t, ok)
	}

	_, hidden := solveSlip(t, gripping).MayHide(0.005)
	assert.False(t, hidden)
	coarse := speeds(map[float64]Series{1: {99.5, 100.5}, 3: {99, 100.5}, 5: {100, 98.5}, 7: {98, 100}})
	w, hidden := solveSlip(t, coarse).MayHide(0.005)
	assert.True(t, hidden)
	assert.Equal(t, WarnMayHide, w)
	_, hidden = r.MayHide(0.0001)
	assert.False(t, hidden, "it was found")
}

func TestSlipEdges(t *testing.T) {
	fails := func(want error, change func(*SlipTest)) {
		t.Helper()
		test := slipping
		change(&test)
		_, err := test.Solve()
		assert.ErrorIs(t, err, want)
	}
	same := []SpeedRun{{3, 99}, {3, 99.1}, {3, 99.2}}
	fails(ErrOneLength, func(t *SlipTest) { t.Runs = same })
	fails(ErrTooFew, func(t *SlipTest) { t.Runs = nil })
	fails(ErrTooFew, func(t *SlipTest) { t.Runs = same[:2] })
	fails(ErrLength, func(t *SlipTest) { t.Runs = append(same[:2:2], SpeedRun{4, 0}) })
	fails(ErrLength, func(t *SlipTest) { t.Runs = append(same[:2:2], SpeedRun{-4, 99}) })
	fails(ErrNotFinite, func(t *SlipTest) { t.Runs = append(same[:2:2], SpeedRun{math.NaN(), 99}) })
	fails(ErrLength, func(t *SlipTest) { t.Commanded = 0 })
	fails(ErrNotFinite, func(t *SlipTest) { t.Commanded = math.Inf(1) })
	fails(ErrNotFinite, func(t *SlipTest) { t.Common = Budget{{U: math.NaN()}} })
	fails(ErrProbability, func(t *SlipTest) { t.Alpha = 2 })
	fails(ErrProbability, func(t *SlipTest) { t.Alpha = -1 })

	warns := func(want Warning, lengths map[float64]Series) {
		t.Helper()
		r := solveSlip(t, speeds(lengths))
		assert.Equal(t, []Warning{want}, r.Warnings)
		assert.NoError(t, r.Scale.Check())
	}
	warns(WarnTwoSpeeds, map[float64]Series{1: {99, 99.1}, 2: {99, 99.2}})
	warns(WarnNoRepeats, map[float64]Series{1: {99}, 2: {99.1}, 3: {99}})
	warns(WarnRepeatsEqual, map[float64]Series{1: {99, 99}, 2: {99.1, 99.1}, 3: {99, 99}})
	level := solveSlip(t, speeds(map[float64]Series{1: {99, 99}, 2: {99, 99}, 3: {99, 99}}))
	assert.Equal(t, NoSlipFound, level.Trouble)
	assert.Equal(t, FromZeroSpeed, level.Basis)
}

func TestSlipOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, test := range []SlipTest{slipping, gripping, threshold} {
			want, err := test.Solve()
			require.NoError(t, err)
			test.Runs = rapid.Permutation(test.Runs).Draw(t, "order")
			got, err := test.Solve()
			require.NoError(t, err)
			assert.Equal(t, want.Speeds, got.Speeds)
			assert.InDelta(t, want.Scale.Ratio.Value, got.Scale.Ratio.Value, 1e-12)
			assert.InDelta(t, want.Scale.Ratio.U, got.Scale.Ratio.U, 1e-12)
			assert.Equal(t, want.Basis, got.Basis)
		}
	})
}

func TestDrift(t *testing.T) {
	rising := []Point{{0, 564.3}, {30, 564.9}, {61, 565.8}, {90, 566.2}, {120, 566.9}}
	trend, err := Drift(rising)
	require.NoError(t, err)
	assert.True(t, trend.Significant)
	low, high := trend.PerDay.Interval()
	assert.Positive(t, low)
	assert.InDelta(t, 2.6/120, (low+high)/2, 0.002)
	assert.Empty(t, trend.Warnings)
	later, err := trend.Line.NextAt(150)
	require.NoError(t, err)
	assert.InDelta(t, 567.6, later.Value, 0.3)

	still, err := Drift([]Point{{0, 564.3}, {30, 564.9}, {61, 564.2}})
	require.NoError(t, err)
	assert.False(t, still.Significant)
	assert.Equal(t, []Warning{WarnFewDates}, still.Warnings)
	_, err = Drift(rising[:2])
	assert.ErrorIs(t, err, ErrTooFew)
	_, err = Drift([]Point{{5, 1}, {5, 2}, {5, 3}})
	assert.ErrorIs(t, err, ErrOneLength)
}
