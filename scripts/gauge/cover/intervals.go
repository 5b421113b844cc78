package main

import (
	"fmt"
	"math"
	"math/rand/v2"

	"striderule/calc"
	"striderule/calc/measure"
)

// What is asked of coverage, in %.
const (
	leastOne  = 94.5
	leastMore = 94
)

var (
	scatters   = []float64{0.05, 0.1, 0.2, 0.4, 0.8, 1.5, 3, 5} // in steps
	accuracies = []float64{0, 0.5, 1, 2, 5}
	// mostWide is the most that the mean width may be, over that with the scatter known.
	mostWide = map[int]float64{3: 1.50, 5: 1.15}
)

const step = 0.05 // of the tools, mm

// oneLength prints the worst coverage of tests of one length, and the mean width.
func oneLength(r run) bool {
	ok := true
	fmt.Println("  runs  worst  of which kind         scatter  accuracy  the Guide's  mean width / width with scatter known")
	for _, said := range calc.Coverages {
		n := said.Runs
		worst, at, below := 101.0, "", 0
		guide := 101.0
		widest := 0.0
		for k := range kinds {
			wide, known := 0.0, 0.0
			for i, s := range scatters {
				for j, a := range accuracies {
					m := machine{scatter: s * step, tool: measure.Instrument{Resolution: step, Accuracy: a * step}}
					got := r.counts(((n*10+k)*10+i)*10+j, 3, func(lots *rand.Rand, add func(int, float64)) {
						one := m
						one.lots, one.off = lots, 0.01*(2*lots.Float64()-1)
						e := one.test(kind(k)).runs(n).scale().Error()
						u := e.HalfWidth()
						if math.Abs(e.Value-one.off) <= u {
							add(0, 100)
						}
						add(1, u)
						if math.Abs(e.Value-one.off) <= e.Expanded() {
							add(2, 100)
						}
					})
					wide, known = wide+got[1]/knownScatter(m, kind(k), n).HalfWidth(), known+1
					guide = min(guide, got[2])
					if got[0] < worst {
						worst, at = got[0], fmt.Sprintf("%-20s %5.2f %8.1f", kinds[k], s, a)
					}
					if got[0] < leastOne {
						below++
					}
				}
			}
			widest = max(widest, wide/known)
		}
		good := worst >= r.least(leastOne)
		if most := mostWide[n]; most > 0 {
			good = good && widest <= most
		}
		// What the method page says, to 0.1, is what is found here.
		as := func(found, said float64) bool { return math.Abs(found-said) < 0.05+r.luck(said) }
		good = good && as(worst, said.Shown) && as(guide, said.Guide) && math.Abs(widest-said.Width) < 0.06
		ok = must(good, "%4d  %5.1f  %s  %9.1f %9.2f   (%d of 160 below %.1f)", n, worst, at, guide, widest, below, leastOne) && ok
	}
	return ok
}

// knownScatter is the interval of a test whose scatter is known: the normal distribution's.
func knownScatter(m machine, k kind, n int) measure.Estimate {
	b := measure.Test{Commanded: commanded, Length: commanded, Runs: n, Scatter: m.scatter, With: m.tool}
	if k != lengthRead {
		b.Mark = marked
	}
	if k == markByOther {
		b.RemainingWith = &m.tool
	}
	budget := b.Budget()
	for i := range budget {
		if budget[i].TypeA {
			budget[i].Dof, budget[i].Least, budget[i].TypeA = math.Inf(1), 0, false
		}
	}
	return budget.Scaled(1 / commanded).Estimate(1)
}

// lines prints the coverage of slopes, offsets and lost motion.
func lines(r run) bool {
	ok := true
	fmt.Println("  what                          scatter  step  accuracy   error %   offset or backlash %")
	line := 0
	for _, with := range []measure.Instrument{{Resolution: 0.01}, {Resolution: 0.05, Accuracy: 0.05}, {Resolution: 0.1, Accuracy: 0.2}, {Resolution: 1, Accuracy: 0.5}} {
		for _, scatter := range []float64{0.02, 0.1, 0.4} {
			for _, lengths := range [][]float64{{20, 100, 180}, {20, 70, 130, 180}, {20, 60, 100, 140, 180}} {
				line++
				got := r.counts(1000+line, 2, func(lots *rand.Rand, add func(int, float64)) {
					m := machine{lots: lots, off: 0.01 * (2*lots.Float64() - 1), scatter: scatter, tool: with}
					gain, offset := 1+m.even(with.Accuracy)/180, m.even(0.3)
					var points []measure.Point
					for _, l := range lengths {
						went := l*(1+m.off) + offset + scatter*lots.NormFloat64()
						points = append(points, measure.Point{X: l, Y: m.round(went * gain)})
					}
					a, err := measure.ScaleAndOffset(points, with)
					if err != nil {
						panic(err)
					}
					count(add, 0, a.Scale.Error(), m.off)
					count(add, 1, a.Offset, offset)
				})
				ok = must(min(got[0], got[1]) >= r.least(leastMore), "%d lengths once each            %5.2f %6.2f %6.2f %9.1f %9.1f", len(lengths), scatter, with.Resolution, with.Accuracy, got[0], got[1]) && ok
			}
			line++
			got := r.counts(1000+line, 2, func(lots *rand.Rand, add func(int, float64)) { bothSides(lots, scatter, with, add) })
			ok = must(min(got[0], got[1]) >= r.least(leastMore), "both sides, 5 targets twice    %5.2f %6.2f %6.2f %9.1f %9.1f", scatter, with.Resolution, with.Accuracy, got[0], got[1]) && ok
		}
	}
	return ok
}

// count adds a test whose interval holds the true value.
func count(add func(int, float64), i int, e measure.Estimate, truth float64) {
	if math.Abs(e.Value-truth) <= e.HalfWidth() {
		add(i, 100)
	}
}

// bothSides approaches five targets twice from either side.
func bothSides(lots *rand.Rand, scatter float64, with measure.Instrument, add func(int, float64)) {
	m := machine{lots: lots, off: 0.01 * (2*lots.Float64() - 1), scatter: scatter, tool: with}
	gain, lost := 1+m.even(with.Accuracy)/180, 0.3*lots.Float64()
	var targets []measure.Target
	var means []measure.Point
	for _, at := range []float64{10, 55, 100, 145, 190} {
		t := measure.Target{Position: at}
		for range 2 {
			reach := func(side float64) float64 {
				return m.round((at*(1+m.off) + side*lost/2 + scatter*lots.NormFloat64()) * gain)
			}
			up, down := reach(1), reach(-1)
			t.Forward, t.Backward = append(t.Forward, up), append(t.Backward, down)
			means = append(means, measure.Point{X: at, Y: (up + down) / 2})
		}
		targets = append(targets, t)
	}
	a, err := measure.ScaleOfPositions(means, with)
	if err != nil {
		panic(err)
	}
	count(add, 0, a.Scale.Error(), m.off)
	r, err := measure.Bidirectional(targets, with)
	if err != nil {
		panic(err)
	}
	count(add, 1, r.MeanReversal, lost)
}
