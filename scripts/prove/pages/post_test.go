package pages

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/scripts/prove/browser"
)

// The text for a post in each form: what is shown is what is copied.
func TestTextForAPost(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#v=1&steps=538.0&asked=80&mark=105&tool=caliper-0.05&rest=28.7,28.9,28.6")
	assert.False(t, browser.Eval[bool](p, `!!document.getElementById("post-text")`), "not made before it is asked for")
	p.Click("#post > summary")
	p.Wait(`document.getElementById("post-text")`)
	link := browser.Eval[string](p, `document.getElementById("copy-link").dataset.copy`)
	page, _ := calc.PageOf("measure")
	f := calc.Load(page, "v=1&steps=538.0&asked=80&mark=105&tool=caliper-0.05&rest=28.7,28.9,28.6")
	for kind := range form.PostKinds {
		id := "post-" + string(rune('0'+kind))
		browser.Eval[bool](p, `(document.getElementById("`+id+`").click(), true)`)
		want := form.Post(f, form.PostKind(kind), link)
		p.Settle()
		assert.Equal(t, want, browser.Eval[string](p, `document.getElementById("copy-post").dataset.copy`))
		assert.Equal(t, want, p.Text("#post-text"))
		p.Click("#copy-post")
		p.Wait(`document.getElementById("said").textContent === "Text copied."`)
		assert.Equal(t, want, p.Clipboard())
		p.NoSidewaysScrolling()
	}
	p.Fill("asked", "81")
	p.Wait(`document.getElementById("post-text").textContent.includes("81 mm")`)
}

// By the system's own sheet goes the text, not the bare link.
func TestTextForAPostIsShared(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Before(`navigator.share = (what) => { window.shared = what; return Promise.resolve(); }`)
	p.Open("/measure/#v=1&steps=538.0&asked=80&mark=105&rest=28.7")
	p.Click("#post > summary")
	p.Wait(`document.getElementById("share-post")`)
	p.Click("#share-post")
	p.Wait(`window.shared`)
	assert.Contains(t, browser.Eval[string](p, `window.shared.text`), "- Commanded length: 80 mm")
	assert.True(t, browser.Eval[bool](p, `window.shared.url === undefined`), "the text has it")
}
