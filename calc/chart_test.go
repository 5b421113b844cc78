package calc_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// chartsOf are all charts of a report.
func chartsOf(r report.Report) []report.Chart {
	var all []report.Chart
	for _, p := range r.Parts {
		for _, b := range p.Blocks {
			if c, ok := b.(report.Chart); ok {
				all = append(all, c)
			}
		}
	}
	return all
}

// checkChart holds a chart against what every chart promises.
func checkChart(t require.TestingT, c report.Chart) {
	require.NotEmpty(t, c.Title)
	require.NotEmpty(t, c.X.Label)
	require.NotEmpty(t, c.Y.Label)
	require.Positive(t, c.Y.Digits)
	require.Positive(t, len(c.Points)+len(c.Curves), "there is nothing to see")
	alt := c.Alt()
	require.True(t, strings.HasSuffix(c.Says, "."), c.Says)
	require.True(t, strings.HasPrefix(alt, c.Says))
	values := c.Values()
	for _, row := range values.Rows {
		require.Len(t, row, len(values.Head))
	}
	cells := ""
	for _, row := range values.Rows {
		for _, cell := range row {
			cells += cell.String() + "\n"
		}
	}
	for _, p := range c.Points {
		for _, v := range []float64{p.X, p.Y, p.Lo, p.Hi} {
			require.True(t, unit.Finite(v), "%+v", p)
		}
		require.True(t, p.Lo <= p.Y && p.Y <= p.Hi, "%+v", p)
		require.NotEmpty(t, p.Label)
		require.NotEmpty(t, c.Keys[p.Kind], "the legend does not say what %+v is", p)
		require.Contains(t, cells, c.Value(p, "")+"\n", "the table lacks %+v", p)
		if c.X.Names == nil {
			require.Positive(t, c.X.Digits)
			require.Contains(t, cells, c.X.Figure(p.X).Number()+"\n")
		} else {
			require.True(t, 1 <= p.X && int(p.X) <= len(c.X.Names))
		}
		if p.Kind == report.Result {
			require.Contains(t, alt, c.Value(p, c.Y.Unit), "the words lack a result")
		}
	}
	for _, b := range c.Bands {
		require.True(t, unit.Finite(b.Lo) && unit.Finite(b.Hi) && b.Lo <= b.Hi)
		require.Contains(t, alt, c.Y.FromTo(b.Lo, b.Hi))
		require.Contains(t, cells, c.Y.FromTo(b.Lo, b.Hi))
	}
	strokes := map[report.CurveKind]bool{}
	for _, l := range c.Curves {
		require.False(t, strokes[l.Kind], "two curves look alike")
		strokes[l.Kind] = true
		require.GreaterOrEqual(t, len(l.At), 2)
		require.True(t, slices.IsSortedFunc(l.At, func(a, b report.Place) int { return int(a.X - b.X) }))
		require.Contains(t, cells, l.Label)
		require.Contains(t, alt, c.Y.Figure(l.At[0].Y).Number())
		for _, at := range l.At {
			require.True(t, unit.Finite(at.X) && unit.Finite(at.Y))
		}
	}
	require.NotContains(t, alt+cells, "NaN")
}

func TestChartsSayWhatTheyShow(t *testing.T) {
	seen := map[string]int{}
	old := links(t)
	eachPage(t, func(t *testing.T, p sheet.Page) {
		fragments := []string{p.Example}
		for _, l := range old[p.Slug] {
			fragments = append(fragments, l.fragment)
		}
		for _, fragment := range fragments {
			ids := map[string]bool{}
			for _, c := range chartsOf(calc.Load(p, fragment).Report()) {
				checkChart(t, c)
				assert.False(t, ids[c.ID], "%s twice", c.ID)
				ids[c.ID] = true
				seen[rowSuffix.ReplaceAllString(c.ID, "")]++
			}
		}
	})
	for _, id := range []string{"runs", "speeds", "lengths", "residuals", "sides", "expect", "readings"} {
		assert.Positive(t, seen[id], "no link draws %s", id)
	}
}

func TestAnyChartSaysWhatItShows(t *testing.T) {
	eachPage(t, func(t *testing.T, p sheet.Page) {
		rapid.Check(t, func(t *rapid.T) {
			for _, c := range chartsOf(drawForm(t, p).Report()) {
				checkChart(t, c)
			}
		})
	})
}

func chartNamed(t *testing.T, f *form.Form, id string) report.Chart {
	t.Helper()
	for _, c := range chartsOf(f.Report()) {
		if c.ID == id {
			return c
		}
	}
	require.FailNow(t, "no chart "+id)
	return report.Chart{}
}

func TestChartOfReadings(t *testing.T) {
	c := chartNamed(t, calctest.Open(t, "measure", "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05&restagain=25.0,25.1"), "runs")
	assert.Equal(t, []string{"1", "2", "3", "mean", "1", "2"}, c.X.Names)
	assert.Equal(t, "run 2: 76.1 mm", c.Reading(c.Points[1]))
	assert.Equal(t, "check run 2: 79.9 mm", c.Reading(c.Points[5]))
	assert.Contains(t, c.Alt(), "5 points from 76.1 to 80 mm; mean: 76.267 mm (75.")
	assert.Contains(t, c.Alt(), "; acceptable: 79.6 to 80.4.")
}

// What the setting is taken from stands where it is taken from.
func TestChartOfSpeeds(t *testing.T) {
	result := func(fragment string) (report.Point, report.Chart) {
		c := chartNamed(t, calctest.Open(t, "measure", "v=1&steps=415&trial=speeds&asked=100&read=fed&tool=caliper-0.02"+fragment), "speeds")
		p := c.Points[len(c.Points)-1]
		require.Equal(t, report.Result, p.Kind)
		assert.Less(t, p.Lo, p.Y)
		return p, c
	}
	p, c := result("&at=1mm/s,1mm/s,3mm/s,3mm/s,6mm/s,6mm/s&fed=99.42,99.38,99.03,98.98,98.42,98.38")
	assert.Equal(t, "the line at zero speed, with its interval", c.Keys[report.Result])
	assert.Zero(t, p.X)
	assert.InDelta(t, c.Curves[0].At[0].Y, p.Y, 1e-9, "the line begins there")
	p, c = result("&at=60,60,60,180,180,180,300,300,300&fed=99.42,99.38,99.40,99.41,99.38,99.40,97.1,97.0,97.05")
	assert.Equal(t, "the line at zero speed, with its interval", c.Keys[report.Result])
	assert.Zero(t, p.X)
	// No line fits all: the one of the two slowest, whose means are −0.6 and −0.60333 % at 1 and 3 mm/s.
	assert.InDelta(t, -0.6+0.00333333333/2, p.Y, 1e-9)
	require.Len(t, c.Curves, 1)
	assert.Equal(t, "line through the two slowest speeds", c.Curves[0].Label)
	assert.InDeltaSlice(t, []float64{0, p.Y, 3, -0.60333333333}, []float64{c.Curves[0].At[0].X, c.Curves[0].At[0].Y, c.Curves[0].At[1].X, c.Curves[0].At[1].Y}, 1e-9)
	p, c = result("&at=60,60,180,180&fed=99.42,99.38,99.41,99.38")
	assert.Equal(t, "the line at zero speed, with its interval", c.Keys[report.Result])
	assert.Zero(t, p.X, "where no slip is seen as well")
	assert.InDelta(t, -0.6+0.005/2, p.Y, 1e-9, "means −0.6 and −0.605 % at 1 and 3 mm/s: half of it back")
	require.Len(t, c.Curves, 1)
	assert.Equal(t, "line through the runs", c.Curves[0].Label)
}

// The residuals of six runs, worked out apart: they add up to nothing.
func TestChartOfResiduals(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&axis=travel&steps=80&trip=lengths&want=20,20,100,100,180,180&moved=20.13,20.11,99.81,99.79,179.49,179.47&tool=caliper-0.02")
	c := chartNamed(t, f, "residuals")
	sum := 0.0
	for i, p := range c.Points {
		assert.InDelta(t, []float64{.01, -.01, .01, -.01, .01, -.01}[i], p.Y, 1e-9)
		sum += p.Y
	}
	assert.InDelta(t, 0, sum, 1e-9)
	exact := chartNamed(t, calctest.Open(t, "measure", "v=1&axis=travel&steps=80&trip=lengths&want=10,20,30&moved=10.1,20.2,30.3&tool=caliper-0.02"), "residuals")
	for _, p := range exact.Points {
		assert.Zero(t, p.Y, "rounding is not shown as if it were measured")
	}
	offset := chartNamed(t, f, "lengths").Points[6]
	assert.InDelta(t, 0.2, offset.Y, 1e-9)
	assert.Equal(t, report.Result, offset.Kind)
}

func TestChartOfAPlan(t *testing.T) {
	f := calctest.Open(t, "plan", "v=1&wanted=0.3&tool=caliper-0.05&scatter=0.15&runs=4")
	c := chartNamed(t, f, "expect")
	labels := []string{}
	for _, l := range c.Curves {
		labels = append(labels, l.Label)
		if l.Level() {
			assert.Equal(t, report.Limit, l.Kind)
			assert.InDelta(t, 0.3, l.At[0].Y, 1e-12)
			continue
		}
		for i := 1; i < len(l.At); i++ {
			assert.Less(t, l.At[i].Y, l.At[i-1].Y, "%s: a longer run is better", l.Label)
		}
	}
	assert.Equal(t, []string{"Wanted", "4 runs", "3 runs", "5 runs", "10 runs"}, labels)
	plan := c.Points[0]
	assert.Equal(t, f.Report().Answer.Value, plan.X)
	assert.LessOrEqual(t, plan.Y, 0.3)
	assert.Contains(t, c.Curves[1].At, report.Place{X: plan.X, Y: plan.Y}, "the plan lies on its line")

	cannot := chartNamed(t, calctest.Open(t, "plan", "v=1&wanted=0.01&tool=rule"), "expect")
	assert.Equal(t, "The best there's room for", cannot.Keys[report.Result])
	assert.Greater(t, cannot.Points[0].Y, 0.01)
	assert.Empty(t, chartsOf(calctest.Open(t, "plan", "v=1&axis=travel&trip=sides&tool=caliper-0.01&letter=y&from=0&to=200").Report()))
}
