package main

import (
	"fmt"
	"math"
	"math/rand/v2"

	"striderule/calc/measure"
)

// Ways in which a drive loses, as a share of the loss at the fastest speed, by the share of it.
var losses = []struct {
	name string
	at   func(share float64) float64
}{
	{"straight", func(v float64) float64 { return v }},
	{"threshold", func(v float64) float64 { return max(0, (v-0.6)/0.4) }},
	{"square", func(v float64) float64 { return v * v }},
}

// speeds prints the coverage of the error at no speed, and what is said of the speed.
func speeds(r run) bool {
	ok := true
	fmt.Println("  speeds x runs  loss       at fastest %  scatter  tool   covers %  slip %  rises %  uneven %   width / line's")
	line := 0
	for _, at := range [][]float64{{60, 180, 360}, {60, 120, 180, 240}} {
		for _, repeats := range []int{3, 1} {
			for _, with := range []measure.Instrument{{}, {Resolution: 0.05, Accuracy: 0.05}} {
				for _, scatter := range []float64{0.05, 0.15, 0.4} {
					worst, worstAt := 101.0, ""
					var right []float64
					for _, loss := range losses {
						for _, most := range []float64{0, 0.002, 0.004, 0.01, 0.02} {
							line++
							got := r.counts(2000+line, 5, func(lots *rand.Rand, add func(int, float64)) {
								oneOfSpeeds(lots, at, repeats, scatter, with, func(v float64) float64 { return most * loss.at(v) }, add)
							})
							if most == 0 {
								right = got
							}
							if got[0] < worst {
								worst, worstAt = got[0], fmt.Sprintf("%-9s %8.1f", loss.name, 100*most)
							}
						}
					}
					good := worst >= r.least(leastMore) || repeats == 1
					ok = must(good, "%d x %d           %s %14.2f %6.2f %8.1f    none: %3.1f  %5.1f  %5.1f %10.2f", len(at), repeats, worstAt, scatter, with.Resolution,
						worst, right[1], right[2], right[3], right[4]) && ok
				}
			}
		}
	}
	return ok
}

func oneOfSpeeds(lots *rand.Rand, at []float64, repeats int, scatter float64, with measure.Instrument, loss func(float64) float64, add func(int, float64)) {
	m := machine{lots: lots, off: 0.01 * (2*lots.Float64() - 1), scatter: scatter, tool: with}
	zero, fastest := m.even(with.Accuracy), at[len(at)-1]
	t := measure.SlipTest{Commanded: commanded}
	var readings measure.Series
	for _, v := range at {
		for range repeats {
			went := commanded*(1+m.off)*(1-loss(v/fastest)) + scatter*lots.NormFloat64()
			read := m.round(went + zero)
			readings = append(readings, read)
			t.Runs = append(t.Runs, measure.SpeedRun{Speed: v / 60, Length: read})
		}
	}
	test, err := measure.Repeated{Readings: readings, With: with}.Measure()
	if err != nil {
		panic(err)
	}
	t.Common = test.Budget.Fixed()
	got, err := t.Solve()
	if err != nil {
		panic(err)
	}
	count(add, 0, got.Scale.Error(), m.off)
	switch got.Trouble {
	case measure.SlipFound:
		add(1, 100)
	case measure.ErrorRises:
		add(2, 100)
	case measure.ErrorUneven:
		add(3, 100)
	}
	if line := got.Line.InterceptEstimate().HalfWidth(); line > 0 {
		add(4, math.Min(got.Scale.Error().HalfWidth()/line, 10))
	}
}
