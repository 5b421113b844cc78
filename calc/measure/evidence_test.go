package measure

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var caliper, _ = InstrumentOf("caliper-0.05")

// heron is the worked example of this suite: 80 mm commanded, marked at 105 mm,
// one caliper of 0.05 mm.
func heron(t testing.TB) Scale {
	t.Helper()
	m, err := MarkTest{Marks: Series{105}, Remaining: Series{28.7, 28.9, 28.6}, With: caliper}.Measure()
	require.NoError(t, err)
	s, err := ScaleOf(80, m)
	require.NoError(t, err)
	return s
}

func ExampleScaleOf() {
	m, _ := MarkTest{Marks: Series{105}, Remaining: Series{28.7, 28.9, 28.6}, With: Instrument{Resolution: 0.05}}.Measure()
	s, _ := ScaleOf(80, m)
	fmt.Printf("%.3f mm ± %.3f mm\n", m.Length, m.Estimate().HalfWidth())
	low, high := s.Error().Interval()
	fmt.Printf("error %.2f %% (%.2f to %.2f)\n", 100*s.Error().Value, 100*low, 100*high)
	steps := s.Steps(538)
	fmt.Printf("538.0 -> %.1f ± %.1f steps/mm\n", steps.Value, steps.HalfWidth())
	j, _ := s.Judge(0.005)
	fmt.Println(j.Verdict == ChangeIt)
	// Output:
	// 76.267 mm ± 0.381 mm
	// error -4.67 % (-5.14 to -4.19)
	// 538.0 -> 564.3 ± 2.8 steps/mm
	// true
}

func TestOneInstrumentOrTwo(t *testing.T) {
	with := Instrument{Resolution: 0.05, Accuracy: 0.3, CertificateU: 0.25, CertificateK: 2.5}
	test := MarkTest{Marks: Series{105}, Remaining: Series{28.7, 28.9, 28.6}, With: with}
	part := func(b Budget, id string) float64 {
		t.Helper()
		for _, c := range b {
			if c.ID == id {
				return c.U
			}
		}
		require.Fail(t, "no component "+id)
		return 0
	}
	one, err := test.Measure()
	require.NoError(t, err)
	share := one.Length / 105
	assert.InEpsilon(t, 0.3/math.Sqrt(3)*share, part(one.Budget, Accuracy), 1e-14)
	assert.InEpsilon(t, 0.1*share, part(one.Budget, Certificate), 1e-14)
	assert.InEpsilon(t, 0.05/math.Sqrt(12), part(one.Budget, MarkPart+Resolution), 1e-14)
	assert.InEpsilon(t, 0.05/math.Sqrt(12), part(one.Budget, RemainingPart+Resolution), 1e-14)
	assert.InEpsilon(t, one.Scatter/math.Sqrt(3), part(one.Budget, Scatter), 1e-14)
	assert.Len(t, one.Budget, 5)

	second := Instrument{Resolution: 1, Accuracy: 0.5}
	test.RemainingWith = &second
	two, err := test.Measure()
	require.NoError(t, err)
	assert.InEpsilon(t, 0.3/math.Sqrt(3), part(two.Budget, MarkPart+Accuracy), 1e-14)
	assert.InEpsilon(t, 0.5/math.Sqrt(3), part(two.Budget, RemainingPart+Accuracy), 1e-14)
	assert.InEpsilon(t, 1/math.Sqrt(12), part(two.Budget, RemainingPart+Resolution), 1e-14)
	assert.InEpsilon(t, 0.1, part(two.Budget, MarkPart+Certificate), 1e-14)
	assert.Equal(t, one.Length, two.Length)

	straight, err := Repeated{Readings: Series{76.3, 76.1, 76.4}, With: with}.Measure()
	require.NoError(t, err)
	assert.InEpsilon(t, 0.3/math.Sqrt(3), part(straight.Budget, Accuracy), 1e-14)
	assert.Len(t, straight.Budget, 4)
}

// The placing of the mark is in the scatter of several runs already.
func TestPlacementCountsOnce(t *testing.T) {
	has := func(e Evidence, want bool) {
		t.Helper()
		m, err := e.Measure()
		require.NoError(t, err)
		found := false
		for _, c := range m.Budget {
			found = found || c.ID == Placement
		}
		assert.Equal(t, want, found)
	}
	has(MarkTest{Marks: Series{105}, Remaining: Series{28.7}, With: caliper}, true)
	has(MarkTest{Marks: Series{105}, Remaining: Series{28.7, 28.7}, With: caliper}, false)
	has(MarkTest{Marks: Series{105, 104}, Remaining: Series{28.7, 28}, With: caliper}, false)
	has(Repeated{Readings: Series{76.3}, With: caliper}, true)
	has(Repeated{Readings: Series{76.3}, With: Instrument{Resolution: 1}}, false)
	has(Repeated{Readings: Series{76.3, 76.2}, With: caliper}, false)
}

func TestEvidenceEdges(t *testing.T) {
	refuses := func(want error, e Evidence) {
		t.Helper()
		m, err := e.Measure()
		assert.ErrorIs(t, err, want)
		assert.Zero(t, m)
	}
	mark := func(marks, remaining Series) MarkTest {
		return MarkTest{Marks: marks, Remaining: remaining, With: caliper}
	}
	refuses(ErrNoReading, Repeated{})
	refuses(ErrNoReading, mark(Series{105}, nil))
	refuses(ErrNoReading, mark(nil, Series{20}))
	refuses(ErrUnpaired, mark(Series{105, 106}, Series{20}))
	refuses(ErrUnpaired, mark(Series{105, 106}, Series{20, 21, 22}))
	refuses(ErrNothingMoved, mark(Series{105}, Series{20, 105}))
	refuses(ErrNothingMoved, mark(Series{105, 20}, Series{20, 105}))
	refuses(ErrLength, mark(Series{0}, Series{20}))
	refuses(ErrLength, mark(Series{-5}, Series{-20}))
	refuses(ErrLength, mark(Series{105}, Series{-1}))
	refuses(ErrNotFinite, mark(Series{105}, Series{math.NaN()}))
	refuses(ErrNotFinite, mark(Series{math.Inf(1)}, Series{3}))
	refuses(ErrLength, Repeated{Readings: Series{80, 0}})
	refuses(ErrLength, Repeated{Readings: Series{-80}})
	refuses(ErrNotFinite, Repeated{Readings: Series{80, 1e200}})
	bad := Instrument{Resolution: -1}
	refuses(ErrInstrument, Repeated{Readings: Series{80}, With: bad})
	refuses(ErrInstrument, MarkTest{Marks: Series{9}, Remaining: Series{1}, With: bad})
	refuses(ErrInstrument, MarkTest{Marks: Series{9}, Remaining: Series{1}, RemainingWith: &bad})
	refuses(ErrInstrument, Repeated{Readings: Series{80}, With: Instrument{CertificateU: 1}})
	refuses(ErrInstrument, Repeated{Readings: Series{80}, With: Instrument{Eye: math.NaN()}})
	part := func(readings ...float64) Repeated { return Repeated{Readings: readings} }
	refuses(ErrNothingMoved, TwoMeans{part(105, 106), part(106, 105)})
	refuses(ErrNoReading, TwoMeans{part(105), part()})
	refuses(ErrLength, TwoMeans{part(105), part(-3)})

	warns := func(e Evidence, want ...Warning) Measured {
		t.Helper()
		m, err := e.Measure()
		require.NoError(t, err)
		assert.Equal(t, want, m.Warnings)
		assert.NoError(t, m.Estimate().Check())
		return m
	}
	one := warns(mark(Series{105}, Series{28.7}), WarnOneRun)
	assert.True(t, math.IsInf(one.Estimate().Dof, 1))
	assert.InEpsilon(t, math.Sqrt(0.1*0.1+2*0.05*0.05/12), one.Estimate().U, 1e-14)
	warns(mark(Series{105}, Series{28.7, 28.8}), WarnTwoRuns)
	equal := warns(mark(Series{105}, Series{28.7, 28.7}), WarnAllEqual)
	assert.InEpsilon(t, 0.05/math.Sqrt(6), equal.Estimate().U, 1e-14)
	assert.True(t, math.IsInf(equal.Estimate().Dof, 1))
	warns(Repeated{Readings: Series{80}}, WarnOneRun, WarnNothingKnown)
	warns(Repeated{Readings: Series{80, 80}}, WarnAllEqual, WarnNothingKnown)
	warns(mark(Series{170}, Series{20, 20.1, 20.2}), WarnOverRange)
	warns(Repeated{Readings: Series{170, 170.1, 170.2}, With: caliper}, WarnOverRange)
	warns(TwoMeans{part(105), part(20, 21)}, WarnOneRun)
	warns(TwoMeans{part(105, 105.1, 105.2), part(20, 21, 22)})
	fifty := make(Series, 50)
	for i := range fifty {
		fifty[i] = 79 + float64(i%7)/10
	}
	warns(Repeated{Readings: fifty, With: caliper})
}
