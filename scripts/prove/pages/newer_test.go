package pages

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

const newerLine = `document.getElementById("newer").textContent`

// bring has a site give out another version, and waits until the worker has taken it.
func bring(p *browser.Page, s *browser.Site, version string) {
	p.T().Helper()
	s.Replace(release(p.T(), browser.Dist(p.T()), version))
	browser.Eval[bool](p, update)
	p.Wait(`caches.keys().then((names) => names.some((n) => n.endsWith("` + version + `")))`)
	p.Wait(`navigator.serviceWorker.getRegistration().then((r) => !r.installing && !r.waiting && r.active.state === "activated")`)
}

// offerNewer shows a sheet that is offered another version.
func offerNewer(p *browser.Page, s *browser.Site) {
	p.T().Helper()
	p.Open("/measure/#" + heron)
	p.WaitOffline()
	p.Reload()
	bring(p, s, "aaaaaaaaaaaa")
	p.Wait(newerLine)
}

// versionOf is that of the page that shows.
func versionOf(p *browser.Page) string {
	p.T().Helper()
	return browser.Eval[string](p, `document.getElementById("load").dataset.version`)
}

func TestNewerVersionIsOffered(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#" + heron)
	p.WaitOffline()
	p.Settle()
	assert.Empty(t, browser.Eval[string](p, newerLine), "nothing is said on a first visit")

	p.Reload()
	q := p.Beside()
	q.Open("/log/")
	p.FillNth("rest", 1, "31.7")
	p.Wait(`location.hash.includes("31.7")`)
	const place = `[document.activeElement.getBoundingClientRect().top, scrollY, document.activeElement.name, document.activeElement.selectionStart]`
	before := browser.Eval[[]any](p, place)
	browser.Eval[bool](p, `(window.sameDocument = true)`)
	bring(p, s, "aaaaaaaaaaaa")
	for _, tab := range []*browser.Page{p, q} {
		tab.Wait(newerLine + ` === "A newer version is ready.ReloadLater"`)
	}
	assert.Equal(t, "status", browser.Eval[string](p, `document.getElementById("newer").getAttribute("role")`))
	assert.Equal(t, before, browser.Eval[[]any](p, place), "place, focus, caret")
	p.Type("5")
	assert.True(t, browser.Eval[bool](p, `window.sameDocument === true`))
	browser.Eval[bool](p, `(document.querySelector("#newer button").click(), true)`)
	p.Wait(`!window.sameDocument`)
	p.WaitReady()
	assert.Equal(t, "aaaaaaaaaaaa", versionOf(p))
	assert.Equal(t, "31.75", browser.Eval[string](p, `document.getElementsByName("rest")[1].value`), "the last key too")
	assert.Empty(t, browser.Eval[string](p, newerLine))

	press(q, "#newer button:last-child")
	assert.Empty(t, browser.Eval[string](q, newerLine))
	bring(p, s, "bbbbbbbbbbbb")
	q.Wait(newerLine)
	s.Stop() // before its folder goes
}

// A worker may be there before the program is.
func TestNewerVersionDuringStart(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Before(`WebAssembly.compileStreaming = new Proxy(WebAssembly.compileStreaming, { async apply(of, on, rest) {
		while (sessionStorage.getItem("hold")) await new Promise((r) => setTimeout(r, 20));
		return Reflect.apply(of, on, rest);
	} })`)
	p.Open("/measure/")
	p.WaitOffline()
	browser.Eval[bool](p, `(sessionStorage.setItem("hold", "yes"), true)`)
	p.Load("/measure/")
	p.Wait(`typeof Go === "function"`)
	bring(p, s, "aaaaaaaaaaaa")
	assert.Empty(t, browser.Eval[string](p, newerLine))
	browser.Eval[bool](p, `(sessionStorage.removeItem("hold"), true)`)
	p.WaitReady()
	p.Wait(newerLine)
	s.Stop()
}

// The line lies over nothing that is typed into, and not over the answer's bar.
func TestNewerVersionCoversNothing(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	offerNewer(p, s)
	const covers = `(() => {
		const box = document.querySelector("#newer").getBoundingClientRect();
		return (of) => { const b = of.getBoundingClientRect(); return box.top < b.bottom - 1 && box.bottom > b.top + 1; };
	})()`
	p.Viewport(browser.Width, 560) // on which the answer is below
	browser.Eval[bool](p, `(scrollTo(0, 0), true)`)
	p.Settle()
	assert.True(t, browser.Eval[bool](p, `document.querySelector("#newer").getBoundingClientRect().bottom <= innerHeight`), "it is in view")
	p.Wait(`getComputedStyle(document.querySelector(".bar")).visibility === "visible"`)
	assert.False(t, browser.Eval[bool](p, covers+`(document.querySelector(".bar"))`), "the bar")
	p.Unfold()
	for _, width := range []int64{320, 360, 1280} {
		p.Viewport(width, browser.Height)
		assert.True(t, browser.Eval[bool](p, `[...document.querySelectorAll("#newer, #newer *")].every((e) => e.getBoundingClientRect().right <= document.documentElement.clientWidth)`), "it fits into %d px", width)
		p.Click("#f-steps")
		if !browser.Eval[bool](p, `document.hasFocus()`) {
			t.Logf("not tried in %s at %d px: WebDriver does not give its window the focus", browser.Name(), width)
			continue
		}
		covered := browser.Eval[[]string](p, `(() => {
			const covered = [];
			for (const f of document.querySelectorAll("form.sheet input[type=text]")) {
				if (!f.checkVisibility()) continue;
				f.focus({ preventScroll: true });
				f.scrollIntoView({ block: "end", behavior: "instant" });
				if (`+covers+`(f)) covered.push(f.id);
			}
			return covered;
		})()`)
		assert.Empty(t, covered, "at %d px", width)
	}
	s.Stop()
}

// TestPicturesOfTheNewerVersion is part of TestPictures for a line that seldom shows.
func TestPicturesOfTheNewerVersion(t *testing.T) {
	browser.Alongside(t)
	dir := os.Getenv("PICTURES")
	if dir == "" {
		t.Skip("PICTURES names no folder for them")
	}
	s := browser.NewSite(t)
	p := s.NewPage(t)
	offerNewer(p, s)
	for name, dark := range map[string]bool{"light": false, "dark": true} {
		p.Viewport(browser.Width, browser.Height)
		p.Screenshot(filepath.Join(dir, "newer-"+name+".png"), dark, false)
		p.Viewport(1280, 900)
		p.Screenshot(filepath.Join(dir, "newer-desk-"+name+".png"), dark, false)
	}
	p.Viewport(browser.Width, browser.Height)
	browser.Eval[bool](p, `(scrollTo(0, document.body.scrollHeight), true)`)
	p.Screenshot(filepath.Join(dir, "newer-end.png"), false, false)
}
