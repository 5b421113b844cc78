package pages

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// A fold that was opened stays open, and no other opens, when the verdict
// changes what stands before it.
func TestFoldsStayAsLeft(t *testing.T) {
	browser.Alongside(t)
	const open = `[...document.querySelectorAll(".result details[open]")].map((d) => d.id)`
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6")
	order := browser.Eval[[]string](p, `[...document.querySelectorAll(".result .parts > *")].map((d) => d.id)`)
	p.Click("#part-why > summary")
	p.Click("#part-runs > summary")
	p.Click("#values-runs > summary")
	assert.ElementsMatch(t, []string{"part-why", "part-runs", "values-runs"}, browser.Eval[[]string](p, open))
	p.Fill("asked", "76.3")
	assert.NotEqual(t, order, browser.Eval[[]string](p, `[...document.querySelectorAll(".result .parts > *")].map((d) => d.id)`), "nothing moved: this shows nothing")
	assert.ElementsMatch(t, []string{"part-why", "part-runs", "values-runs"}, browser.Eval[[]string](p, open))
	p.Click("#part-why > summary")
	p.Fill("asked", "80")
	assert.ElementsMatch(t, []string{"part-runs", "values-runs"}, browser.Eval[[]string](p, open))
}

// The fold of the optional sections says what it holds; it does not close under the fingers of
// whoever empties the only field in use.
func TestFoldDoesNotCloseWhileTyping(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#v=1&steps=538.0&line=M92%20E%7Bvalue%7D")
	const isOpen = `document.getElementById("more").open`
	assert.False(t, browser.Eval[bool](p, isOpen))
	assert.Contains(t, p.Text("#more > summary"), "M92 E{value}")
	p.Click("#more > summary")
	p.Fill("line", "")
	assert.True(t, browser.Eval[bool](p, isOpen))
	assert.Equal(t, "f-line", browser.Eval[string](p, active))
	assert.NotContains(t, p.Text("#more > summary"), "M92")
}

// What is said after a copy is about that page.
func TestWhatIsSaidGoesWithThePage(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#" + heron)
	p.Click("#copy-link")
	p.Wait(`document.getElementById("said").textContent`)
	p.Click(`nav a[href$="/convert/"]`)
	p.Wait(`location.pathname.endsWith("/convert/")`)
	p.Settle()
	assert.Empty(t, p.Text("#said"))
}
