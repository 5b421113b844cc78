package measure

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc/distribution"
)

// Five runs of 80 mm, marked at 105 mm, that scatter by 0.15 mm, read with a
// caliper of 0.05 mm.
func ExampleTest_Expect() {
	with, _ := InstrumentOf("caliper-0.05")
	e, _ := Test{Commanded: 80, Length: 80, Mark: 105, Scatter: 0.15, With: with}.Expect(Design{Repeats: 5})
	fmt.Printf("± %.2f %%\n", 100*e.HalfWidth())
	// Output: ± 0.30 %
}

// What is expected of a test is what the same test then says of its readings, if they
// scatter by as much as those of eight in ten tests do at most, rounding included; at several
// speeds as far as the mean of the slowest, where that is farther.
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

		// The scatter that is to be expected where readings with these steps show as much.
		expected := func(shown, dof, steps float64) float64 {
			shown /= shownBy8of10(dof)
			return math.Sqrt(shown*shown - steps*steps)
		}
		if repeats == 2 { // on the steps of the caliper, as two are read
			for i, r := range one.Remaining {
				one.Remaining[i] = math.Round(r/0.05) * 0.05
			}
			one.Remaining[1] -= 1e-11 // no more than those, rounded too
		}
		m, err := one.Measure()
		require.NoError(t, err)
		scatter := expected(m.Scatter, float64(repeats-1), 0.05/math.Sqrt(6))
		got, err := Test{Commanded: 100, Length: m.Length, Mark: 125, Scatter: scatter, With: caliper}.Expect(Design{Repeats: repeats})
		require.NoError(t, err)
		assert.InEpsilon(t, m.Estimate().U/100, got.U, 1e-9)
		assert.InEpsilon(t, m.Estimate().Dof, got.Dof, 1e-9)

		points, err := SlipTest{Commanded: 100, Runs: slip.Runs, Alpha: 0.05}.points()
		require.NoError(t, err)
		line, err := Fit(points)
		require.NoError(t, err)
		scatter = expected(100*line.ResidualSD, line.Dof, 0)
		got, err = Test{Commanded: 100, Length: 100, Scatter: scatter}.Expect(Design{Places: places, Zero: true, Repeats: repeats})
		require.NoError(t, err)
		// The mean of 1, 3 and 6 is 10/3, and their squares about it are 38/3. The slowest runs are
		// part of the line, by 1/n + 70/9 over all squares each.
		r, n := float64(repeats), float64(3*repeats)
		squares := 38 * r / 3
		apart := math.Sqrt(1/n + 100/(9*squares) + 1/r - 2*(1/n+70/(9*squares)))
		wide := scatter / 100 * (1.06*apart + distribution.Span(1-Sure, n-3)*shownBy8of10(n-3)/math.Sqrt(r))
		assert.InEpsilon(t, max(line.InterceptEstimate().U, wide/distribution.Span(1-Sure, line.Dof)), got.U, 1e-9)
		assert.InEpsilon(t, line.Dof, got.Dof, 1e-9)

		fit, err := ScaleAndOffset(lengths, caliper)
		require.NoError(t, err)
		got, err = Test{Commanded: 180, Length: 180, Scatter: expected(fit.Line.ResidualSD, fit.Line.Dof, 0.05/math.Sqrt(12)), With: caliper}.
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
			assert.LessOrEqual(t, e.HalfWidth(), u)
			assert.Zero(t, math.Mod(test.Commanded, 5))
			if test.Commanded > 5 {
				less, err := at(test.Commanded - 5).Expect(d)
				require.NoError(t, err)
				assert.Greater(t, less.HalfWidth(), u)
			}
		}
		if more, ok := at(100).RunsFor(u, Design{Repeats: 2}, 50); ok && more.Repeats > 2 {
			less, err := at(100).Expect(Design{Repeats: more.Repeats - 1})
			require.NoError(t, err)
			assert.Greater(t, less.HalfWidth(), u)
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
	spread := (0.02*0.02 + 0.01*0.01/12) * 1.26863624118 * 1.26863624118 // χ² of two degrees of freedom: −2·ln 0.2
	spread *= 1.015 * 1.015                                              // the little that is added
	assert.InEpsilon(t, math.Sqrt(spread+0.01*0.01/6), e.U, 0.004, "two means of two, and two steps")
	_, err = Test{}.ExpectLost(1)
	assert.ErrorIs(t, err, ErrTooFew)
}

// Positions read five times from either side: two means of five, two steps, and the
// degrees of freedom of both series.
func TestExpectLostOfFive(t *testing.T) {
	e, err := Test{Scatter: 0.02, With: Instrument{Resolution: 0.01}}.ExpectLost(5)
	require.NoError(t, err)
	assert.Zero(t, e.Value)
	spread := (0.02*0.02 + 0.01*0.01/12) * 1.17420672319 * 1.17420672319 // χ² of eight, by tables
	assert.InEpsilon(t, math.Sqrt(1.015*1.015*spread*2/5+0.01*0.01/6), e.U, 0.001)
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
	more, ok := at(100).RunsFor(e.HalfWidth(), Design{Repeats: 2}, 7)
	assert.True(t, ok)
	assert.Equal(t, 7, more.Repeats)
	test, ok := LengthFor(e.HalfWidth(), d, 5, 300, at)
	assert.True(t, ok)
	assert.Equal(t, 100.0, test.Commanded)
	for _, most := range []float64{5, 100} {
		test, ok = LengthFor(1, d, 5, most, at)
		assert.True(t, ok)
		assert.Equal(t, 5.0, test.Commanded, "the first step is enough")
	}
}
