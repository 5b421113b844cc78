package main

import (
	"fmt"
	"math"
	"math/rand/v2"

	"striderule/calc/measure"
)

const leastKept = 80 // %

// promises prints how often "so many runs in all should settle it" comes true, and how often
// the ± of a planned test is reached.
func promises(r run) bool {
	ok := true
	fmt.Println("  from runs   scatter   promised %   kept %   runs in all, mean")
	line := 0
	for _, n := range []int{3, 4, 5, 8} {
		for _, scatter := range []float64{0.15, 0.4} {
			line++
			got := r.counts(7000+line, 4, func(lots *rand.Rand, add func(int, float64)) { settleAsPromised(lots, n, scatter, add) })
			kept := 100 * got[2] / max(got[1], 1e-9)
			promised := run{tests: int(math.Round(got[1] * float64(r.tests)))}
			ok = must(kept >= promised.least(leastKept), "%6d %11.2f %11.1f %10.1f %9.1f", n, scatter, 100*got[1]/got[0], kept, got[3]/max(got[1], 1e-9)) && ok
		}
	}
	fmt.Println("  plan                             planned ± %   reached %")
	for i, p := range []struct {
		runs    int
		length  float64
		with    measure.Instrument
		scatter float64
	}{
		{5, 70, measure.Instrument{Resolution: 0.05}, 0.15},
		{5, 70, measure.Instrument{Resolution: 0.05, Accuracy: 0.05}, 0.15},
		{3, 140, measure.Instrument{Resolution: 0.05}, 0.15},
		{10, 80, measure.Instrument{Resolution: 0.02}, 0.2},
		{5, 170, measure.Instrument{Resolution: 1}, 0.3},
		{2, 300, measure.Instrument{Resolution: 0.1}, 0.25},
	} {
		test := measure.Test{Commanded: p.length, Length: p.length, Mark: p.length + 25, Scatter: p.scatter, With: p.with}
		planned, err := test.Expect(measure.Design{Repeats: p.runs})
		if err != nil {
			panic(err)
		}
		reached := r.share(7100+i, func(lots *rand.Rand) bool {
			m := machine{lots: lots, scatter: p.scatter, tool: p.with}
			t := measure.MarkTest{Marks: measure.Series{p.length + 25}, With: p.with}
			for range p.runs {
				mark := p.length + 25 + m.even(0.5)
				t.Marks = append(t.Marks, m.round(mark))
				t.Remaining = append(t.Remaining, m.round(mark-p.length-p.scatter*lots.NormFloat64()))
			}
			t.Marks = t.Marks[1:]
			got, err := t.Measure()
			if err != nil {
				panic(err)
			}
			return got.Estimate().HalfWidth()/p.length <= planned.HalfWidth()
		})
		ok = must(100*reached >= r.least(leastKept), "%2d x %3.0f mm, step %.2f, scatter %.2f %11.3f %11.1f", p.runs, p.length, p.with.Resolution, p.scatter, 100*planned.HalfWidth(), 100*reached) && ok
	}
	return ok
}

// settleAsPromised makes a sheet that cannot tell yet, and as many runs more as it asks for.
func settleAsPromised(lots *rand.Rand, n int, scatter float64, add func(int, float64)) {
	e := 2 * tolerance * (2*lots.Float64() - 1)
	b := machine{lots: lots, off: e, scatter: scatter, tool: caliper}.test(markSet).runs(n)
	s := b.scale()
	if s.Verdict(tolerance) != measure.MeasureMore {
		return
	}
	add(0, 1)
	means, err := s.Advise(tolerance)
	if err != nil {
		panic(err)
	}
	for _, m := range means {
		if m.Means != measure.MoreRuns || !m.Settles() || m.About {
			continue
		}
		add(1, 1)
		add(3, float64(m.Enough.Runs))
		if v := b.runs(m.Enough.Runs - n).verdict(0); v == measure.LeaveIt || v == measure.ChangeIt {
			add(2, 1)
		}
	}
}
