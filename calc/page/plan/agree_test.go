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
// planned, of machines and tools whose true errors are drawn too, typed into the sheet that
// the plan hands over. The ± that is shown holds the true error in 95 of 100, and is the
// planned one or less in 8 of 10.
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
		limits := a.test.With.Usual
		if mark > 0 {
			limits *= length / mark // of the tool's gain, for both readings
		}
		own := ownScatter(a)
		inside, kept, squares := 0, 0, 0.0
		for range tests {
			e := 0.02 * (2*lots.Float64() - 1)
			toolErrs := limits * (2*lots.Float64() - 1)
			var went []float64
			for range a.design.Repeats {
				went = append(went, length*(1+e)+own*lots.NormFloat64()+toolErrs)
			}
			for _, f := range typed(t, a, lots, went).Report().Figures() {
				switch f.ID {
				case "error":
					if math.Abs(f.Value/100-e) <= f.U/100 {
						inside++
					}
					if f.U/100 <= a.expected.HalfWidth() {
						kept++
					}
				case "combined":
					squares += f.Value / 100 * f.Value / 100
				}
			}
		}
		covered, reached, rms := 100*float64(inside)/tests, 100*float64(kept)/tests, math.Sqrt(squares/tests)
		// Scatter, steps and the tool's limits, by hand.
		u := math.Sqrt(a.test.Scatter*a.test.Scatter/float64(a.design.Repeats)+float64(readingsOf(a))*step*step/12+limits*limits/3) / length
		t.Logf("%s: %d runs of %g mm; ± covers %.2f %%; the planned ± is reached in %.2f %%; standard uncertainty %.4f %%, achieved (root mean square) %.4f %%",
			plan, a.design.Repeats, length, covered, reached, 100*u, 100*rms)
		assert.True(t, covered >= 94.5 && covered <= 97.5, "%s: %v %%", plan, covered)
		assert.GreaterOrEqual(t, reached, 80-2.7, "%s: three times what chance does to a share of 2,000", plan)
		assert.LessOrEqual(t, reached, 86.0, "%s: and not by asking for more than it takes", plan)
		assert.InEpsilon(t, u, rms, 0.05, plan)
	}
}

// The same of tests at several speeds, of an extruder without slip, and of several lengths.
func TestPlanAndMeasureAgreeAtSeveralPlaces(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of tests are simulated")
	}
	const tests = 2000
	lots := rand.New(rand.NewPCG(5, 2026))
	for _, plan := range []string{
		"v=1&trial=speeds&wanted=0.3&tool=caliper-0.05&scatter=0.15",
		"v=1&trial=speeds&wanted=0.5&tool=caliper-0.02&scatter=0.15&runs=4&at=60,240",
		"v=1&axis=travel&trip=lengths&tool=caliper-0.02&scatter=0.1&from=0&to=200&runs=4",
	} {
		a := worked(t, plan)
		longest, mark := a.test.Commanded, a.test.Mark
		limits := a.test.With.Usual / longest
		if mark > 0 {
			limits = a.test.With.Usual / mark
		}
		own := ownScatter(a)
		inside, kept := 0, 0
		for range tests {
			e := 0.02 * (2*lots.Float64() - 1)
			gain := limits * (2*lots.Float64() - 1)
			var went []float64
			a.rounds(func(place, _ int) {
				length := longest
				if mark == 0 {
					length *= a.design.Places[place]
				}
				went = append(went, length*(1+e)*(1+gain)+own*lots.NormFloat64())
			})
			answer := typed(t, a, lots, went).Report().Answer
			ratio := 100 / answer.Value
			wide := answer.U / answer.Value * ratio
			if math.Abs(ratio-1-e) <= wide {
				inside++
			}
			if wide <= a.expected.HalfWidth() {
				kept++
			}
		}
		covered, reached := 100*float64(inside)/tests, 100*float64(kept)/tests
		t.Logf("%s: %d runs, the longest %g mm; ± covers %.2f %%; the planned ± is reached in %.2f %%", plan, a.design.Runs(), longest, covered, reached)
		assert.GreaterOrEqual(t, covered, 94.5-1.4, plan)
		assert.GreaterOrEqual(t, reached, 80-2.7, "%s: three times what chance does to a share of 2,000", plan)
	}
}

// typed is the sheet that a plan hands over, with the readings of runs that went so far, each
// from a mark wherever it came to be.
func typed(t *testing.T, a solution, lots *rand.Rand, went []float64) *form.Form {
	t.Helper()
	step, mark := a.test.With.Resolution, a.test.Mark
	read := func(v float64) string { return strconv.FormatFloat(math.Round(v/step)*step, 'f', 3, 64) }
	var moved, marks, rest []string
	for _, length := range went {
		at := mark + lots.Float64() - 0.5
		moved, marks, rest = append(moved, read(length)), append(marks, read(at)), append(rest, read(at-length))
	}
	readings := "&moved=" + strings.Join(moved, ",")
	if mark > 0 {
		readings = "&marks=each&eachmark=" + strings.Join(marks, ",") + "&rest=" + strings.Join(rest, ",")
	}
	link := strings.Replace(a.to("measure", enterReadings).Fragment, "&mark="+trial.Decimal(mark), "", 1) + "&steps=100" + readings
	sheet := form.Read(anySite, calibrate.Page, link)
	require.Empty(t, sheet.Problems(), link)
	return sheet
}

// ownScatter is that of the machine alone: the one that a sheet shows has the rounding of its
// readings in it.
func ownScatter(a solution) float64 {
	step := a.test.With.Resolution
	return math.Sqrt(a.test.Scatter*a.test.Scatter - float64(readingsOf(a))*step*step/12)
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
