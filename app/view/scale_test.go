package view

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	_ "striderule/calc/calctest/cases"
	"striderule/calc/logbook"
	"striderule/calc/report"
)

// readTick is the value that a tick says.
func readTick(t require.TestingT, text string) float64 {
	v, err := strconv.ParseFloat(strings.NewReplacer("−", "-", "\u202f", "").Replace(text), 64)
	require.NoError(t, err, text)
	return v
}

func texts(all []tick) []string {
	var said []string
	for _, t := range all {
		said = append(said, t.text)
	}
	return said
}

func TestTicksAreRoundAndInside(t *testing.T) {
	assert.Equal(t, []string{"0", "5", "10"}, texts(ticks(Span{0, 10, 0, 1}, 5)))
	assert.Equal(t, []string{"0", "2", "4", "6", "8", "10"}, texts(ticks(Span{0, 10, 0, 1}, 6)))
	assert.Equal(t, []string{"−5", "0", "5"}, texts(ticks(Span{-6, 6, 0, 1}, 3)))
	assert.Equal(t, []string{"−0.02", "0.00", "0.02"}, texts(ticks(Span{-.03, .03, 0, 1}, 3)))
	assert.Equal(t, []string{"0", "20\u202f000", "40\u202f000"}, texts(ticks(Span{0, 40000, 0, 1}, 4)))
	assert.Empty(t, ticks(Span{1, 1, 0, 1}, 5))
	assert.Empty(t, ticks(Span{0, 1, 0, 1}, 0))
	assert.Empty(t, ticks(Span{-1e308, 1e308, 0, 1}, 5), "beyond all numbers")
	rapid.Check(t, func(t *rapid.T) {
		lo := rapid.Float64Range(-1e5, 1e5).Draw(t, "lo")
		s := Span{lo, lo + math.Pow(10, rapid.Float64Range(-2, 7).Draw(t, "width")), 0, 1000}
		n := rapid.IntRange(1, 8).Draw(t, "n")
		all := ticks(s, n)
		require.LessOrEqual(t, len(all), n)
		if n >= 4 {
			require.GreaterOrEqual(t, len(all), 2, "an axis has a scale")
		}
		for i, tick := range all {
			require.True(t, -1e-3 <= tick.at && tick.at <= 1000+1e-3, "%v is outside by more than rounding", tick)
			require.InDelta(t, tick.at, s.At(readTick(t, tick.text)), 1e-3, "it says what it is")
			if i > 0 {
				step := readTick(t, tick.text) - readTick(t, all[i-1].text)
				require.Greater(t, tick.at, all[i-1].at)
				digit := step / math.Pow(10, math.Floor(math.Log10(step*1.0001)))
				require.True(t, min(math.Abs(digit-1), math.Abs(digit-2), math.Abs(digit-5)) < 1e-6, "a step of %v", step)
			}
		}
	})
}

func TestWritten(t *testing.T) {
	for _, c := range []struct {
		v        float64
		decimals int
		want     string
	}{{0, 0, "0"}, {math.Copysign(0, -1), 1, "0.0"}, {-0.25, 2, "−0.25"}, {4000, -3, "4000"}, {40000, -4, "40\u202f000"}, {-1234567, 0, "−1\u202f234\u202f567"}, {2e-8, 8, "2e−08"}, {-3e12, -12, "−3e+12"}} {
		assert.Equal(t, c.want, written(c.v, c.decimals))
	}
}

// No text of an axis is over another, and none leaves the picture.
func TestTextsOfAnAxisAreApart(t *testing.T) {
	free := func(t require.TestingT, all []tick) {
		for i := 1; i < len(all); i++ {
			a, b := all[i-1], all[i]
			if a.at > b.at {
				a, b = b, a
			}
			require.LessOrEqual(t, a.inside(0, chartWidth)+a.width()/2, b.inside(0, chartWidth)-b.width()/2+1e-9, "%v and %v", a, b)
		}
		for _, tick := range all {
			require.GreaterOrEqual(t, tick.inside(0, chartWidth)-tick.width()/2, -1e-9)
			require.LessOrEqual(t, tick.inside(0, chartWidth)+tick.width()/2, chartWidth+1e-9)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		lo := rapid.Float64Range(-1e6, 1e6).Draw(t, "lo")
		left := rapid.Float64Range(10, 120).Draw(t, "left")
		s := Span{lo, lo + math.Pow(10, rapid.Float64Range(-6, 9).Draw(t, "width")), left, chartWidth - edge}
		free(t, across(s))

		names := rapid.SliceOfN(rapid.SampledFrom([]string{"1", "12", "50", "mean"}), 1, 101).Draw(t, "names")
		s = Span{0.5, float64(len(names)) + 0.5, left, chartWidth - edge}
		all := named(s, names)
		free(t, all)
		require.Equal(t, names[len(names)-1], all[0].text, "the last one is always told")
	})
}

func TestSpans(t *testing.T) {
	s := widened([]float64{2, 4}, 0.5, 100, 0)
	assert.Equal(t, Span{1, 5, 100, 0}, s)
	assert.InDelta(t, 50, s.At(3), 1e-12)
	for _, same := range [][]float64{{7, 7}, {0}, {76.3, 76.30000000000001}} {
		one := widened(same, 0.1, 0, 10)
		assert.InDelta(t, 5, one.At(same[0]), 1e-9, "%v", same)
		assert.GreaterOrEqual(t, len(ticks(one, 4)), 2)
	}
	assert.Equal(t, 5.0, Span{1, 1, 0, 10}.At(1), "nothing is divided by zero")
	assert.True(t, widened(nil, 0, 0, 1).Hi > 0)
}

// eachChart visits the charts of every link that was ever shared, and the log's.
func eachChart(t *testing.T, check func(t *testing.T, c *report.Chart)) {
	t.Helper()
	data, err := os.ReadFile("../../calc/testdata/links.txt")
	require.NoError(t, err)
	n := 0
	visit := func(name string, c report.Chart) {
		n++
		t.Run(name+"/"+c.ID, func(t *testing.T) { check(t, &c) })
	}
	for line := range strings.Lines(string(data)) {
		words := strings.Fields(line)
		if page, ok := calc.PageOf(words[0]); ok {
			for _, part := range calc.Load(page, words[1]).Report().Parts {
				for _, b := range part.Blocks {
					if c, ok := b.(report.Chart); ok {
						visit(page.Slug, c)
					}
				}
			}
		}
	}
	book := logbook.NewBook(logbook.Example()...)
	for _, trend := range logbook.Trends(book.Of("Heron", "feed")) {
		visit("log", trend.Chart)
	}
	require.Greater(t, n, 20)
}

func TestChartsHoldAllTheyShow(t *testing.T) {
	eachChart(t, func(t *testing.T, c *report.Chart) {
		p := plotOf(c)
		inside := func(x, y float64) {
			t.Helper()
			require.True(t, p.x.Lo <= x && x <= p.x.Hi && p.y.Lo <= y && y <= p.y.Hi, "%v, %v is outside %v, %v", x, y, p.x, p.y)
		}
		require.NotEmpty(t, p.along)
		require.NotEmpty(t, p.across)
		require.Less(t, p.x.From, chartWidth/2.0, "the numbers leave room for the picture")
		for _, point := range c.Points {
			inside(point.X, point.Y)
			inside(point.X, point.Lo)
			inside(point.X, point.Hi)
		}
		for _, l := range c.Curves {
			for _, at := range l.At {
				inside(at.X, at.Y)
			}
		}
		for _, b := range c.Bands {
			inside(p.x.Lo, b.Lo)
			inside(p.x.Lo, b.Hi)
		}
	})
}

// The picture holds one mark for each point and one line for each curve, and
// its legend names each sort once.
func TestPicturesHoldEachPoint(t *testing.T) {
	eachChart(t, func(t *testing.T, c *report.Chart) {
		markup := app.HTMLString(Chart(c, nil))
		picture, rest, found := strings.Cut(markup, `class="legend"`)
		require.True(t, found)
		assert.Equal(t, len(c.Points), strings.Count(picture, `class="mark"`))
		assert.Equal(t, len(c.Points), strings.Count(picture, `class="point `))
		assert.Equal(t, len(c.Curves), strings.Count(picture, `class="curve `))
		assert.Equal(t, len(c.Bands), strings.Count(picture, `class="band"`))
		kinds := map[report.PointKind]bool{}
		for _, p := range c.Points {
			kinds[p.Kind] = true
		}
		legend, _, _ := strings.Cut(rest, "</ul>")
		assert.Equal(t, len(kinds)+len(c.Curves)+len(c.Bands), strings.Count(legend, "<li"))
		assert.NotContains(t, markup, "NaN")
	})
}
