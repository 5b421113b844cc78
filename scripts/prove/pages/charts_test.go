package pages

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/scripts/prove/browser"
)

// chartLinks are sheets that draw, besides the examples of all pages.
var chartLinks = map[string]string{
	"measure-speeds":  "/measure/#v=1&steps=415&trial=speeds&asked=100&read=fed&at=1mm/s,1mm/s,3mm/s,3mm/s,6mm/s,6mm/s&fed=99.42,99.38,99.03,98.98,98.42,98.38&tool=caliper-0.02",
	"measure-lengths": "/measure/#v=1&axis=travel&steps=80&trip=lengths&want=20,20,100,100,180,180&moved=20.13,20.11,99.81,99.79,179.49,179.47&tool=caliper-0.02",
	"measure-sides":   "/measure/#v=1&axis=travel&steps=80&trip=sides&target=10,10,100,100,190,190&up=10.04,10.05,100.04,100.03,190.05,190.04&down=9.96,9.95,99.96,99.97,189.96,189.95",
	"measure-again":   "/measure/#v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6,28.8,28.7,28.8,28.6,28.7,28.8,28.7,28.9,29.9&aside=,yes&tool=caliper-0.05&restagain=25.0,25.1,25.0,25.1",
	"plan-speeds":     "/plan/#v=1&trial=speeds&wanted=0.3&tool=caliper-0.05&filament=1.75&melt=10",
	"plan-travel":     "/plan/#v=1&axis=travel&trip=lengths&tool=rule&from=0&to=2000",
	"plan-cannot":     "/plan/#v=1&wanted=0.01&tool=rule",
	"rate-swap":       "/rate/#v=1&compare=swap&moves=feed&steps=415&angle=1.8&micro=16&work=3&back=450&accel=500&anglenew=0.9&micronew=32&limit=100kHz&hold=40Ncm",
	"rate-fast":       "/rate/#v=1&steps=80000&work=9000&limit=100MHz",
}

// eachChartPage goes to everything that draws at a width.
func eachChartPage(t *testing.T, width int64, open func(p *browser.Page, path string), check func(t *testing.T, p *browser.Page)) {
	links := map[string]string{}
	for name, path := range chartLinks {
		links[name] = path
	}
	for _, page := range calc.Pages {
		links[page.Slug] = "/" + page.Slug + "/#" + page.Example
	}
	p := browser.NewSite(t).NewPage(t)
	p.Viewport(width, 640)
	for name, path := range links {
		t.Run(name, func(t *testing.T) {
			p := p.In(t)
			open(p, path)
			check(t, p)
		})
	}
	t.Run("log", func(t *testing.T) {
		p := p.In(t)
		open(p, "/log/")
		press(p, "#example-show")
		require.True(t, has(p, "#chart-trend-1"))
		check(t, p)
	})
}

// On the narrowest phone no text of a chart is small, cut off, or over
// another, and no two lines look alike without their colours.
func TestChartsAreReadableAt320(t *testing.T) {
	browser.Alongside(t)
	eachChartPage(t, 320, (*browser.Page).Show, func(t *testing.T, p *browser.Page) {
		p.Unfold()
		assert.Empty(t, browser.Eval[[]string](p, `[...document.querySelectorAll("figure.chart")].flatMap((chart) => {
			const wrong = [], frame = chart.querySelector(".plot").getBoundingClientRect();
			const texts = [...chart.querySelectorAll("figcaption, .plot text, .scales span, .legend li")].filter((e) => e.checkVisibility({visibilityProperty: true}));
			const boxes = texts.map((e) => [e, e.getBoundingClientRect()]);
			for (const [e, b] of boxes) {
				if (parseFloat(getComputedStyle(e).fontSize) * (e.closest("svg") ? frame.width / 288 : 1) < 10.99) wrong.push("small: " + e.textContent);
				if (b.left < frame.left - 1 || b.right > frame.right + 1) wrong.push("cut off: " + e.textContent);
				if (e.matches(".tick, .ask-point") && (b.top < frame.top - 1 || b.bottom > frame.bottom + 1)) wrong.push("cut off: " + e.textContent);
			}
			for (const [e, a] of boxes) for (const [f, b] of boxes)
				if (e !== f && !e.contains(f) && !f.contains(e) && a.left < b.right && b.left < a.right && a.top < b.bottom - 3 && b.top < a.bottom - 3) wrong.push(e.textContent + " over " + f.textContent);
			const values = chart.querySelector(".values .scroll");
			if (values.scrollWidth > values.clientWidth) wrong.push("the values are wider than the screen");
			const strokes = [...chart.querySelectorAll(".plot .curve")].map((e) => getComputedStyle(e).strokeDasharray);
			if (new Set(strokes).size < strokes.length) wrong.push("told apart by colour alone: " + strokes);
			if (!texts.length) wrong.push("no text at all");
			return wrong;
		})`))
		p.NoSidewaysScrolling()
	})
}

// What a point says stands in a line that is kept free for it.
func TestPointsAreReadByTouch(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#" + heron)
	p.Click("#part-runs > summary")
	const shown = `[...document.querySelectorAll("#chart-runs .plot text")].filter((e) => e.matches(".says, .ask-point") && e.checkVisibility({visibilityProperty: true})).map((e) => e.textContent)`
	const height = `document.documentElement.scrollHeight`
	before := browser.Eval[int](p, height)
	assert.Equal(t, []string{"Tap a point for its value."}, browser.Eval[[]string](p, shown))
	p.Click("#chart-runs .mark:nth-of-type(2) .hit")
	assert.Equal(t, []string{"run 2: 76.1 mm"}, browser.Eval[[]string](p, shown))
	p.Click("#chart-runs .mark:nth-of-type(4) .hit")
	assert.Equal(t, []string{"mean: 76.267 mm (75.887 to 76.646)"}, browser.Eval[[]string](p, shown))
	assert.Equal(t, before, browser.Eval[int](p, height), "nothing moves")
}

// All of a chart is in its table, which the keyboard opens; both follow typing.
func TestChartValuesByKeyboard(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#" + heron)
	p.Focus("print", 0)
	for _, fold := range []string{"#part-runs", "#chart-runs .values"} {
		for range 60 {
			p.Press(kb.Tab)
			if browser.Eval[bool](p, `document.activeElement.matches("`+fold+` > summary")`) {
				break
			}
		}
		p.Press(kb.Enter)
	}
	p.Wait(`document.querySelector("#chart-runs table")`)
	rows := func() string { return browser.Eval[string](p, `document.querySelector("#chart-runs table").innerText`) }
	require.True(t, browser.Eval[bool](p, `document.querySelector("#chart-runs table").checkVisibility()`))
	assert.Contains(t, strings.Join(strings.Fields(rows()), " "), "run 2 76.1 run 3 76.4 mean 76.267 (75.887 to 76.646) acceptable 79.6 to 80.4")
	assert.Equal(t, 4, browser.Eval[int](p, `document.querySelectorAll("#chart-runs .mark").length`))
	// All at once: on the way there, other verdicts would bring other parts.
	p.Focus("rest", 2)
	browser.Eval[bool](p, `document.execCommand("insertText", false, "28,5")`)
	p.Settle()
	assert.Contains(t, rows(), "76.5")
	assert.Contains(t, p.Text("#chart-runs .mark:nth-of-type(3) .says"), "run 3: 76.5 mm")
	assert.Contains(t, browser.Eval[string](p, `document.querySelector("#chart-runs svg[role=img]").getAttribute("aria-label")`), "from 76.1 to 76.5 mm")
	require.True(t, browser.Eval[bool](p, `document.querySelector("#chart-runs .values").open`), "it stays open")
}

// TestChartPictures takes a picture of every chart, to be looked at: see
// TestPictures.
func TestChartPictures(t *testing.T) {
	browser.Alongside(t)
	dir := os.Getenv("PICTURES")
	if dir == "" {
		t.Skip("PICTURES names no folder for them")
	}
	for _, screen := range []struct {
		name  string
		width int64
		dark  bool
	}{{"320", 320, false}, {"360", 360, true}, {"desk", 1280, false}} {
		eachChartPage(t, screen.width, (*browser.Page).Open, func(t *testing.T, p *browser.Page) {
			p.Unfold()
			if !has(p, "figure.chart, .bars") {
				return
			}
			browser.Eval[bool](p, `(() => {
				const charts = [...document.querySelectorAll("figure.chart, .bars")];
				document.body.replaceChildren(...charts);
				document.body.style.padding = "1rem";
				return true;
			})()`)
			p.Screenshot(filepath.Join(dir, strings.ReplaceAll(t.Name(), "/", "-")+"-"+screen.name+".png"), screen.dark, true)
		})
	}
}
