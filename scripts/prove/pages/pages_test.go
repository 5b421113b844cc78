package pages

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

func TestEveryPageByDeepLink(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	for _, path := range browser.Pages(t, browser.Dist(t)) {
		t.Run(path, func(t *testing.T) {
			p := p.In(t)
			p.Open(path)
			require.NotEmpty(t, p.Text("h1"))
			p.Reload()
			assert.Equal(t, s.URL+strings.TrimPrefix(path, "/"), strings.SplitN(p.Address(), "#", 2)[0])
		})
	}
}

// What is typed before the start is put back by id: the live page must have the fields of the
// page as generated, and no others. What is folded is made when it is opened.
func TestLivePageHasTheFieldsOfTheGenerated(t *testing.T) {
	browser.Alongside(t)
	const fields = `[...doc.querySelectorAll("input, textarea, select")].map((f) => [f.tagName, f.id, f.name, f.type, f.value, f.checked === true].join(" "))`
	p := browser.NewSite(t).NewPage(t)
	for _, path := range browser.Pages(t, browser.Dist(t)) {
		t.Run(path, func(t *testing.T) {
			p := p.In(t)
			p.Open(path)
			folded := browser.Eval[[]string](p, `(() => { const doc = document; return `+fields+`; })()`)
			p.Unfold()
			live := browser.Eval[[]string](p, `(() => { const doc = document; return `+fields+`; })()`)
			generated := browser.Eval[[]string](p, `fetch(location.pathname).then((r) => r.text()).then((text) => {
				const doc = new DOMParser().parseFromString(text, "text/html");
				return `+fields+`;
			})`)
			assert.Equal(t, generated, live)
			assert.Subset(t, generated, folded)
			ids := browser.Eval[[]string](p, `[...document.querySelectorAll("[id]")].map((e) => e.id)`)
			seen := map[string]bool{}
			for _, id := range ids {
				assert.False(t, seen[id], "two elements with the id %q", id)
				seen[id] = true
			}
		})
	}
}

func TestNavigationStaysInTheFolder(t *testing.T) {
	browser.Alongside(t)
	for _, mount := range []string{"/", browser.Mount, "/my tools/Größe 1/", "/100 % #1?/"} {
		t.Run(mount, func(t *testing.T) {
			s := browser.NewSiteAt(t, browser.Dist(t), mount)
			p := s.NewPage(t)
			p.Open("/measure/")
			first := p.Text("h1")
			browser.Eval[bool](p, `(window.sameDocument = true)`)
			targets := browser.Eval[[]string](p, `[...document.querySelectorAll("nav a[href]")].map((a) => a.href)`)
			require.NotEmpty(t, targets)
			for _, target := range targets {
				require.True(t, strings.HasPrefix(target, s.URL), "%s is outside %s", target, s.URL)
				browser.Eval[bool](p, `([...document.querySelectorAll("nav a[href]")].find((a) => a.href === "`+target+`").click(), true)`)
				p.Wait(`location.href.split("#")[0] === "` + target + `"`)
				if strings.HasSuffix(target, "/method/") { // whose texts are not in the program
					p.Wait(`!window.sameDocument && document.documentElement.dataset.app === "ready"`)
					browser.Eval[bool](p, `(window.sameDocument = true)`)
				}
				p.Settle()
				assert.NotEmpty(t, p.Text("h1"), target)
				assert.True(t, browser.Eval[bool](p, `window.sameDocument === true`), "%s was loaded as a document", target)
			}
			p.Open("/measure/#v=1&steps=538")
			assert.Equal(t, first, p.Text("h1"))
			p.Fill("steps", "269")
			p.Wait(`location.hash === "#v=1&steps=269"`)
			assert.Equal(t, s.URL+"measure/#v=1&steps=269", p.Address(), "what is typed changes no folder")
			link := browser.Eval[string](p, `document.getElementById("copy-link").dataset.copy`)
			assert.True(t, strings.HasPrefix(link, s.URL+"measure/#v=1&"), "the link to copy is %s", link)
			p.Reload()
			assert.Equal(t, "269", p.Field("steps"))
			for _, path := range s.Asked() {
				assert.NotContains(t, path, "//")
			}
		})
	}
}

func TestSkipLinkMovesTheFocusAndKeepsTheAddress(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	for _, started := range []bool{false, true} {
		p := s.NewPage(t)
		open := holdProgram(t, s)
		if started {
			open()
		}
		p.Load("/measure/#v=1")
		if started {
			p.WaitReady()
		} else {
			// The script has run: that it has come is not enough.
			p.Wait(`document.querySelector("a.skip") && window.striderule && striderule.announce`)
		}
		address := p.Address()
		browser.Eval[bool](p, `(document.querySelector("a.skip").focus(), true)`)
		p.Press("\r")
		assert.Equal(t, "main", browser.Eval[string](p, `document.activeElement.id`), "started: %v", started)
		assert.Equal(t, address, p.Address(), "started: %v", started)
		open()
	}
}

func TestEnterKeepsThePage(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/")
	name := browser.Eval[[]string](p, textFields)[0]
	p.Fill(name, "80,5")
	browser.Eval[bool](p, `(window.sameDocument = true)`)
	p.Press("\r")
	assert.Equal(t, "80,5", p.Field(name))
	assert.True(t, browser.Eval[bool](p, `window.sameDocument === true`))
}
