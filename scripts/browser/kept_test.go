package browser

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The method page says what the program would make of it: the program leaves it in its
// place, and builds it where another page showed before.
func TestMethodPageStaysAsItCame(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	p := s.NewPage(t)
	p.Before(`document.addEventListener("DOMContentLoaded", () => { window.came = document.getElementById("formulas"); })`)
	p.Open("/method/")
	const stayed = `came === document.getElementById("formulas") && came.isConnected`
	assert.True(t, Eval[bool](p, stayed))
	// Files of examples have figures of 17 digits, whose last may be another where the
	// pages were built; and blanks between elements are none to see.
	const sizes = `[...document.querySelectorAll("pre")].map((e) => e.offsetHeight)`
	const words = `[...document.querySelectorAll("main :not(pre, pre *)")].flatMap((e) => [...e.childNodes].filter((n) => n.nodeType === Node.TEXT_NODE).map((n) => n.nodeValue.replace(/\s+/g, ""))).join("")`
	text, samples := Eval[string](p, words), Eval[[]float64](p, sizes)
	assert.Greater(t, len(text), 10000)
	assert.Len(t, samples, 2)
	p.Click(`nav a[href$="/swap/"]`)
	p.Wait(`document.querySelector("form[data-sheet=swap]")`)
	assert.False(t, has(p, "#formulas"))
	p.Back()
	p.Wait(`document.getElementById("formulas")`)
	assert.False(t, Eval[bool](p, stayed), "the program has made it")
	assert.Equal(t, text, Eval[string](p, words), "and it says the same")
	assert.Equal(t, samples, Eval[[]float64](p, sizes), "samples without blank lines around")
}
