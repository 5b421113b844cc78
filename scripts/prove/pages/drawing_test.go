package pages

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/calc"
	"striderule/scripts/prove/browser"
)

// clash lists what is written on a page's drawings outside of them or over each
// other, as the browser's own font has it.
const clash = `[...document.querySelectorAll(".drawing svg")].flatMap((svg) => {
	const written = [...svg.querySelectorAll("text")], paper = svg.viewBox.baseVal;
	const boxes = written.map((t) => t.getBBox());
	return boxes.flatMap((a, i) => [
		...(a.x < -.5 || a.y < -.5 || a.x + a.width > paper.width + .5 || a.y + a.height > paper.height + .5 ? ["outside: " + written[i].textContent] : []),
		...boxes.flatMap((b, j) => j > i && a.x < b.x + b.width && b.x < a.x + a.width && a.y + 2 < b.y + b.height - 2 && b.y + 2 < a.y + a.height - 2
			? [written[i].textContent + " / " + written[j].textContent] : []),
	]);
}).join("; ")`

// The drawing follows what is typed, and says nothing that would be wrong.
func TestDrawingFollowsTyping(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/")
	letters := func() string {
		return browser.Eval[string](p, `[...document.querySelectorAll("#drawing-guide text")].map((e) => e.textContent).sort().join("")`)
	}
	assert.Equal(t, "ABC", letters())
	p.Fill("steps", "538,0")
	p.Fill("asked", "80")
	p.Fill("mark", "105")
	assert.Contains(t, p.Text("#drawing-guide"), "105 mm")
	assert.Contains(t, p.Text("#drawing-guide"), "80 mm")
	assert.NotContains(t, p.Text("#drawing-guide"), "fed")
	p.FillNth("rest", 0, "28,7")
	assert.Contains(t, p.Text("#drawing-guide"), "fed 76.3 mm")
	line := `document.querySelector("#drawing-guide path.motion").getAttribute("d")`
	before := browser.Eval[string](p, line)
	p.FillNth("rest", 1, "32,7")
	assert.Contains(t, p.Text("#drawing-guide"), "fed 74.3 mm")
	assert.NotEqual(t, before, browser.Eval[string](p, line), "drawn anew")
	p.FillNth("rest", 1, "3Z")
	assert.NotContains(t, p.Text("#drawing-guide"), "fed", "never stale")
	p.FillNth("rest", 1, "")
	assert.Equal(t, before, browser.Eval[string](p, line))
}

// It is an image whose name says all of its figures.
func TestDrawingIsAnImageWithAName(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#" + heron)
	assert.Equal(t, "img", browser.Eval[string](p, `document.querySelector("#drawing-guide svg").getAttribute("role")`))
	name := browser.Eval[string](p, `document.querySelector("#drawing-guide svg").getAttribute("aria-label")`)
	assert.Contains(t, name, "B: from the extruder's inlet to the mark, before (105 mm).")
	for _, figure := range []string{"80 mm", "105 mm", "28.733 mm", "76.267 mm"} {
		assert.Contains(t, p.Text("#drawing-guide"), figure)
		assert.Contains(t, name, figure)
	}
}

// Every page's drawings can be read on the narrowest phone.
func TestDrawingsFitThePhone(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	paths := []string{
		"/plan/#v=1&axis=travel&trip=sides&tool=caliper-0.05&from=-1500.123&to=1500.456",
		"/parts/#v=1&out=rack,roller&angle=0.123456,1.8&micro=4096,16&gears=pairs,ratio&driving=12x1x20x10000x12x9999&driven=54x10000x40x1x54x10000&ratio=,99999.9&roller=,999.987&module=49.98765&pinion=1000",
		"/flow/#v=1&scale=verified&width=0.45&layer=0.2&walls=20&thick=8.2,8.3",
		"/flow/#v=1&scale=verified&width=0.45&layer=0.2&thick=0.49",
		"/swap/#v=1&changed=micro&steps=80&micro=1&micronew=4096",
	}
	for _, page := range calc.Pages {
		paths = append(paths, "/"+page.Slug+"/#"+page.Example)
	}
	p := s.NewPage(t)
	p.Viewport(320, 640)
	for _, path := range paths {
		p.Show(path)
		p.Unfold()
		assert.LessOrEqual(t, browser.Eval[int64](p, `document.documentElement.scrollWidth`), int64(320), path)
		assert.Empty(t, browser.Eval[string](p, clash), path)
		assert.True(t, browser.Eval[bool](p, `[...document.querySelectorAll(".drawing text")].every((t) => t.getBoundingClientRect().height >= 10.9)`), "%s: too small to read", path)
	}
}
