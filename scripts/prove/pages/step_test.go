package pages

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// noteTexts keeps all text that ever comes onto the page, however short it stays.
const noteTexts = `(window.came = "", new MutationObserver((changes) => {
	for (const c of changes) for (const n of c.addedNodes) came += n.textContent;
}).observe(document.body, { subtree: true, childList: true }), true)`

// A page that another one leads to is built from its own address, not first from that of
// the one that is left.
func TestStepToAnotherPage(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/#" + heron)
	browser.Eval[bool](p, noteTexts)
	follow(p, "convert")
	came := browser.Eval[string](p, `came`)
	require.Contains(t, came, page(t, "convert").Question)
	assert.NotContains(t, came, "isn't a field of this page")

	// What is handed over is there at once.
	p.Open("/swap/#v=1&changed=micro&steps=80&micro=32&micronew=64")
	browser.Eval[bool](p, noteTexts)
	p.Unfold()
	p.Click(".links a")
	waitForSheet(p, "measure")
	assert.Equal(t, "160", p.Field("steps"))
	assert.NotContains(t, browser.Eval[string](p, `came`), "isn't a field of this page")
	p.Back()
	waitForSheet(p, "swap")
	assert.Equal(t, "80", p.Field("steps"))
	assert.NotContains(t, browser.Eval[string](p, `came`), "isn't a field of this page")
}

// A history that takes no more steps does not stop the program: the page is loaded. WebKit
// refuses after a hundred in some seconds.
func TestStepThatTheHistoryRefuses(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Before(`History.prototype.pushState = () => { throw new DOMException("too many", "SecurityError"); };`)
	p.Allow("/favicon.ico") // which Firefox asks for where a page is left at once
	p.Open("/measure/#" + heron)
	p.Fill("asked", "81")
	ready := func(slug string) {
		p.Wait(`document.documentElement.dataset.app === "ready" && location.pathname.includes("` + slug + `") && document.querySelector("form[data-sheet=` + slug + `]")`)
		p.Settle()
	}
	// By hand: a step that no person asked for would take the place of the one before.
	p.OpenMenu()
	p.Tap("nav a[href*=convert]")
	ready("convert")
	p.Fill("steps", "80")
	browser.Eval[bool](p, `(setTimeout(() => history.back()), true)`) // a page that is left at once does not answer
	ready("measure")
	assert.Equal(t, "81", p.Field("asked"), "nothing that was typed is lost")
}
