package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

var travelTest = []Point{
	{20, 20.31}, {20, 20.29}, {20, 20.30}, {60, 60.40}, {60, 60.44}, {60, 60.41}, {100, 100.52}, {100, 100.49}, {100, 100.51},
}

func TestScaleAndOffset(t *testing.T) {
	plain, err := ScaleAndOffset(travelTest, Instrument{})
	require.NoError(t, err)
	assert.True(t, plain.OffsetFound)
	assert.True(t, plain.HasLack)
	assert.Empty(t, plain.Warnings)
	assert.Equal(t, Outside, plain.Decide(0.001))
	assert.Equal(t, Inside, plain.Decide(0.01))
	assert.Equal(t, CannotTell, plain.Decide(plain.Line.Slope-1))
	shortest, longest := plain.Ratios()
	assert.InEpsilon(t, 1.015, shortest, 1e-12)
	assert.InEpsilon(t, (100.52+100.49+100.51)/300, longest, 1e-12)

	with := Instrument{Resolution: 0.05, Accuracy: 0.3}
	read, err := ScaleAndOffset(travelTest, with)
	require.NoError(t, err)
	// Sxx of 20, 60, 100, each once, is 3200; mean 60.
	step := 0.05 / math.Sqrt(12)
	gain := 0.3 / math.Sqrt(3) / 100.52 * plain.Line.Slope
	fit := plain.Line.SESlope()
	assert.InEpsilon(t, math.Sqrt(fit*fit+step*step/3200+gain*gain), read.Scale.Ratio.U, 1e-12)
	assert.InEpsilon(t, math.Hypot(1.959963984540054*step/math.Sqrt(3200), 0.95*math.Sqrt(3)*gain), read.Scale.Floor, 1e-12)
	offset := plain.Line.SEIntercept()
	assert.InEpsilon(t, math.Sqrt(offset*offset+step*step*(1.0/3+60*60/3200.0)+0.03), read.Offset.U, 1e-12)
	assert.Equal(t, plain.Line.Slope, read.Scale.Ratio.Value)
	assert.False(t, read.OffsetFound, "it may be the instrument's zero")
}

func TestScaleAndOffsetEdges(t *testing.T) {
	warns := func(points []Point, want ...Warning) {
		t.Helper()
		a, err := ScaleAndOffset(points, caliper)
		require.NoError(t, err)
		assert.Equal(t, want, a.Warnings)
		assert.NoError(t, a.Offset.Check())
	}
	warns([]Point{{20, 20.1}, {20, 20}, {80, 80.2}}, WarnTwoLengths)
	warns([]Point{{20, 20.1}, {50, 50}, {80, 80.2}}, WarnNoRepeats)
	warns([]Point{{20, 20.1}, {20, 20.1}, {50, 50}, {80, 80.2}}, WarnRepeatsEqual)
	warns([]Point{{20, 20.1}, {20, 20.11}, {50, 53}, {50, 53.01}, {80, 80.2}}, WarnNotStraight)
	exact := []Point{{20, 20}, {50, 50}, {80, 80}}
	a, err := ScaleAndOffset(exact, Instrument{})
	require.NoError(t, err)
	assert.False(t, a.OffsetFound, "rounding is no offset")
	j, err := a.Scale.Judge(0.002)
	require.NoError(t, err)
	assert.Equal(t, MeasureMore, j.Verdict, "nothing is known of the instrument")

	fails := func(want error, with Instrument, points ...Point) {
		t.Helper()
		_, err := ScaleAndOffset(points, with)
		assert.ErrorIs(t, err, want)
	}
	fails(ErrTooFew, caliper)
	fails(ErrTooFew, caliper, Point{20, 20}, Point{50, 50})
	fails(ErrLength, caliper, Point{0, 20}, Point{50, 50}, Point{80, 80})
	fails(ErrLength, caliper, Point{20, 20}, Point{50, -50}, Point{80, 80})
	fails(ErrOneLength, caliper, Point{20, 20}, Point{20, 20.1}, Point{20, 20.2})
	fails(ErrInstrument, Instrument{Eye: -1}, exact...)
	fails(ErrNothingMoved, caliper, Point{20, 80}, Point{50, 50}, Point{80, 20})
	shortest, longest := AxisFit{}.Ratios()
	assert.Zero(t, shortest+longest)
}

// A fixed offset is not dialled into the scale, whatever the instrument.
func TestOffsetLeavesScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		with := rapid.SampledFrom(Instruments).Draw(t, "instrument")
		a, err := ScaleAndOffset(travelTest, with)
		require.NoError(t, err)
		shift := rapid.Float64Range(0, 5).Draw(t, "offset")
		b, err := ScaleAndOffset(moved(travelTest, 0, shift, 1), with)
		require.NoError(t, err)
		assert.InDelta(t, a.Scale.Ratio.Value, b.Scale.Ratio.Value, 1e-12)
		assert.InDelta(t, a.Scale.Ratio.U, b.Scale.Ratio.U, 1e-12)
		assert.InDelta(t, a.Offset.Value+shift, b.Offset.Value, 1e-9)
	})
}

func TestForDifferences(t *testing.T) {
	with := Instrument{Resolution: 0.05, Accuracy: 0.3, CertificateU: 0.2, CertificateK: 2, Eye: 0.1}
	twice := with.ForDifferences(150, 100.52)
	assert.InEpsilon(t, 0.05*math.Sqrt2, twice.Resolution, 1e-14)
	assert.InEpsilon(t, with.Gain(150), twice.Gain(100.52), 1e-14)
	a, err := ScaleAndOffset(travelTest, twice)
	require.NoError(t, err)
	assert.True(t, a.OffsetFound, "a wrong zero cancels")
	assert.Equal(t, 0.3, with.ForDifferences(0, 100).Accuracy)
	assert.Equal(t, 0.3, with.ForDifferences(90, 100).Accuracy)
}

func TestInstruments(t *testing.T) {
	seen := map[string]bool{}
	for i, with := range Instruments {
		require.NoError(t, with.Check())
		assert.Zero(t, with.Accuracy, "not stated")
		assert.Positive(t, with.Usual)
		assert.False(t, seen[with.ID])
		seen[with.ID] = true
		if i > 0 {
			assert.LessOrEqual(t, with.Resolution, Instruments[i-1].Resolution, "from the coarse to the fine")
		}
		found, ok := InstrumentOf(with.ID)
		assert.True(t, ok)
		assert.Equal(t, with, found)
	}
	_, ok := InstrumentOf("laser")
	assert.False(t, ok)

	with := Instrument{Accuracy: 0.3, CertificateU: 0.4, CertificateK: 2}
	assert.InEpsilon(t, math.Sqrt(0.03+0.04)/150, with.Gain(150), 1e-14)
	for _, longest := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		assert.Zero(t, with.Gain(longest))
	}
	assert.Equal(t, 1.0, with.Gain(1e-12), "an instrument that is off by all of it")
}

// What is assumed of instruments decides on verdicts: a change of it is to be meant. Eye, reach and usual limits are in mm.
func TestAssumptionsOfInstruments(t *testing.T) {
	for id, want := range map[string][4]float64{
		"tape": {1, 0.3, 3000, 0.5}, "rule": {1, 0.2, 300, 0.2},
		"caliper-0.1": {0.1, 0.1, 150, 0.1}, "caliper-0.05": {0.05, 0.1, 150, 0.05},
		"caliper-0.02": {0.02, 0.1, 150, 0.03}, "caliper-0.01": {0.01, 0.1, 150, 0.03},
	} {
		i, ok := InstrumentOf(id)
		require.True(t, ok)
		assert.Equal(t, want, [4]float64{i.Resolution, i.Eye, i.Reach, i.Usual}, id)
	}
}
