package plan

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/page/calibrate"
	"striderule/calc/page/trial"
	"striderule/calc/sheet"
)

// The plan's promise is what the page for the readings then says: tests as
// planned, of machines whose true error is drawn too, typed into the sheet that
// the plan hands over.
func TestPlanAndMeasureAgree(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of tests are simulated")
	}
	const tests = 2000
	lots := rand.New(rand.NewPCG(4, 2026))
	for _, plan := range []string{
		"v=1&tool=caliper-0.05&scatter=0.15",
		"v=1&wanted=0.5&tool=caliper-0.02&scatter=0.3",
		"v=1&axis=travel&tool=caliper-0.02&scatter=0.1&from=0&to=200&runs=5",
	} {
		a := worked(t, plan)
		length, step, mark := a.test.Commanded, a.test.With.Resolution, a.test.Mark
		link := a.toMeasure().Fragment
		// The scatter that a sheet shows has the rounding of its readings in it.
		own := math.Sqrt(a.test.Scatter*a.test.Scatter - float64(readingsOf(a))*step*step/12)
		inside, squares := 0, 0.0
		for range tests {
			e := 0.02 * (2*lots.Float64() - 1)
			read := func(v float64) string { return strconv.FormatFloat(math.Round(v/step)*step, 'f', 3, 64) }
			var moved, marks, rest []string
			for range a.design.Repeats {
				went := length*(1+e) + own*lots.NormFloat64()
				at := mark + lots.Float64() - 0.5 // wherever the mark came to be
				moved, marks, rest = append(moved, read(went)), append(marks, read(at)), append(rest, read(at-went))
			}
			readings := "&moved=" + strings.Join(moved, ",")
			if mark > 0 {
				readings = "&marks=each&eachmark=" + strings.Join(marks, ",") + "&rest=" + strings.Join(rest, ",")
			}
			sheet := form.Read(anySite, calibrate.Page, strings.Replace(link, "&mark="+trial.Decimal(mark), "", 1)+"&steps=100"+readings)
			require.Empty(t, sheet.Problems(), link)
			for _, f := range sheet.Report().Figures() {
				switch {
				case f.ID == "error" && math.Abs(f.Value/100-e) <= f.U/100:
					inside++
				case f.ID == "combined":
					squares += f.Value / 100 * f.Value / 100
				}
			}
		}
		covered, rms := 100*float64(inside)/tests, math.Sqrt(squares/tests)
		t.Logf("%s: %d runs of %g mm; U covers %.2f %%; standard uncertainty planned %.4f %%, achieved (root mean square) %.4f %%",
			plan, a.design.Repeats, length, covered, 100*a.expected.U, 100*rms)
		assert.True(t, covered >= 94 && covered <= 97, "%s: %v %%", plan, covered)
		assert.InEpsilon(t, a.expected.U, rms, 0.05, plan)
	}
}

// readingsOf is how many readings make one length.
func readingsOf(a solution) int {
	if a.test.Mark > 0 {
		return 2
	}
	return 1
}

// anySite takes every key for that of a field: the links here are whole.
var anySite = link.Site{Knows: func(string) bool { return true }, Page: func(string) bool { return true }}

// worked is a plan as it is solved.
func worked(t *testing.T, fragment string) solution {
	t.Helper()
	var plan *entries
	page := Page
	page.New = func() sheet.Sheet { plan = newEntries(); return plan }
	require.Empty(t, form.Read(anySite, page, fragment).Problems())
	a := solution{entries: plan}
	require.True(t, a.solve())
	return a
}
