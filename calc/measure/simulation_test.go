package measure

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A machine that is simulated: 100 mm commanded, marked anew each time near
// 120 mm, both read with one instrument. The error model:
//
//   - each run scatters normally, with the standard deviation scatter;
//   - both readings are rounded to the instrument's step;
//   - the instrument's scale is off by a factor that is the same for all of its
//     readings, evenly distributed within ± its accuracy at 120 mm.
type machine struct {
	lots    *rand.Rand
	ratio   float64 // moved over commanded, with the present setting
	gain    float64 // of the instrument
	scatter float64
	with    Instrument
}

const (
	simCommanded, simMark = 100.0, 120.0
	simulations           = 10_000
)

func newMachine(seed int, ratio, scatter float64, with Instrument) machine {
	lots := rand.New(rand.NewPCG(uint64(seed), 99))
	return machine{lots, ratio, 1 + with.Accuracy*(2*lots.Float64()-1)/simMark, scatter, with}
}

func (m machine) read(length float64) float64 {
	return math.Round(length*m.gain/m.with.Resolution) * m.with.Resolution
}

func (m machine) measure(t *testing.T, runs int) (Scale, Measured) {
	t.Helper()
	test := MarkTest{With: m.with}
	for range runs {
		mark := simMark - 0.5 + m.lots.Float64() // wherever it came to be
		moved := m.ratio*simCommanded + m.scatter*m.lots.NormFloat64()
		test.Marks = append(test.Marks, m.read(mark))
		test.Remaining = append(test.Remaining, m.read(mark-moved))
	}
	measured, err := test.Measure()
	require.NoError(t, err)
	s, err := ScaleOf(simCommanded, measured)
	require.NoError(t, err)
	return s, measured
}

// The correction is applied to the same machine; then what it is still off by
// lies within U of the correction, and the next reading within its band.
func TestSimulatedCorrection(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of tests are simulated")
	}
	rates := func(name string, scatter float64, with Instrument, runs int) (inside, confirmed float64) {
		t.Helper()
		for i := range simulations {
			m := newMachine(i, 0.953, scatter, with)
			s, measured := m.measure(t, runs)
			c := s.Factor()
			m.ratio *= c.Value // steps per mm are multiplied by c
			if math.Abs(m.ratio-1) <= c.Expanded()/c.Value {
				inside++
			}
			band, err := measured.Next(simCommanded, 1)
			require.NoError(t, err)
			low, high := band.Interval()
			if _, once := m.measure(t, 1); low <= once.Length && once.Length <= high {
				confirmed++
			}
		}
		inside, confirmed = 100*inside/simulations, 100*confirmed/simulations
		t.Logf("%s, %2d runs: error left inside U in %.2f %%, next reading inside its band in %.2f %%", name, runs, inside, confirmed)
		return inside, confirmed
	}
	// Scatter 0.4 mm, a caliper of 0.02 mm that is right within ±0.02 mm: what
	// a pen's mark on filament looks like.
	for _, runs := range []int{3, 5, 10} {
		inside, confirmed := rates("scatter 0.4, step 0.02, limits 0.02 mm", 0.4, Instrument{Resolution: 0.02, Accuracy: 0.02}, runs)
		assert.True(t, inside >= 94 && inside <= 97, "%.2f %%", inside)
		assert.True(t, confirmed >= 94 && confirmed <= 97, "%.2f %%", confirmed)
	}
	// Where the instrument matters beside the scatter of three runs, effective
	// degrees of freedom promise too much: a scatter that came out small by
	// chance makes them many. The Guide's interval then covers some 91 %, as is
	// known of it (M. Ballico, Metrologia 37 (2000), 61). Five runs cure it.
	for _, runs := range []int{3, 5, 10} {
		inside, _ := rates("scatter 0.25, step 0.1, limits 0.05 mm", 0.25, Instrument{Resolution: 0.1, Accuracy: 0.05}, runs)
		assert.GreaterOrEqual(t, inside, map[int]float64{3: 90, 5: 94, 10: 94}[runs])
	}
	// Where the instrument is nearly all, the interval is on the safe side.
	inside, _ := rates("scatter 0.03, step 0.1, limits 0.1 mm", 0.03, Instrument{Resolution: 0.1, Accuracy: 0.1}, 3)
	assert.GreaterOrEqual(t, inside, 97.0)
}

// At most one in twenty is told to change a machine that is right, or to leave
// one that is off by twice the tolerance.
func TestSimulatedVerdicts(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of tests are simulated")
	}
	const tolerance = 0.005
	with := Instrument{Resolution: 0.05, Accuracy: 0.05, Eye: 0.15}
	rate := func(ratio float64, runs int) map[Verdict]float64 {
		t.Helper()
		count := map[Verdict]float64{}
		for i := range simulations {
			s, _ := newMachine(i, ratio, 0.15, with).measure(t, runs)
			j, err := s.Judge(tolerance)
			require.NoError(t, err)
			count[j.Verdict] += 100.0 / simulations
		}
		t.Logf("off by %+.1f %%, %2d runs: leave it %.2f %%, change it %.2f %%, measure more %.2f %%, either is fine %.2f %%", 100*(ratio-1), runs,
			count[LeaveIt], count[ChangeIt], count[MeasureMore], count[EitherIsFine])
		return count
	}
	for _, runs := range []int{1, 2, 3, 5, 10} {
		assert.LessOrEqual(t, rate(1, runs)[ChangeIt], 5.0)
		assert.LessOrEqual(t, rate(1-2*tolerance, runs)[LeaveIt], 5.0)
		assert.LessOrEqual(t, rate(1+2*tolerance, runs)[LeaveIt], 5.0)
		// At the tolerance itself an error is easiest.
		at := rate(1-tolerance, runs)
		assert.LessOrEqual(t, at[LeaveIt], 8.0)
		assert.LessOrEqual(t, at[ChangeIt], 8.0)
	}
	assert.GreaterOrEqual(t, rate(1-2*tolerance, 4)[ChangeIt], 90.0, "and it is of use")
	assert.GreaterOrEqual(t, rate(1, 4)[LeaveIt], 90.0)
}
