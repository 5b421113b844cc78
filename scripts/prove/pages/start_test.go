package pages

import (
	"net/http"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// holdProgram keeps the program back until release is called.
func holdProgram(t *testing.T, s *browser.Site) (release func()) {
	gate := make(chan struct{})
	var once sync.Once
	release = func() { once.Do(func() { close(gate) }) }
	t.Cleanup(release)
	s.Intercept(func(w http.ResponseWriter, r *http.Request) bool {
		if isProgram(r.URL.Path) {
			<-gate
		}
		return false
	})
	return release
}

// textFields are the names of a page's text fields that can be seen.
const textFields = `[...document.querySelectorAll("input[type=text][id][name]")].filter((f) => f.checkVisibility()).map((f) => f.name)`

func TestTypedBeforeStartIsKept(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	release := holdProgram(t, s)
	p := s.NewPage(t)
	p.Load("/measure/")
	p.Wait(`document.readyState === "complete" || document.querySelector("#boot")`)

	names := browser.Eval[[]string](p, textFields)
	require.NotEmpty(t, names)
	want := map[string]string{}
	for i, name := range names {
		if _, twice := want[name]; twice {
			continue
		}
		want[name] = strconv.Itoa(12+i) + ",5"
		p.Fill(name, want[name])
	}
	last := names[len(names)-1]
	p.Focus(last, 0)
	id := browser.Eval[string](p, `document.activeElement.id`)
	browser.Eval[bool](p, `(document.activeElement.setSelectionRange(1, 3), true)`)
	// Where the field stands on the screen: results that appear above it move the page beneath.
	const place = `document.activeElement.getBoundingClientRect().top`
	top := browser.Eval[float64](p, place)

	assert.Empty(t, browser.Eval[string](p, `document.documentElement.dataset.app || ""`), "the program was to be held back")
	release()
	p.WaitReady()
	for name, text := range want {
		assert.Equal(t, text, p.Field(name), "field %s", name)
	}
	assert.Equal(t, id, browser.Eval[string](p, `document.activeElement.id`), "focus")
	assert.Equal(t, []int{1, 3}, browser.Eval[[]int](p, `[document.activeElement.selectionStart, document.activeElement.selectionEnd]`), "selection")
	p.Settle()
	assert.InDelta(t, top, browser.Eval[float64](p, place), 2, "place")
}

func TestFoldsAndButtonsBeforeStart(t *testing.T) {
	browser.Alongside(t)
	const rows = `document.querySelectorAll("button[aria-label^='Remove run ']").length`
	s := browser.NewSite(t)
	release := holdProgram(t, s)
	p := s.NewPage(t)
	p.Load("/measure/")
	p.Wait(`typeof Go === "function" && document.querySelector("#add-run") && document.querySelector("#part-how")`)
	before := browser.Eval[int](p, rows)
	browser.Eval[bool](p, `(document.querySelector("#part-how > summary").click(),
		document.querySelector("#more > summary").click(),
		document.querySelector("button[aria-label='Microsteps: 32']").click(),
		document.querySelector("#add-run").click(), true)`)
	assert.Equal(t, 4, browser.Eval[int](p, `document.querySelectorAll("#part-how[open], #more[open], [data-waiting]").length`), "what was pressed shows that it waits")
	release()
	p.WaitReady()
	p.Settle()
	assert.True(t, browser.Eval[bool](p, `document.querySelector("#part-how").open && document.querySelector("#more").open`), "what was opened stays open")
	assert.Equal(t, "32", p.Field("micro"))
	assert.Equal(t, before+1, browser.Eval[int](p, rows))
}

func TestTogglesBeforeStartAreKept(t *testing.T) {
	browser.Alongside(t)
	const toggles = `[...document.querySelectorAll("input[type=checkbox][id], input[type=radio][id]")].filter((f) => f.checkVisibility())`
	s := browser.NewSite(t)
	release := holdProgram(t, s)
	p := s.NewPage(t)
	p.Load("/measure/")
	p.Wait(toggles)
	browser.Eval[int](p, `(() => { for (const f of `+toggles+`) if (!f.checked) f.click(); return 1; })()`)
	before := browser.Eval[map[string]bool](p, `Object.fromEntries(`+toggles+`.map((f) => [f.id, f.checked]))`)
	if len(before) == 0 {
		t.Skip("the page has neither check boxes nor radio buttons")
	}
	release()
	p.WaitReady()
	p.Settle()
	after := browser.Eval[map[string]bool](p, `Object.fromEntries([...document.querySelectorAll("input")].map((f) => [f.id, f.checked]))`)
	for id, checked := range before {
		if now, there := after[id]; there { // a choice may hide another field
			assert.Equal(t, checked, now, "#%s", id)
		}
	}
}

func TestKeysDuringStartAreKept(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	release := holdProgram(t, s)
	p := s.NewPage(t)
	p.Load("/measure/")
	p.Wait(textFields + `.length`)
	name := browser.Eval[[]string](p, textFields)[0]
	p.Focus(name, 0)
	var typed strings.Builder
	for i := range 60 {
		if i == 10 {
			release()
		}
		digit := strconv.Itoa(i % 10)
		typed.WriteString(digit)
		p.Type(digit)
		time.Sleep(10 * time.Millisecond)
	}
	p.WaitReady()
	p.Settle()
	assert.Equal(t, typed.String(), p.Field(name))
}

func TestStartWaitsForComposition(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	release := holdProgram(t, s)
	p := s.NewPage(t)
	p.Load("/measure/")
	p.Wait(textFields + `.length`)
	name := browser.Eval[[]string](p, textFields)[0]
	p.Focus(name, 0)
	// start.js must be listening.
	p.Wait(`window.goappGetenv`)
	chromium := p.Chromium("a word half composed")
	_, err := chromedp.Call(chromium, input.ImeSetComposition, input.ImeSetCompositionParams{Text: "12", SelectionStart: 2, SelectionEnd: 2})
	require.NoError(t, err)
	release()
	p.Wait(`striderule.start`) // Go runs, and waits
	time.Sleep(300 * time.Millisecond)
	assert.Empty(t, browser.Eval[string](p, `document.documentElement.dataset.app || ""`), "the page was replaced under a word half composed")
	_, err = chromedp.Call(chromium, input.InsertText, input.InsertTextParams{Text: "123"})
	require.NoError(t, err)
	p.WaitReady()
	assert.Equal(t, "123", p.Field(name))
}

func TestStatusLine(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	half := make(chan struct{})
	var once sync.Once
	release := func() { once.Do(func() { close(half) }) }
	t.Cleanup(release)
	s.Intercept(func(w http.ResponseWriter, r *http.Request) bool {
		if !isZipped(r.URL.Path) {
			return false
		}
		serveHalf(t, w, half)
		return true
	})
	p.Load("/measure/")
	p.Wait(`!document.getElementById("boot").hidden && document.getElementById("boot").textContent.includes("%")`)
	assert.Regexp(t, `^Loading the calculator… You can read and type in the meantime\. (49|50|51)%$`, p.Text("#boot"))
	release()
	p.WaitReady()
	p.Wait(`document.getElementById("boot").hidden`)
	assert.Empty(t, p.Text("#boot"))
	assert.True(t, browser.Eval[bool](p, `performance.getEntriesByName("app-mounted").length === 1`))
}

// Browsers let the timers of a page that nobody sees wait for a second each.
func TestHiddenPageIsBuiltAtOnce(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Before(`Object.defineProperty(document, "hidden", {get: () => true});
		window.timers = 0;
		const its = window.setTimeout;
		window.setTimeout = (...args) => { if (!document.documentElement.dataset.app && window.striderule && striderule.swap) timers++; return its(...args); }`)
	p.Open("/measure/")
	assert.LessOrEqual(t, browser.Eval[int](p, `timers`), 3)
}
