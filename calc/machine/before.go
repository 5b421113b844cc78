package machine

import (
	"math"
	"slices"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/logbook"
	"striderule/calc/report"
)

// A Test is one of an axis that was saved, and how its runs scattered.
type Test struct {
	pieces  []link.Piece
	scatter report.Scatter
}

// mostTests is how many tests are looked at, the newest: an old scatter tells little of a machine.
const mostTests = 10

// TestsIn works out the tests among entries, newest first, whose runs show a scatter.
func TestsIn(entries []logbook.Entry) []Test {
	var tests []Test
	for _, e := range entries {
		page, ok := calc.PageOf(e.Page)
		if !ok || len(tests) == mostTests {
			continue
		}
		if scatter := calc.Load(page, e.Sheet).Report().Scatter; scatter.Dof > 0 {
			tests = append(tests, Test{link.Split(e.Sheet), scatter})
		}
	}
	return tests
}

// Before pools how the runs scattered in tests that were made as this sheet's. A sheet that was saved
// twice, or before it had all of its runs, counts once; so does this one itself. It returns of how
// many tests that is. Source: JCGM 100, H.5.2.5, pooled variances.
func Before(tests []Test, f *form.Form) (pooled report.Scatter, n int) {
	readings := readingKeys(f)
	counted := []Test{{pieces: link.Split(f.Fragment())}}
	squares := 0.0
	for _, t := range tests {
		isAlike := func(other Test) bool { return isBegun(t.pieces, other.pieces, readings) }
		if t.scatter.Key != f.Report().Scatter.Key || !isMadeAs(t.pieces, counted[0].pieces) || slices.ContainsFunc(counted, isAlike) {
			continue
		}
		counted = append(counted, t)
		squares += t.scatter.Dof * t.scatter.SD * t.scatter.SD
		pooled.Dof += t.scatter.Dof
	}
	if pooled.Dof > 0 {
		pooled.Key, pooled.SD = f.Report().Scatter.Key, math.Sqrt(squares/pooled.Dof)
	}
	return pooled, len(counted) - 1
}

// isMadeAs reports whether two tests were made alike.
func isMadeAs(a, b []link.Piece) bool {
	for _, key := range append([]string{"axis"}, testKeys...) {
		if !slices.Equal(link.CellsOf(a, key), link.CellsOf(b, key)) {
			return false
		}
	}
	return true
}

// isBegun reports whether the readings of one test are those that the other begins with.
func isBegun(a, b []link.Piece, readings []string) bool {
	for _, key := range readings {
		of, other := link.CellsOf(a, key), link.CellsOf(b, key)
		n := min(len(of), len(other))
		if !slices.Equal(of[:n], other[:n]) {
			return false
		}
	}
	return true
}

// readingKeys are those of what is read in a run.
func readingKeys(f *form.Form) (keys []string) {
	for _, field := range f.Fields() {
		if isReading(f, field) {
			keys = append(keys, field.Key)
		}
	}
	return keys
}
