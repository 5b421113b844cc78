package machine

import (
	"math"
	"slices"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/logbook"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// A Test is one of an axis that was saved, and how its runs scattered.
type Test struct {
	pieces   []link.Piece
	readings []float64 // in the unit of their field
	scatter  report.Scatter
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
		if t := testOf(calc.Load(page, e.Sheet)); t.scatter.Dof > 0 {
			tests = append(tests, t)
		}
	}
	return tests
}

func testOf(f *form.Form) Test {
	t := Test{pieces: link.Split(f.Fragment()), scatter: f.Report().Scatter}
	for _, field := range f.Fields() {
		if !isReading(f, field) {
			continue
		}
		for row := range f.Rows(field) {
			if e, ok := field.Cells.At(row).(*unit.Entry); ok && e.Given {
				t.readings = append(t.readings, e.Number)
			}
		}
	}
	return t
}

// Before pools how the runs scattered in tests that were made as this sheet's. Whatever shares most of
// its readings with another was saved twice, or mended, or went on: it counts once; of this sheet not
// at all. It returns of how many tests that is. Source: JCGM 100, H.5.2.5, pooled variances.
func Before(tests []Test, f *form.Form) (pooled report.Scatter, n int) {
	counted := []Test{testOf(f)}
	squares := 0.0
	for _, t := range tests {
		if t.scatter.Key != counted[0].scatter.Key || !isMadeAs(t.pieces, counted[0].pieces) || slices.ContainsFunc(counted, t.isSame) {
			continue
		}
		counted = append(counted, t)
		squares += t.scatter.Dof * t.scatter.SD * t.scatter.SD
		pooled.Dof += t.scatter.Dof
	}
	if pooled.Dof > 0 {
		pooled.Key, pooled.SD = counted[0].scatter.Key, math.Sqrt(squares/pooled.Dof)
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

// isSame reports whether two tests share more than half of the readings that the shorter one has; of
// one that has a single reading, whether the other begins with it.
func (t Test) isSame(other Test) bool {
	if n := min(len(t.readings), len(other.readings)); n < 2 {
		return n == 1 && t.readings[0] == other.readings[0]
	}
	left := slices.Clone(other.readings)
	shared := 0
	for _, r := range t.readings {
		if i := slices.Index(left, r); i >= 0 {
			left[i] = math.NaN() // counts once
			shared++
		}
	}
	return 2*shared > min(len(t.readings), len(other.readings))
}
