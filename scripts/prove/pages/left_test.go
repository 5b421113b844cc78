package pages

import (
	"context"
	"net/http"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// justTyped is a page on which 31.7 was typed over the second reading this moment.
func justTyped(t *testing.T, before ...string) *browser.Page {
	t.Helper()
	p := browser.NewSite(t).NewPage(t)
	for _, script := range before {
		p.Before(script)
	}
	p.Open("/measure/#" + heron)
	p.Focus("rest", 1)
	p.Type("31.7")
	return p
}

// The address follows when typing pauses. Who leaves before loses nothing.
func TestLeavingRightAfterAKey(t *testing.T) {
	browser.Alongside(t)
	awayAndBack := func(p *browser.Page) {
		p.Allow("/favicon.ico") // which Firefox asks for where a page is left at once
		p.Depart("about:blank")
		time.Sleep(time.Second) // nobody is back sooner
		// Where the browser has kept the page itself, it is there as it was.
		browser.Eval[bool](p, `(setTimeout(() => history.back()), true)`)
		// WebKit's driver at times never answers what is asked in between.
		time.Sleep(time.Second)
		p.Wait(`location.href.startsWith("http") && document.documentElement.dataset.app`)
	}
	for _, c := range []struct {
		name   string
		leave  func(p *browser.Page)
		before []string
	}{
		{name: "reload", leave: func(p *browser.Page) { p.Reload() }},
		{name: "a reload by script", leave: func(p *browser.Page) {
			p.ReloadByScript()
			p.WaitReady()
		}},
		{name: "away and back", leave: awayAndBack},
		// A page that no worker serves is ended with less ado.
		{name: "away and back without workers", leave: awayAndBack, before: []string{refusals["there are no workers"]}},
		{name: "another page and back", leave: func(p *browser.Page) {
			browser.Eval[bool](p, `(document.querySelector("nav a[href*=swap]").click(), true)`)
			p.Wait(`location.pathname.includes("swap")`)
			p.Back()
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := justTyped(t, c.before...)
			c.leave(p)
			p.Wait(`document.getElementsByName("rest")[1].value === "31.7"`)
			assert.Equal(t, "28.7", p.Field("rest"), "the others")
			p.Wait(`location.hash.includes("rest=28.7,31.7,28.6")`)

			// It was for that once.
			p.Open("/measure/#" + heron)
			assert.Contains(t, p.Address(), "rest=28.7,28.9,28.6")
		})
	}
}

// A browser that has begun to leave no longer hears of an address that the page writes
// meanwhile: it will come back to the one before, which the tab must know.
func TestLeavingJustAfterTheAddressWasWritten(t *testing.T) {
	browser.Alongside(t)
	p := justTyped(t)
	noted := browser.Eval[string](p, `new Promise((r) => addEventListener("popstate", () => {
		dispatchEvent(new Event("pagehide"));
		r(sessionStorage.getItem("striderule:left:" + location.pathname));
	}))`)
	assert.Contains(t, noted, `rest=28.7,28.9,28.6`, "where the browser may come back to")
	assert.Contains(t, noted, `rest=28.7,31.7,28.6`, "what is to be there then")
}

// WebKit empties the fields of a page that it had laid aside, some time after it shows.
func TestFieldsThatAreEmptiedWhenAPageShowsAgain(t *testing.T) {
	browser.Alongside(t)
	p := justTyped(t)
	p.Settle()
	emptied := browser.Eval[string](p, `(dispatchEvent(new Event("pagehide")),
		dispatchEvent(Object.assign(new Event("pageshow"), { persisted: true })),
		new Promise((r) => setTimeout(() => {
			for (const f of document.getElementsByName("rest")) f.value = "";
			r(`+secondReading+`);
		}, 200)))`)
	assert.Empty(t, emptied)
	p.Wait(secondReading + ` === "31.7"`)
}

// hide has the page believe that it is no longer in view.
const hide = `(Object.defineProperty(document, "hidden", { get: () => true, configurable: true }), document.dispatchEvent(new Event("visibilitychange")), true)`

// Phones end what is not in view, and load it again by its address.
func TestAddressOfAHiddenTab(t *testing.T) {
	browser.Alongside(t)
	p := justTyped(t)
	assert.Contains(t, browser.Eval[string](p, "("+hide+", location.href)"), "rest=28.7,31.7,28.6", "at once")
}

// crash ends the process of a page.
func crash(tab context.Context) {
	dying, cancel := context.WithTimeout(tab, 2*time.Second)
	defer cancel()
	_, _ = chromedp.Call(dying, cdppage.Crash, cdp.Empty{}) // nobody is left to answer
}

func TestTabEndedBySystem(t *testing.T) {
	browser.Alongside(t)
	p := justTyped(t)
	browser.Eval[bool](p, hide)

	tab := p.Chromium("a way to end the process of a page")
	crash(tab)
	// Not Reload, which asks the page first.
	p.ReloadAtOnce()
	p.WaitReady()
	assert.Equal(t, []string{"28.7", "31.7", "28.6"}, browser.Eval[[]string](p, `[...document.getElementsByName("rest")].map((f) => f.value).slice(0, 3)`))
}

// Without a program no address follows what is typed.
func TestReloadBeforeStart(t *testing.T) {
	browser.Alongside(t)
	for name, path := range map[string]string{"an empty page": "/measure/", "a link": "/measure/#" + heron} {
		t.Run(name, func(t *testing.T) {
			s := browser.NewSite(t)
			release := holdProgram(t, s)
			p := s.NewPage(t)
			p.Allow("The connection failed") // as WebKit has it when the page is left
			p.Allow("offline use is off")
			p.Load(path)
			p.Wait(`typeof Go === "function"`)
			p.FillNth("rest", 1, "31.7")
			browser.Eval[bool](p, `(document.querySelector("[name=aside]").click(), true)`)
			ticked := browser.Eval[bool](p, `document.querySelector("[name=aside]").checked`)
			p.ReloadAtOnce()
			p.Wait(`document.getElementsByName("rest")[1].value === "31.7"`)
			release()
			p.WaitReady()
			p.Settle()
			assert.Equal(t, "31.7", browser.Eval[string](p, `document.getElementsByName("rest")[1].value`))
			assert.Equal(t, ticked, browser.Eval[bool](p, `document.querySelector("[name=aside]").checked`))
			if name == "a link" {
				assert.Equal(t, "28.7", p.Field("rest"))
			}
			p.Wait(`location.hash.includes("31.7")`)
		})
	}
}

// Another page of the site in between keeps it too.
func TestAnotherPageBeforeStartAndBack(t *testing.T) {
	browser.Alongside(t)
	if browser.Name() == "webkit" {
		t.Skip("skipped in webkit: it lays the page aside all the same, and its program stays cut off until it is loaded again")
	}
	s := browser.NewSite(t)
	release := holdProgram(t, s)
	p := s.NewPage(t)
	p.Allow("The connection failed")
	p.Allow("offline use is off")
	p.Before(`addEventListener("unload", () => {})`) // browsers lay no such page aside
	p.Load("/measure/#" + heron)
	p.Wait(`typeof Go === "function"`)
	p.FillNth("rest", 2, "31.7")
	p.Depart(s.URL + "convert/")
	p.Wait(`document.querySelector("form[data-sheet=convert]")`)
	time.Sleep(time.Second)
	browser.Eval[bool](p, `(setTimeout(() => history.back()), true)`)
	p.Wait(`location.pathname.includes("measure") && document.getElementsByName("rest")[2]?.value === "31.7"`)
	release()
	p.Wait(`document.documentElement.dataset.app === "ready"`)
	p.Wait(`location.hash.includes("rest=28.7,28.9,31.7")`)
}

// The page says itself to load it again when the connection failed.
func TestReloadAfterFailure(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	s.Intercept(answer(isProgram, func(http.ResponseWriter, *http.Request) { panic(http.ErrAbortHandler) }))
	p := s.NewPage(t)
	p.Allow("") // the browser's own words about it
	p.Load("/measure/")
	require.Contains(t, p.WaitFailed(), "Check your connection and reload")
	p.FillNth("rest", 1, "31.7")
	s.Intercept(nil)
	p.Reload()
	assert.Equal(t, "31.7", browser.Eval[string](p, `document.getElementsByName("rest")[1].value`))
	p.Wait(`location.hash.includes("31.7")`)
}
