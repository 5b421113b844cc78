package measure

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Five runs of 80 mm, marked at 105 mm, that scatter by 0.15 mm, read with a
// caliper of 0.05 mm.
func ExampleTest_Expect() {
	with, _ := InstrumentOf("caliper-0.05")
	e, _ := Test{Commanded: 80, Length: 80, Mark: 105, Scatter: 0.15, With: with}.Expect(Design{Repeats: 5})
	fmt.Printf("± %.2f %%\n", 100*e.Expanded())
	// Output: ± 0.23 %
}

// What is expected of a test is what the same test then says of its readings,
// if they scatter as expected.
func TestExpectIsWhatTheReadingsSay(t *testing.T) {
	caliper, _ := InstrumentOf("caliper-0.05")
	caliper.Accuracy = 0.05
	rapid.Check(t, func(t *rapid.T) {
		repeats := rapid.IntRange(2, 8).Draw(t, "repeats")
		noise := rapid.Custom(func(t *rapid.T) float64 { return rapid.Float64Range(-0.05, 0.05).Draw(t, "noise") })
		places := []float64{1, 3, 6}

		one := MarkTest{Marks: Series{125}, With: caliper}
		slip := SlipTest{Commanded: 100}
		var lengths []Point
		for i := range repeats {
			apart := 0.2 * float64(i%2) // so that there is a scatter
			one.Remaining = append(one.Remaining, 25+apart+noise.Draw(t, "one"))
			for _, v := range places {
				slip.Runs = append(slip.Runs, SpeedRun{Speed: v, Length: 100 + apart + noise.Draw(t, "at a speed")})
				lengths = append(lengths, Point{v * 30, v*30 + apart + noise.Draw(t, "at a length")})
			}
		}
		lengths[len(lengths)-1].Y = 180 // so that the longest is known

		m, err := one.Measure()
		require.NoError(t, err)
		got, err := Test{Commanded: 100, Length: m.Length, Mark: 125, Scatter: m.Scatter, With: caliper}.Expect(Design{Repeats: repeats})
		require.NoError(t, err)
		assert.InEpsilon(t, m.Estimate().U/100, got.U, 1e-9)
		assert.InEpsilon(t, m.Estimate().Dof, got.Dof, 1e-9)

		points, err := SlipTest{Commanded: 100, Runs: slip.Runs, Alpha: 0.05}.points()
		require.NoError(t, err)
		line, err := Fit(points)
		require.NoError(t, err)
		got, err = Test{Commanded: 100, Length: 100, Scatter: 100 * line.ResidualSD}.Expect(Design{Places: places, Zero: true, Repeats: repeats})
		require.NoError(t, err)
		assert.InEpsilon(t, line.InterceptEstimate().U, got.U, 1e-9)
		assert.InEpsilon(t, line.Dof, got.Dof, 1e-9)

		fit, err := ScaleAndOffset(lengths, caliper)
		require.NoError(t, err)
		got, err = Test{Commanded: 180, Length: 180, Scatter: fit.Line.ResidualSD, With: caliper}.
			Expect(Design{Places: []float64{1. / 6, 3. / 6, 1}, Repeats: repeats})
		require.NoError(t, err)
		assert.InEpsilon(t, fit.Scale.Ratio.U, got.U, 0.01, "but for the slope and the longest reading, which set the share of the limits")
	})
}

func TestExpectRefuses(t *testing.T) {
	test := Test{Commanded: 100, Scatter: 0.1}
	for want, d := range map[error]Design{ErrTooFew: {Repeats: 1}, ErrOneLength: {Places: []float64{1, 1, 1}, Repeats: 2}} {
		_, err := test.Expect(d)
		assert.ErrorIs(t, err, want)
	}
	_, err := Test{}.Expect(Design{Repeats: 5})
	assert.ErrorIs(t, err, ErrLength)
}

// The fewest runs and the shortest move are enough, and a little less is not.
func TestPlansAreTheLeast(t *testing.T) {
	with, _ := InstrumentOf("caliper-0.05")
	at := func(length float64) Test {
		return Test{Commanded: length, Length: length, Mark: length + 25, Scatter: 0.15, With: with}
	}
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.Float64Range(0.0005, 0.02).Draw(t, "u")
		d := Design{Repeats: rapid.IntRange(2, 10).Draw(t, "repeats")}
		if test, ok := LengthFor(u, d, 5, 3000, at); ok {
			e, err := test.Expect(d)
			require.NoError(t, err)
			assert.LessOrEqual(t, e.Expanded(), u)
			assert.Zero(t, math.Mod(test.Commanded, 5))
			if test.Commanded > 5 {
				less, err := at(test.Commanded - 5).Expect(d)
				require.NoError(t, err)
				assert.Greater(t, less.Expanded(), u)
			}
		}
		if more, ok := at(100).RunsFor(u, Design{Repeats: 2}, 50); ok && more.Repeats > 2 {
			less, err := at(100).Expect(Design{Repeats: more.Repeats - 1})
			require.NoError(t, err)
			assert.Greater(t, less.Expanded(), u)
		}
	})
	_, ok := LengthFor(0.00001, Design{Repeats: 5}, 5, 100, at)
	assert.False(t, ok)
	_, ok = LengthFor(1, Design{Repeats: 5}, 5, 4, at)
	assert.False(t, ok, "no length is short enough")
	_, ok = at(100).RunsFor(0.00001, Design{Repeats: 2}, 50)
	assert.False(t, ok)
}

func TestExpectLost(t *testing.T) {
	with := Instrument{Resolution: 0.01}
	e, err := Test{Scatter: 0.02, With: with}.ExpectLost(2)
	require.NoError(t, err)
	assert.InEpsilon(t, math.Sqrt(0.02*0.02+0.01*0.01/6), e.U, 1e-12, "two means of two, and two steps")
	_, err = Test{}.ExpectLost(1)
	assert.ErrorIs(t, err, ErrTooFew)
}

// Positions read five times from either side: two means of five, two steps, and the
// degrees of freedom of both series.
func TestExpectLostOfFive(t *testing.T) {
	e, err := Test{Scatter: 0.02, With: Instrument{Resolution: 0.01}}.ExpectLost(5)
	require.NoError(t, err)
	assert.Zero(t, e.Value)
	assert.InEpsilon(t, math.Sqrt(0.02*0.02*2/5+0.01*0.01/6), e.U, 1e-12)
	e, err = Test{Scatter: 0.02}.ExpectLost(5)
	require.NoError(t, err)
	assert.InEpsilon(t, 8, e.Dof, 1e-12)
}

// What is just enough is enough: the first step, the last run, the uncertainty itself.
func TestPlansThatJustDo(t *testing.T) {
	with, _ := InstrumentOf("caliper-0.05")
	at := func(length float64) Test {
		return Test{Commanded: length, Length: length, Mark: length + 25, Scatter: 0.15, With: with}
	}
	d := Design{Repeats: 7}
	e, err := at(100).Expect(d)
	require.NoError(t, err)
	assert.Zero(t, e.Value, "an axis without error")
	more, ok := at(100).RunsFor(e.Expanded(), Design{Repeats: 2}, 7)
	assert.True(t, ok)
	assert.Equal(t, 7, more.Repeats)
	test, ok := LengthFor(e.Expanded(), d, 5, 300, at)
	assert.True(t, ok)
	assert.Equal(t, 100.0, test.Commanded)
	for _, most := range []float64{5, 100} {
		test, ok = LengthFor(1, d, 5, most, at)
		assert.True(t, ok)
		assert.Equal(t, 5.0, test.Commanded, "the first step is enough")
	}
}
