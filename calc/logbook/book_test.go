package logbook

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	_ "striderule/calc/calctest/cases"
	"striderule/calc/form"
)

func TestBook(t *testing.T) {
	b := NewBook(Example()...)
	assert.Equal(t, 12, b.Len())
	for i := 1; i < b.Len(); i++ {
		assert.GreaterOrEqual(t, b.All()[i-1].Date, b.All()[i].Date, "newest first")
	}
	assert.Equal(t, []string{"Heron", "Plover"}, b.Machines())
	assert.Equal(t, []string{"feed", "X"}, b.Axes(""))
	assert.Equal(t, []string{"X"}, b.Axes("Plover"))
	assert.Len(t, b.Of("Heron", ""), 7)
	assert.Len(t, b.Of("", "X"), 5)
	assert.Empty(t, b.Of("Heron", "X"))
	last, ok := b.Last("measure")
	assert.True(t, ok)
	assert.Equal(t, "2026-10-31T15:15", last.Date)
	other, ok := b.Last("convert")
	assert.True(t, ok)
	assert.Equal(t, last, other)
	_, ok = NewBook().Last("measure")
	assert.False(t, ok)
	_, ok = b.Entry("nowhere")
	assert.False(t, ok)
}

func TestSameIDOtherContent(t *testing.T) {
	b := NewBook(feed(t, "2026-11-25"))
	e := b.All()[0]
	changed := e
	changed.Note = "written otherwise"
	m := b.Merge([]Entry{e, changed, changed})
	assert.Equal(t, 2, m.There, "the same, and the second time of the other")
	assert.Equal(t, 1, m.Beside)
	require.Len(t, m.Added, 1)
	assert.Equal(t, e.ID+"-2", m.Added[0].ID)
	third := e
	third.Note = "and otherwise again"
	assert.Equal(t, e.ID+"-3", b.Merge([]Entry{third}).Added[0].ID)
	assert.Equal(t, 3, b.Merge([]Entry{e, changed, third}).There, "importing again adds nothing")

	long := e
	long.ID = "a23456789012345678901234567890123456789z"
	longer := long
	longer.Note = "other"
	b.Merge([]Entry{long, longer})
	got, ok := b.Entry("a2345678901234567890123456789012345678-2")
	require.True(t, ok)
	assert.Equal(t, "other", got.Note)
}

func TestRemoveAndUndo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := NewBook(drawEntries(t)...)
		before := append([]Entry(nil), b.All()...)
		var ids []string
		for _, e := range before {
			if rapid.Bool().Draw(t, "remove") {
				ids = append(ids, e.ID)
			}
		}
		gone := b.Remove(append(ids, "nowhere")...)
		require.Len(t, gone, len(ids))
		require.Equal(t, len(before)-len(ids), b.Len())
		b.Merge(gone)
		require.Equal(t, len(before), b.Len())
		if len(before) > 0 {
			require.Equal(t, before, b.All())
		}
	})
}

func TestCompare(t *testing.T) {
	page := pageNamed(t, "measure")
	a, _ := Of(calc.Load(page, heron+"&done=clean"), "2026-05-02", "Heron", "Extruder", "")
	b, _ := Of(calc.Load(page, "v=1&steps=564.3&read=fed&asked=80&fed=80.1,,79.9&tool=caliper-0.05&done=clean,mark&aside=,yes"), "2026-05-03", "Heron", "Extruder", "")
	c := Compare(b, a)
	assert.Equal(t, a, c.Before, "the older one comes first, whichever was ticked first")
	assert.True(t, c.SamePage)
	got := map[string]Difference{}
	for _, d := range c.Differences {
		got[d.Label] = d
	}
	assert.Equal(t, Difference{"Steps per mm", "538.0", "564.3"}, got["Steps per mm"])
	assert.Equal(t, Difference{"Remaining (runs)", "28.7, 28.9, 28.6", "not given"}, got["Remaining (runs)"])
	assert.Equal(t, Difference{"Fed (runs)", "not given", "80.1, , 79.9"}, got["Fed (runs)"])
	assert.Equal(t, Difference{"Checks done", "Drive gear clean", "Drive gear clean, Fine mark"}, got["Checks done"])
	assert.Equal(t, "Mark the filament", got["Method"].Before)
	assert.NotContains(t, got, "Commanded length")
	assert.Empty(t, Compare(a, a).Differences)

	convert := b
	convert.Page, convert.Sheet = "convert", pageNamed(t, "convert").Example
	other := Compare(a, convert)
	assert.False(t, other.SamePage)
	assert.Empty(t, other.Differences)
	a.Page, b.Page = "tomorrow", "tomorrow"
	assert.Empty(t, Compare(a, b).Differences, "a page that is not known")
}

// results makes entries of one result, with days and values.
func results(t *testing.T, u float64, points ...[2]float64) []Entry {
	var all []Entry
	for _, p := range points {
		e := feed(t, "2026-01-01")
		e.ID = ""
		e.Date = "2026-01-" + string([]byte{'0' + byte(p[0])/10, '0' + byte(p[0])%10})
		e.Value, e.U = p[1], u
		all = append(all, e)
	}
	return NewBook(all...).All()
}

func TestTrendInWords(t *testing.T) {
	for _, c := range []struct {
		name   string
		u      float64
		points [][2]float64
		says   []string
	}{
		{"one", 1, [][2]float64{{1, 80}}, []string{"Not enough for a trend"}},
		{"two", 1, [][2]float64{{1, 80}, {9, 81}}, []string{"Not enough for a trend"}},
		{"one day", 1, [][2]float64{{1, 80}, {1, 81}, {1, 82}}, []string{"All of these are from the same time"}},
		{"rises", 0.1, [][2]float64{{1, 80}, {6, 80.51}, {11, 81}, {16, 81.49}, {21, 82}}, []string{"Rising by 3.0"}},
		{"falls", 0.1, [][2]float64{{1, 82}, {6, 81.49}, {11, 81}, {16, 80.51}, {21, 80}}, []string{"Falling by 3.0"}},
		{"within the ±", 9, [][2]float64{{1, 80}, {6, 80.51}, {11, 81}, {16, 81.49}, {21, 82}}, []string{"Rising by", "The whole drift is smaller than the ±"}},
		{"none", 1, [][2]float64{{1, 80}, {6, 81}, {11, 79}, {16, 80.5}, {21, 80}}, []string{"No clear trend: anything from −"}},
		{"the same", 1, [][2]float64{{1, 80}, {6, 80}, {11, 80}}, []string{"No trend: it's the same each time.", "With so few results"}},
		{"out of bounds", 1, [][2]float64{{1, 1e300}, {6, -1e300}, {11, 1e300}}, []string{"too far apart in size"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			trends := Trends(results(t, c.u, c.points...))
			require.Len(t, trends, 1)
			require.Len(t, trends[0].Says, len(c.says), "%v", trends[0].Says)
			for i, says := range c.says {
				assert.Contains(t, trends[0].Says[i], says)
			}
			assert.True(t, strings.HasPrefix(trends[0].Chart.Alt(), trends[0].Says[0]))
			assert.Len(t, trends[0].Chart.Points, len(c.points))
		})
	}
}

// The slope by hand: 3 results on days 0, 10, 20 with 80, 81, 82.3 rise by
// 0.115 a day, 3.50 a month of 30.4375 days. The rest is ±0.1, so the standard
// uncertainty is √(0.015)/√200 a day; Student's t for one degree is 12.7062.
func TestTrendFigures(t *testing.T) {
	trend := Trends(results(t, 0.1, [2]float64{1, 80}, [2]float64{11, 81}, [2]float64{21, 82.3}))[0]
	assert.Contains(t, trend.Says[0], "Rising by 3.5 ± 3.3 steps/mm a month")
	assert.Equal(t, "Days since 2026-01-01", trend.Chart.X.Label)
	last := trend.Chart.Points[2]
	assert.Equal(t, 20.0, last.X)
	assert.InDelta(t, 82.2, last.Lo, 1e-9)
	assert.InDelta(t, 82.4, last.Hi, 1e-9)
	require.Len(t, trend.Chart.Curves, 1)
	assert.InDelta(t, 81.1+0.115*10, trend.Chart.Curves[0].At[1].Y, 1e-9)
}

func TestTrendsAreNotMixed(t *testing.T) {
	steps := results(t, 1, [2]float64{1, 80}, [2]float64{2, 81}, [2]float64{3, 80})
	turn := results(t, 1, [2]float64{4, 40})
	turn[0].Output, turn[0].Unit = "turn", "mm"
	inch := results(t, 1, [2]float64{5, 2000})
	inch[0].Unit = "steps/in"
	none := results(t, 1, [2]float64{6, 0})
	none[0].Output = ""
	all := NewBook(append(append(append(steps, turn...), inch...), none...)...).All()
	trends := Trends(all)
	require.Len(t, trends, 3)
	assert.Equal(t, []int{1, 1, 3}, []int{trends[0].Results, trends[1].Results, trends[2].Results})
	ids := map[string]bool{}
	for _, x := range trends {
		ids[x.Chart.ID] = true
	}
	assert.Len(t, ids, 3)
}

func TestLongTrend(t *testing.T) {
	trend := Trends(NewBook(many(1000)...).Of("Heron", "feed"))[0]
	assert.Len(t, trend.Chart.Points, mostShown)
	assert.Contains(t, trend.Says[len(trend.Says)-1], "The chart shows the latest 200 results; the text uses all")
}

func TestExampleShowsWhatATrendIs(t *testing.T) {
	b := NewBook(Example()...)
	assert.Contains(t, Trends(b.Of("Heron", "feed"))[0].Says[0], "Rising by")
	assert.Contains(t, Trends(b.Of("Plover", "X"))[0].Says[0], "No clear trend")
	for _, e := range b.All() {
		page := pageNamed(t, e.Page)
		check, says := calc.Load(page, e.Sheet).Check()
		assert.Equal(t, form.Same, check, says)
		assert.Empty(t, calc.Load(page, e.Sheet).Problems(), e.Date)
	}
}

// What can't be read, of a newer version perhaps, must not be overwritten.
func TestReservedIDsStayFree(t *testing.T) {
	e := feed(t, "2026-11-25")
	b := NewBook()
	e.ID = "theirs"
	b.Reserve(e.ID)
	m := b.Merge([]Entry{e})
	assert.Equal(t, 1, m.Beside)
	assert.Equal(t, "theirs-2", m.Added[0].ID)
	assert.Equal(t, 1, b.Merge([]Entry{e}).There, "importing again adds nothing")
}
