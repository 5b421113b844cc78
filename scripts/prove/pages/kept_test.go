package pages

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// The method page says what the program would make of it: the program leaves it in its
// place, and builds it where another page showed before.
func TestMethodPageStaysAsItCame(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Before(`document.addEventListener("DOMContentLoaded", () => { window.came = document.getElementById("formulas"); })`)
	p.Open("/method/")
	const stayed = `came === document.getElementById("formulas") && came.isConnected`
	assert.True(t, browser.Eval[bool](p, stayed))
	// Files of examples have figures of 17 digits, whose last may be another where the
	// pages were built; and blanks between elements are none to see.
	const sizes = `[...document.querySelectorAll("pre")].map((e) => e.offsetHeight)`
	const words = `[...document.querySelectorAll("main :not(pre, pre *)")].flatMap((e) => [...e.childNodes].filter((n) => n.nodeType === Node.TEXT_NODE).map((n) => n.nodeValue.replace(/\s+/g, ""))).join("")`
	text, samples := browser.Eval[string](p, words), browser.Eval[[]float64](p, sizes)
	assert.Greater(t, len(text), 10000)
	assert.Len(t, samples, 2)
	p.Click(`nav a[href$="/swap/"]`)
	p.Wait(`document.querySelector("form[data-sheet=swap]")`)
	assert.False(t, has(p, "#formulas"))
	browser.Eval[bool](p, `(history.back(), true)`)
	p.Wait(`document.getElementById("formulas") && document.documentElement.dataset.app === "ready"`)
	assert.True(t, browser.Eval[bool](p, stayed), "it comes from the host again: the program does not have its texts")
	assert.Equal(t, text, browser.Eval[string](p, words), "and it says the same")
	assert.Equal(t, samples, browser.Eval[[]float64](p, sizes), "samples without blank lines around")
}
