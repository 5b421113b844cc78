package main

import (
	"math"
	"math/rand/v2"
	"sync"

	"striderule/calc/measure"
)

// A machine feeds or moves with an error that is known, and is read with tools that err:
//
//   - each run scatters normally, with the standard deviation scatter;
//   - each reading is rounded to the tool's step;
//   - a tool is off by an error that is the same in all of its readings, evenly spread within
//     ± its accuracy: of its zero where it reads a length, of its scale, as reached at the
//     longest reading, where it reads both mark and remaining length.
type machine struct {
	lots    *rand.Rand
	off     float64 // relative error
	scatter float64
	tool    measure.Instrument
}

// What is commanded, and where the mark is made, in mm.
const commanded, marked = 100.0, 120.0

// The kinds of tests of one length.
type kind int

const (
	lengthRead  kind = iota // the length itself
	markSet                 // the same mark each time
	markEach                // another mark each time
	markByOther             // the mark by another tool of the same sort
)

var kinds = []string{"length read", "mark set", "marks of their own", "two tools"}

// even is a number that is evenly spread within ± half.
func (m *machine) even(half float64) float64 { return half * (2*m.lots.Float64() - 1) }

func (m *machine) round(x float64) float64 { return round(x, m.tool.Resolution) }

func round(x, step float64) float64 {
	if step == 0 {
		return x
	}
	return math.Round(x/step) * step
}

// A bench is a machine at a test: its tools err by what they err by, and it makes runs.
type bench struct {
	machine
	kind            kind
	gain            float64 // of the one tool that reads both
	zero, markZero  float64
	markOff         float64 // how far the set mark lies beside its line
	readings, marks measure.Series
}

func (m machine) test(k kind) *bench {
	b := &bench{machine: m, kind: k, gain: 1}
	a := m.tool.Accuracy
	switch k {
	case lengthRead:
		b.zero = m.even(a)
	case markByOther:
		b.zero, b.markZero = m.even(a), m.even(a)
	default:
		b.gain = 1 + m.even(a)/marked
	}
	b.markOff = m.even(m.tool.Resolution / 2)
	return b
}

// runs makes more runs.
func (b *bench) runs(n int) *bench {
	for range n {
		moved := commanded*(1+b.off) + b.scatter*b.lots.NormFloat64()
		if b.kind == lengthRead {
			b.readings = append(b.readings, b.round(moved+b.zero))
			continue
		}
		mark := (marked+b.markOff)/b.gain - b.markZero // that is said to be at marked
		if b.kind == markEach || b.kind == markByOther {
			mark = marked - 0.5 + b.lots.Float64()
		}
		says := marked
		if b.kind == markEach || b.kind == markByOther {
			says = b.round(mark*b.gain + b.markZero)
		}
		b.marks = append(b.marks, says)
		b.readings = append(b.readings, b.round((mark-moved)*b.gain+b.zero))
	}
	return b
}

// evidence is what was read, as the page hands it on.
func (b *bench) evidence(with measure.Instrument) measure.Evidence {
	if b.kind == lengthRead {
		return measure.Repeated{Readings: b.readings, With: with}
	}
	t := measure.MarkTest{Marks: b.marks, Remaining: b.readings, With: with}
	if b.kind == markSet {
		t.Marks = b.marks[:1]
	}
	if b.kind == markByOther {
		t.RemainingWith = &with
	}
	return t
}

// scale is what the readings say.
func (b *bench) scale() measure.Scale { return b.scaleWith(b.tool) }

func (b *bench) scaleWith(with measure.Instrument) measure.Scale {
	m, err := b.evidence(with).Measure()
	if err == nil {
		var s measure.Scale
		if s, err = measure.ScaleOf(commanded, m); err == nil {
			return s
		}
	}
	panic(err) // a machine that moves nothing is none of ours
}

// share counts how many of some tests are so, side by side, with lots of their own.
func (r run) share(line int, so func(lots *rand.Rand) bool) float64 {
	return r.counts(line, 1, func(lots *rand.Rand, add func(i int, v float64)) {
		if so(lots) {
			add(0, 1)
		}
	})[0]
}

// counts sums up several values over some tests, and returns their means.
func (r run) counts(line, values int, test func(lots *rand.Rand, add func(i int, v float64))) []float64 {
	const parts = 8 // on any machine: the lots of a line are the same then
	sums := make([][]float64, parts)
	var all sync.WaitGroup
	for part := range parts {
		sums[part] = make([]float64, values)
		all.Go(func() {
			lots := rand.New(rand.NewPCG(r.seed, uint64(line)<<8+uint64(part)))
			for n := part; n < r.tests; n += parts {
				test(lots, func(i int, v float64) { sums[part][i] += v })
			}
		})
	}
	all.Wait()
	means := make([]float64, values)
	for _, sum := range sums {
		for i, v := range sum {
			means[i] += v / float64(r.tests)
		}
	}
	return means
}
