package pages

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// addButton puts a copy button of its own on the page, beside those of the page.
func addButton(p *browser.Page, attributes string) {
	p.T().Helper()
	browser.Eval[bool](p, `(() => {
		document.getElementById("said")?.remove();
		document.body.insertAdjacentHTML("afterbegin", '<p id="said" role="status"></p><button type="button" id="probe" `+attributes+`>Probe</button>');
		scrollTo(0, 0);
		return true;
	})()`)
}

func TestCopyButton(t *testing.T) {
	browser.Alongside(t)
	for _, c := range []struct{ name, before, attributes, done, said string }{
		{"by the clipboard", "", `data-copy="564.3 steps" data-said="The value was copied."`, "copied", "The value was copied."},
		{"without a secure context", `Object.defineProperty(navigator, "clipboard", {value: undefined})`, `data-copy="564.3 steps"`, "copied", "Copied."},
		{"clipboard refused, selection allowed", `navigator.clipboard.writeText = () => Promise.reject(new Error("no"))`, `data-copy="564.3 steps"`, "copied", "Copied."},
		{"all refused", `navigator.clipboard.writeText = () => Promise.reject(new Error("no")); document.execCommand = () => false`, `data-copy="564.3 steps"`, "failed",
			"The browser blocked copying. Select the text and copy it by hand."},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := browser.NewSite(t)
			p := s.NewPage(t)
			p.Open("/method/")
			p.Copy("before")
			browser.Eval[bool](p, `(() => {`+c.before+`; return true; })()`)
			addButton(p, c.attributes)
			p.Click("#probe")
			p.Wait(`document.getElementById("probe").dataset.done`)
			assert.Equal(t, c.done, browser.Eval[string](p, `document.getElementById("probe").dataset.done`))
			p.Wait(`document.getElementById("said").textContent`)
			assert.Equal(t, c.said, p.Text("#said"))
			want := "564.3 steps"
			if c.done == "failed" {
				want = "before"
			}
			assert.Equal(t, want, p.Clipboard())
			assert.Equal(t, "probe", browser.Eval[string](p, `document.activeElement.id`), "focus")
			if c.name != "by the clipboard" {
				return // the two seconds are the same for all
			}
			p.Wait(`!("done" in document.getElementById("probe").dataset)`)
		})
	}
}

func TestShareButton(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Before(`navigator.share = (what) => { window.shared = what; return Promise.resolve(); }`)
	p.Open("/method/")
	assert.Equal(t, "yes", browser.Eval[string](p, `document.documentElement.dataset.canShare`))
	addButton(p, `data-share="https://example.org/measure/#v=1" data-title="My sheet"`)
	p.Click("#probe")
	p.Wait(`window.shared`)
	assert.Equal(t, map[string]string{"title": "My sheet", "url": "https://example.org/measure/#v=1"}, browser.Eval[map[string]string](p, `window.shared`))
}

func TestPrintButtonPrints(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Before(`window.print = () => {
		window.printed = (window.printed || 0) + 1;
		window.onPaper = [...document.querySelectorAll(".result > .parts > details:not(.guide)")].map((d) => d.open && d.childElementCount > 1);
	}`)
	p.Open("/plan/#v=1&tool=caliper-0.05")
	const closed = `[...document.querySelectorAll(".result > .parts > details")].every((d) => !d.open)`
	assert.True(t, browser.Eval[bool](p, closed))
	browser.Eval[bool](p, `(document.getElementById("print").click(), true)`)
	p.Wait(`window.printed`)
	parts := browser.Eval[[]bool](p, `onPaper`)
	assert.NotEmpty(t, parts)
	assert.NotContains(t, parts, false, "what is folded of the result is on paper")
	p.Wait(closed)

	// The button that is pressed here becomes that one when its form opens.
	p.Click("#keep")
	p.Settle()
	assert.Equal(t, 1, browser.Eval[int](p, `window.printed`), "keeping does not print")
}

// Whoever hands a sheet over right after a key hands over what the answer is about.
func TestLinkFollowsEachKey(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Before(`window.print = () => { window.printed = document.getElementById("part-runs").textContent; }`)
	p.Open("/measure/#" + heron)
	p.OpenFolds("#post, #part-runs")
	const key = `const f = document.getElementsByName("rest")[1]; f.value = "28.1"; f.dispatchEvent(new Event("input", { bubbles: true })); await new Promise((r) => setTimeout(r, 20));`
	texts := browser.Eval[[]string](p, `(async () => { `+key+` return [document.querySelector("[aria-busy=true]") ? "busy" : "", document.getElementById("copy-link").dataset.copy, document.getElementById("post-text").textContent]; })()`)
	assert.Equal(t, "busy", texts[0], "the rest has followed already: this shows nothing")
	assert.Contains(t, texts[1], "rest=28.7,28.1,28.6")
	assert.Contains(t, texts[2], "28.1")

	p.Settle()
	browser.Eval[bool](p, `(async () => { `+strings.ReplaceAll(key, "28.1", "27.9")+` document.getElementById("print").click(); return true; })()`)
	p.Wait(`window.printed`)
	assert.Contains(t, browser.Eval[string](p, `window.printed`), "27.9", "what is printed is of one sheet")
}
