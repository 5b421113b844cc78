package pages

import (
	"net/http"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// A host may send a policy of its own with all of its pages. Where that forbids WebAssembly,
// the program is not fetched again, and nobody is told to look for damage.
func TestPolicyOfTheHost(t *testing.T) {
	browser.Alongside(t)
	policy := "default-src 'self'"
	fetched := 0
	s := browser.NewSite(t)
	s.Intercept(func(w http.ResponseWriter, r *http.Request) bool {
		w.Header().Set("Content-Security-Policy", policy)
		if isProgram(r.URL.Path) {
			fetched++
		}
		return false
	})
	p := s.NewPage(t)
	p.Allow("") // the browser's own words about it
	p.Load("/measure/")
	said := p.WaitFailed()
	assert.Contains(t, said, "The server forbids the calculator to run")
	assert.Contains(t, said, "'wasm-unsafe-eval'")
	assert.Contains(t, said, "You can still read the page.")
	assert.NotContains(t, said, "connection")
	assert.NotContains(t, said, "damaged")
	assert.LessOrEqual(t, fetched, 1)

	policy = "default-src 'self' 'wasm-unsafe-eval'"
	p = s.NewPage(t)
	p.Allow("") // the script in the page, which it has as a file too
	p.Open("/measure/#" + heron)
	assert.Contains(t, p.Text(".answer"), "564.3", "what HOSTING.md says is enough")
}

// A stack that is full is no RuntimeError, but the program has stopped all the same.
func TestFullStackIsSaid(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Allow("call stack")
	p.Open("/measure/#" + heron)
	fault := func(stack string) {
		browser.Eval[bool](p, `(dispatchEvent(new ErrorEvent("error", { error: Object.assign(new RangeError("Maximum call stack size exceeded"), { stack: "`+stack+`" }) })), true)`)
	}
	fault("at someExtension (page.js:1:1)")
	assert.Equal(t, "ready", browser.Eval[string](p, `document.documentElement.dataset.app`), "not of the program")
	fault("at wasm://wasm/00c0ffee:wasm-function[12]:0x1234")
	assert.Contains(t, p.WaitFailed(), "The calculator crashed.")
}

// paste is a paste of a text so many characters long into a field; it says how long the page
// was busy with it, in ms, and whether the browser was let do it.
func paste(p *browser.Page, id string, length int) (milliseconds float64) {
	return browser.Eval[float64](p, `(async () => {
		const field = document.getElementById("`+id+`"), text = "1".repeat(`+strconv.Itoa(length)+`);
		field.focus();
		const began = performance.now(), data = new DataTransfer();
		data.setData("text/plain", text);
		const goes = field.dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true })) &&
			field.dispatchEvent(new InputEvent("beforeinput", { data: text, inputType: "insertFromPaste", bubbles: true, cancelable: true }));
		if (goes) {
			field.value = text;
			field.dispatchEvent(new InputEvent("input", { bubbles: true }));
		}
		await new Promise((r) => setTimeout(r, 1500));
		return performance.now() - began - 1500;
	})()`)
}

// A whole file pasted into a field is refused before the page has anything to do with it.
func TestPasteOfAWholeFile(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/#" + heron)
	for _, id := range []string{"f-steps", "f-rest-2"} {
		was := browser.Eval[string](p, `document.getElementById("`+id+`").value`)
		assert.Less(t, paste(p, id, 5_000_000), 1000., id)
		assert.Equal(t, was, browser.Eval[string](p, `document.getElementById("`+id+`").value`), "nothing was lost")
		assert.Contains(t, p.Text("#said"), "5000000 characters, too long for a field")
	}
	assert.Contains(t, p.Text(".answer"), "564.3")
	// What anybody may want to put in goes in.
	paste(p, "f-steps", 40_000)
	assert.True(t, strings.HasPrefix(p.Field("steps"), "111"))
}

// Keys come one after the other, and then the process of the page ends: what was typed up to
// a second before is there.
func TestTabEndedWhileTyping(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/#" + heron)
	p.Focus("rest", 1)
	tab := p.Chromium("a way to end the process of a page")
	browser.Eval[bool](p, `(() => {
		const field = document.getElementById("f-rest-2");
		let n = 0;
		window.typing = setInterval(() => {
			field.value = String(30 + n++ / 100);
			field.dispatchEvent(new InputEvent("input", { bubbles: true }));
		}, 100);
		return true;
	})()`)
	p.Wait(`Number(document.getElementById("f-rest-2").value) > 30.2`)
	crash(tab)
	p.ReloadAtOnce()
	p.WaitReady()
	assert.Greater(t, browser.Eval[float64](p, `Number(document.getElementById("f-rest-2").value)`), 30.)
}
