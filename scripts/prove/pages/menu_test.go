package pages

import (
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

const (
	menuIsOpen = `document.getElementById("menu").open`
	menuShows  = `document.querySelector("#menu nav a").checkVisibility()`
)

// The menu is closed until it is opened, leads to every page, and is closed there.
func TestMenuLeadsOn(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/")
	for _, slug := range []string{"convert", "measure", "log", ""} {
		assert.False(t, browser.Eval[bool](p, menuIsOpen+" || "+menuShows), slug)
		p.Click("#menu > summary")
		assert.True(t, browser.Eval[bool](p, menuIsOpen+" && "+menuShows), slug)
		p.NoSidewaysScrolling()
		target := `#menu a[href$="/` + slug + `/"]`
		if slug == "" {
			target = "header .brand"
		}
		p.Click(target)
		p.Wait(`location.pathname.endsWith("` + browser.Mount + slug + `".replace(/\/*$/, "/"))`)
		p.Wait(`document.activeElement.id === "title"`)
	}
	assert.Equal(t, "Striderule", p.Text("h1"))

	// In the menu, the page that shows is told.
	p.Show("/measure/")
	assert.Equal(t, []string{"Calibrate"}, browser.Eval[[]string](p, `[...document.querySelectorAll("#menu [aria-current=page]")].map((a) => a.textContent)`))
	assert.Equal(t, "Calibrate", p.Text("h1"))
}

// It closes by Escape, which leaves the focus on it, and by a click beside it; before the program
// is there as well.
func TestMenuCloses(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	release := holdProgram(t, s)
	p := s.NewPage(t)
	p.Load("/measure/")
	p.Wait(`typeof Go === "function"`)
	for _, started := range []bool{false, true} {
		if started {
			release()
			p.WaitReady()
		}
		browser.Eval[bool](p, `(document.querySelector("#menu > summary").focus(), true)`)
		p.Press(kb.Enter)
		assert.True(t, browser.Eval[bool](p, menuIsOpen), "by the keyboard, started: %v", started)
		p.Press(kb.Tab)
		assert.True(t, browser.Eval[bool](p, `document.activeElement.matches("#menu nav a")`), "started: %v", started)
		p.Press(kb.Escape)
		assert.False(t, browser.Eval[bool](p, menuIsOpen), "Escape, started: %v", started)
		assert.True(t, browser.Eval[bool](p, `document.activeElement.matches("#menu > summary")`), "started: %v", started)

		p.OpenMenu()
		p.Click("h1")
		assert.False(t, browser.Eval[bool](p, menuIsOpen), "a click beside it, started: %v", started)
	}
}
