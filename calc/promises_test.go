package calc_test

import (
	"math"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/measure"
	"striderule/calc/page/calibrate"
	"striderule/calc/report"
)

// What a page says will come, and how often it errs, in tests that are simulated and typed into
// its sheet: a mark at 125 mm, 100 mm commanded, read to a tool's lines.

// simulated is a machine with its tool.
type simulated struct {
	lots           *rand.Rand
	off            float64 // the relative error
	scatter, lines float64 // mm
}

// rest reads one more run.
func (m simulated) rest() string {
	read := 125 - 100*(1+m.off) + m.scatter*m.lots.NormFloat64()
	return strconv.FormatFloat(math.Round(read/m.lines)*m.lines, 'f', 2, 64)
}

func (m simulated) runs(n int) []string {
	all := make([]string, n)
	for i := range all {
		all[i] = m.rest()
	}
	return all
}

// answered is the report of such readings with more entries.
func answered(t *testing.T, rests []string, more string) report.Report {
	t.Helper()
	f := calc.Load(calibrate.Page, "v=1&steps=400&asked=100&mark=125&rest="+strings.Join(rests, ",")+more)
	require.Empty(t, f.Problems())
	return f.Report()
}

// At every number of runs at most one of twenty good sheets is told of an outlier.
func TestOutlierNotesAreRare(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of tests are simulated")
	}
	const sheets = 1000
	m := simulated{lots: rand.New(rand.NewPCG(7, 2026)), scatter: 0.15, lines: 0.1}
	for _, n := range []int{3, 4, 5, 8, 20} {
		for _, tool := range []string{"", "&tool=caliper-0.05", "&tool=caliper-0.1"} {
			noted := 0
			for range sheets {
				for _, note := range answered(t, m.runs(n), tool).Answer.Notes {
					if strings.Contains(note.Line.String(), "is an outlier") {
						noted++
					}
				}
			}
			assert.LessOrEqual(t, noted, sheets*5/100+20, "%d runs, %s: 5 %%, and three times what chance does to it", n, tool)
		}
	}
}

var settling = regexp.MustCompile(`(\d+) runs in all should settle it`)

// "N runs in all should settle it" comes true in eight of ten tests: N runs of the same machine
// lead to a verdict, of which one is that either is fine.
func TestRunsThatShouldSettleItDo(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of tests are simulated")
	}
	lots := rand.New(rand.NewPCG(8, 2026))
	for range 200 { // three and four runs show too little of the scatter to promise anything
		m := simulated{lots: lots, off: 0.01 * (2*lots.Float64() - 1), scatter: 0.2 + 0.3*lots.Float64(), lines: 0.05}
		require.NotRegexp(t, settling, answered(t, m.runs(3+lots.IntN(2)), "&tool=caliper-0.05").String())
	}
	for _, first := range []int{5, 8} {
		kept, promised := 0, 0
		for promised < 400 {
			m := simulated{lots: lots, off: 0.01 * (2*lots.Float64() - 1), scatter: 0.2 + 0.3*lots.Float64(), lines: 0.05}
			rests := m.runs(first)
			found := settling.FindStringSubmatch(answered(t, rests, "&tool=caliper-0.05").String())
			if found == nil {
				continue
			}
			all, err := strconv.Atoi(found[1])
			require.NoError(t, err)
			promised++
			for len(rests) < all {
				rests = append(rests, m.rest())
			}
			if answered(t, rests, "&tool=caliper-0.05").Answer.Verdict.Kind != report.MeasureMore {
				kept++
			}
		}
		rate := 100 * float64(kept) / float64(promised)
		t.Logf("after %d runs: kept in %.1f %%", first, rate)
		assert.GreaterOrEqual(t, rate, 80.0-6, "three times what chance does to a share of 400")
	}
}

// A sheet that grows run by run until it can tell errs in at most one of twenty, where the
// error is just the acceptable one.
func TestLookingAfterEachRun(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of tests are simulated")
	}
	const sheets, tolerance = 600, 0.005
	lots := rand.New(rand.NewPCG(9, 2026))
	for _, off := range []float64{tolerance, -tolerance} {
		ended := map[report.VerdictKind]int{}
		for range sheets {
			m := simulated{lots: lots, off: off, scatter: 0.15, lines: 0.05}
			rests := m.runs(2)
			kind := report.MeasureMore
			for len(rests) < 50 && kind != report.Leave && kind != report.Change && kind != report.Either {
				rests = append(rests, m.rest())
				kind = answered(t, rests, "&tool=caliper-0.05&limits=0.001").Answer.Verdict.Kind
			}
			ended[kind]++
		}
		t.Logf("at %+.3f: %v", off, ended)
		for _, kind := range []report.VerdictKind{report.Leave, report.Change} {
			assert.LessOrEqual(t, ended[kind], sheets*5/100+16, "%v: 5 %%, and three times what chance does to it", kind)
		}
	}
}

// The ± holds the true error in 95 of 100 tests, with few runs and with a tool that errs.
func TestIntervalHolds(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of tests are simulated")
	}
	const sheets = 1500
	lots := rand.New(rand.NewPCG(10, 2026))
	caliper, _ := measure.InstrumentOf("caliper-0.05")
	for _, n := range []int{2, 3, 5, 10} {
		for _, scatter := range []float64{0.05, 0.15} {
			held, claimed := 0, 0
			for range sheets {
				gain := caliper.Usual * (2*lots.Float64() - 1) / 125 // of its scale, at the longest reading
				off := 0.02 * (2*lots.Float64() - 1)
				m := simulated{lots: lots, off: off + gain*(1+off), scatter: scatter, lines: caliper.Resolution}
				a := answered(t, m.runs(n), "&tool=caliper-0.05").Answer
				if a.U == 0 {
					continue
				}
				claimed++
				ratio := 400 / a.Value
				if math.Abs(ratio-(1+off)) <= a.U/a.Value*ratio {
					held++
				}
			}
			rate := 100 * float64(held) / float64(claimed)
			t.Logf("%d runs, scatter %g mm: %.2f %%", n, scatter, rate)
			assert.GreaterOrEqual(t, rate, 94.5-1.7, "%d runs, scatter %g mm", n, scatter)
		}
	}
}
