package pages

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"striderule/calc"
	"striderule/scripts/prove/browser"
)

const barShows = `getComputedStyle(document.querySelector(".bar")).visibility === "visible"`

// The bar stays while the answer is elsewhere, and never covers a field in use.
func TestBarMakesRoom(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Viewport(browser.Width, 560) // on which the answer is further below
	p.Open(chartLinks["measure-speeds"])
	p.Settle()
	assert.True(t, browser.Eval[bool](p, barShows), "at the top of the page")
	browser.Eval[bool](p, `(document.querySelector(".answer").scrollIntoView(), true)`)
	p.Settle()
	assert.False(t, browser.Eval[bool](p, barShows), "with the answer in view")
	browser.Eval[bool](p, `(scrollTo(0, 0), true)`)
	p.Settle()
	assert.True(t, browser.Eval[bool](p, barShows), "back at the top")
	// As with a finger: the page does not scroll by itself then.
	browser.Eval[bool](p, `(() => { const f = document.getElementById("f-fed-1"); scrollBy(0, f.getBoundingClientRect().bottom - innerHeight + 10); f.focus({preventScroll: true}); return true; })()`)
	p.Settle()
	assert.False(t, browser.Eval[bool](p, barShows), "over the field in use")
	browser.Eval[bool](p, `(document.getElementById("f-fed-1").scrollIntoView({block: "center"}), true)`)
	p.Settle()
	assert.True(t, browser.Eval[bool](p, barShows), "with the field in the middle")
	browser.Eval[bool](p, `(Object.defineProperty(visualViewport, "height", {value: 300}), visualViewport.dispatchEvent(new Event("resize")), true)`)
	p.Settle()
	assert.False(t, browser.Eval[bool](p, barShows), "with the keyboard there")
}

// A figure is marked when it changes by an edit, not when the page opens, and
// not for those who want nothing to move.
func TestWhatChangedIsMarked(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	const marks = `document.querySelector(".headline data").getAnimations({subtree: true}).length`
	for _, motion := range []string{"no-preference", "reduce"} {
		p := s.NewPage(t)
		p.Prefers("prefers-reduced-motion", motion)
		p.Open("/measure/#" + heron)
		p.Settle()
		assert.Zero(t, browser.Eval[int](p, marks), motion)
		typed := browser.Eval[int](p, `(async () => { // in the page, whose pause is not the test's
			const field = document.getElementById("f-asked");
			field.value = "81";
			field.dispatchEvent(new Event("input", { bubbles: true }));
			await new Promise((r) => requestAnimationFrame(r));
			return `+marks+`;
		})()`)
		assert.Zero(t, typed, "while somebody types: %s", motion)
		if motion != "reduce" {
			p.Wait(marks + " > 0")
			continue
		}
		time.Sleep(600 * time.Millisecond)
		assert.Zero(t, browser.Eval[int](p, marks), motion)
	}
}

// On the narrowest phone all of a table shows, and it is still a table.
func TestTablesAt320(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Viewport(320, browser.Height)
	cards := 0
	paths := []string{"/method/"}
	for _, page := range calc.Pages {
		paths = append(paths, "/"+page.Slug+"/#"+page.Example)
	}
	for _, path := range paths {
		p.Show(path)
		p.Unfold()
		assert.Empty(t, browser.Eval[[]string](p, `[...document.querySelectorAll(".scroll")].filter((e) => e.scrollWidth > e.clientWidth).map((e) => e.textContent.slice(0, 60))`), path)
		assert.Empty(t, browser.Eval[[]string](p, `[...document.querySelectorAll(".cards-if-narrow td")].filter((e) => !e.dataset.label || e.getAttribute("role") !== "cell" || !e.closest("[role=row]").closest("[role=table]")).map((e) => e.outerHTML.slice(0, 90))`), path)
		cards += browser.Eval[int](p, `document.querySelectorAll(".cards-if-narrow").length`)
	}
	assert.Greater(t, cards, 10)
}
