package main

import (
	"fmt"
	"math/rand/v2"

	"striderule/calc/measure"
)

const tolerance = 0.005

var caliper = measure.Instrument{Resolution: 0.05}

// looks prints how a sheet ends that is looked at after each run, from the third on.
func looks(r run) bool {
	ok := true
	fmt.Println("  scatter  error/T   leave %  change %   cannot tell after 50 runs %")
	line := 0
	for _, scatter := range []float64{0.15, 0.4} {
		for _, e := range []float64{0, 0.5, 0.8, 0.9, 1, 1.1, 1.2, 1.5, 2} {
			line++
			got := r.counts(3000+line, 3, func(lots *rand.Rand, add func(int, float64)) {
				b := machine{lots: lots, off: e * tolerance, scatter: scatter, tool: caliper}.test(markSet).runs(2)
				for range 48 {
					switch b.runs(1).verdict(0) {
					case measure.LeaveIt:
						add(0, 100)
						return
					case measure.ChangeIt:
						add(1, 100)
						return
					}
				}
				add(2, 100)
			})
			good := true
			switch {
			case e == 1:
				good = max(got[0], got[1]) <= r.most(5)
			case e == 0.8:
				good = got[1] <= r.most(2)
			case e == 0:
				good = got[1] <= r.most(0.05)
			case e == 2:
				good = got[0] <= r.most(0.05)
			}
			ok = must(good, "%7.2f %8.1f %9.2f %9.2f %9.2f", scatter, e, got[0], got[1], got[2]) && ok
		}
	}
	return ok
}

func (b *bench) verdict(planned int) measure.Verdict {
	s := b.scale()
	s.Plan = planned
	return s.Verdict(tolerance)
}

// verdicts prints those at so many runs, of which nobody looked before.
func verdicts(r run) bool {
	ok := true
	fmt.Println("  runs  planned  error/T   leave %   change %")
	line := 0
	for _, n := range []int{2, 3, 5, 10} {
		for _, planned := range []int{0, n} {
			for _, e := range []float64{0, 1, 2} {
				line++
				got := r.counts(4000+line, 2, func(lots *rand.Rand, add func(int, float64)) {
					switch (machine{lots: lots, off: e * tolerance, scatter: 0.15, tool: caliper}).test(markSet).runs(n).verdict(planned) {
					case measure.LeaveIt:
						add(0, 100)
					case measure.ChangeIt:
						add(1, 100)
					}
				})
				good := true
				switch {
				case e == 0:
					least := map[[2]int]float64{{3, 0}: 55, {5, 0}: 97, {3, 3}: 93, {5, 5}: 100}[[2]int{n, planned}]
					good = got[0] >= r.least(least) && got[1] <= r.most(0.05)
				case e == 1:
					good = max(got[0], got[1]) <= r.most(5)
				case e == 2:
					good = got[0] <= r.most(0.05)
				}
				ok = must(good, "%4d %7d %8.0f %10.2f %9.2f", n, planned, e, got[0], got[1]) && ok
			}
		}
	}
	return ok
}

// outliers prints how often a good reading is pointed out.
func outliers(r run) bool {
	ok := true
	fmt.Println("  runs  readings to  scatter   false %   one of 10 scatters found %")
	line := 0
	for _, n := range []int{3, 4, 5, 6, 8, 10, 20, 50} {
		for _, grid := range []float64{0, 0.05, 0.1, 1} {
			for _, scatter := range []float64{0.1, 0.15, 0.5} {
				line++
				wrong := r.share(5000+line, func(lots *rand.Rand) bool { return pointedOut(lots, n, grid, scatter, 0) })
				found := r.share(5000+line, func(lots *rand.Rand) bool { return pointedOut(lots, n, grid, scatter, 10*scatter) })
				if !must(100*wrong <= r.most(5), "%4d %9.2f %9.2f %9.2f %12.0f", n, grid, scatter, 100*wrong, 100*found) {
					ok = false
				}
			}
		}
	}
	return ok
}

func pointedOut(lots *rand.Rand, n int, grid, scatter, off float64) bool {
	s := make(measure.Series, n)
	for i := range s {
		s[i] = 25 + scatter*lots.NormFloat64()
	}
	s[0] += off
	for i := range s {
		s[i] = round(s[i], grid)
	}
	out, err := measure.StandsOut(s, grid/2)
	return err == nil && out.Found
}

// tools prints of how many sheets the interval is narrower because a tool was named.
func tools(r run) bool {
	ok := true
	for k := range kinds {
		narrower := r.share(6000+k, func(lots *rand.Rand) bool {
			with := measure.Instruments[lots.IntN(len(measure.Instruments))]
			with.Accuracy = with.Usual * float64(lots.IntN(3))
			m := machine{lots: lots, off: 0.02 * (2*lots.Float64() - 1), scatter: with.Resolution * (0.05 + 5*lots.Float64()), tool: with}
			b := m.test(kind(k)).runs(2 + lots.IntN(11))
			return b.scaleWith(with).Ratio.HalfWidth() < b.scaleWith(measure.Instrument{}).Ratio.HalfWidth()*(1-1e-9)
		})
		ok = must(narrower == 0, "%-20s %.3f %%", kinds[k], 100*narrower) && ok
	}
	return ok
}
