package pages

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// Where things begin on a phone, in px from the page's top. A field begins with its label, which
// stands once above rows of one column.
const (
	topOf     = `(e) => Math.round(e.getBoundingClientRect().top + scrollY)`
	firstTop  = `(` + topOf + `)(document.querySelector("form.lead .needs label, form.lead .rows-head"))`
	rowsTop   = `(` + topOf + `)([...document.querySelectorAll("form.lead .rows label, form.lead .rows-head")].find((e) => e.checkVisibility() && e.getBoundingClientRect().height > 4))`
	answerTop = `(` + topOf + `)(document.querySelector(".answer"))`
	wholePage = `document.documentElement.scrollHeight`
)

// Who comes with a tape in hand finds the fields and the answer on the first screen, or right
// below it.
func TestHeightsOnAPhone(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Viewport(360, 740)
	holds := func(path, what, script string, most int) {
		t.Helper()
		px := browser.Eval[int](p, script)
		t.Logf("%-62s %-22s %5d px, at most %d", path, what, px, most)
		assert.LessOrEqual(t, px, most, "%s: %s", path, what)
	}

	const empty = "/measure/"
	p.Show(empty)
	holds(empty, "first needed field", firstTop, 330)
	holds(empty, "first reading", rowsTop, 500)
	holds(empty, "page", wholePage, 1000)
	for _, c := range []struct {
		path   string
		answer int
	}{
		{"/measure/#" + page(t, "measure").Example, 660},
		{"/convert/#v=1&steps=538&angle=1.8&micro=16&ratio=4.5", 660},
		{"/swap/#v=1&changed=angle&moves=feed&steps=564.3&angle=1.8&anglenew=0.9", 660},
		{"/flow/#" + page(t, "flow").Example, 840},
		{"/parts/#v=1&angle=1.8&micro=16&pitch=2&teeth=18", 900},
		{"/plan/#" + page(t, "plan").Example, 900},
		{"/rate/#" + page(t, "rate").Example, 900},
	} {
		p.Viewport(360, 740)
		p.Show(c.path)
		name := c.path[:min(len(c.path), 60)]
		holds(name, "answer", answerTop, c.answer)
		if c.path[:9] == empty {
			holds(name, "page", wholePage, 1800)
		}
		p.Viewport(320, 740)
		p.NoSidewaysScrolling()
	}
}

// Nothing but the fields and what leads to them stands above the answer: no hint between the
// needed fields pushes it down.
func TestNoHintsBetweenTheNeededFields(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	for _, path := range filledPaths()[3:] {
		p.Show(path)
		assert.Empty(t, browser.Eval[[]string](p, `[...document.querySelectorAll("form.lead .needs .hint, form.lead .row .hint")].filter((e) => e.checkVisibility()).map((e) => e.textContent)`), path)
		assert.LessOrEqual(t, browser.Eval[int](p, `[...document.querySelectorAll(".hint-line > *")].filter((e) => e.checkVisibility({visibilityProperty: true})).length`), 1, fmt.Sprint(path))
	}
}
