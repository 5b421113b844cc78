package pages

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// What stands in a form beside the sheet is in no address: the tab keeps it.
func TestHalfFilledFormsAreKept(t *testing.T) {
	browser.Alongside(t)
	away := func(p *browser.Page) {
		follow(p, "swap")
		p.Back()
	}
	for name, leave := range map[string]func(*browser.Page){"reload": (*browser.Page).Reload, "another page and back": away} {
		t.Run("save to log, "+name, func(t *testing.T) {
			p := browser.NewSite(t).NewPage(t)
			p.Open("/measure/#" + heron)
			p.Click("#keep")
			p.Wait(`document.activeElement.id === "keep-machine"`)
			p.Fill("keep-machine", `"Heron" & Co`)
			p.Fill("keep-axis", "Extruder")
			p.Fill("keep-note", "after the new extruder")
			browser.Eval[bool](p, `((f) => { f.value = "2026-11-20T09:15"; f.dispatchEvent(new Event("input", { bubbles: true })); return true; })(document.getElementById("keep-date"))`)
			p.FillNth("rest", 1, "31.7") // the sheet goes on meanwhile
			p.Settle()
			leave(p)
			p.Wait(`document.getElementById("keep-form")`)
			p.Settle()
			assert.Equal(t, `"Heron" & Co`, p.Field("keep-machine"))
			assert.Equal(t, "Extruder", p.Field("keep-axis"))
			assert.Equal(t, "after the new extruder", p.Field("keep-note"))
			assert.Equal(t, "2026-11-20T09:15", p.Field("keep-date"))
			assert.Equal(t, "31.7", browser.Eval[string](p, secondReading))

			p.Click("#keep-do")
			p.Wait(`document.getElementById("kept")?.textContent.startsWith("Saved.")`)
			leave(p)
			p.Wait(`document.getElementById("keep")`)
			p.Settle()
			assert.False(t, browser.Eval[bool](p, `document.getElementById("keep-form") !== null`), "done is done")
		})

		t.Run("a link that is pasted, "+name, func(t *testing.T) {
			p := browser.NewSite(t).NewPage(t)
			p.Open("/")
			p.Fill("pasted", "https://example.org/measure/#v=1&far")
			p.Settle()
			leave(p)
			p.Wait(`document.getElementById("pasted")?.value === "https://example.org/measure/#v=1&far"`)
			p.Click("#open")
			waitForSheet(p, "measure")
			p.Back()
			p.Wait(`document.getElementById("pasted")`)
			assert.Empty(t, p.Field("pasted"), "it is open")
		})
	}
}

// It belongs to its sheet.
func TestHalfFilledFormIsNotAnotherSheets(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/#" + heron)
	p.Click("#keep")
	p.Fill("keep-machine", "Heron")
	p.Settle()
	p.Open("/measure/#v=1&steps=538.0&asked=80&mark=106&rest=28.7,28.9,28.6")
	p.Click("#keep")
	p.Fill("keep-machine", "Plover")
	p.Settle()
	p.Open("/measure/#" + heron)
	p.Wait(`document.getElementById("keep-form")`)
	assert.Equal(t, "Heron", p.Field("keep-machine"))
	p.Click("#keep-cancel")
	p.Settle()
	p.Reload()
	assert.False(t, browser.Eval[bool](p, `document.getElementById("keep-form") !== null`), "cancelled")
	p.Open("/measure/#v=1&steps=538.0&asked=80&mark=106&rest=28.7,28.9,28.6")
	p.Wait(`document.getElementById("keep-form")`)
	assert.Equal(t, "Plover", p.Field("keep-machine"))
}

// What was open is open again, so that the place on the page is the same.
func TestOpenFoldsAfterAReload(t *testing.T) {
	browser.Alongside(t)
	for path, fold := range map[string]string{"/method/": "keys-parts", "/measure/#" + heron: "post"} {
		t.Run(fold, func(t *testing.T) {
			p := browser.NewSite(t).NewPage(t)
			p.Open(path)
			p.Settle()
			browser.Eval[bool](p, `(document.getElementById("`+fold+`").open = true)`)
			p.Settle()
			browser.Eval[bool](p, `(document.getElementById("`+fold+`").scrollIntoView(), true)`)
			p.Settle()
			p.Reload()
			p.Wait(`document.getElementById("` + fold + `").open`)
			p.Wait(`Math.abs(document.getElementById("` + fold + `").getBoundingClientRect().top) < 200`)
		})
	}
}

// What the person closed stays closed.
func TestClosedFoldsAfterAReload(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/")
	p.Click("#example")
	p.Settle()
	const states = `JSON.stringify([...document.querySelectorAll("details[id]")].map((d) => [d.id, d.open]))`
	closed := browser.Eval[string](p, states)
	p.Unfold()
	opened := browser.Eval[string](p, states)
	assert.NotEqual(t, closed, opened)
	p.Reload()
	p.Wait(states + ` === ` + strconv.Quote(opened))
	browser.Eval[bool](p, `(document.querySelectorAll("details[id]").forEach((d) => { d.open = false; }), true)`)
	p.Settle()
	assert.Equal(t, closed, browser.Eval[string](p, states))
	p.Reload()
	p.Settle()
	assert.Equal(t, closed, browser.Eval[string](p, states))
}

// What the tab keeps may be of another version, or broken.
func TestBrokenDrafts(t *testing.T) {
	browser.Alongside(t)
	for _, broken := range []string{`{`, `null`, `[]`, `{"was":1}`, `{"was":["LOCATION"],"now":{},"fields":7}`, `{"was":["LOCATION"],"now":"https://example.org/","fields":[{}]}`,
		`{"was":["LOCATION"],"now":"LOCATION","fields":[],"folds":3,"y":"far"}`, "\n\n\n\n\n"} {
		t.Run(broken, func(t *testing.T) {
			p := browser.NewSite(t).NewPage(t)
			p.Open("/measure/#" + heron)
			p.Before(`try {
				const broken = ` + strconv.Quote(broken) + `.replaceAll("LOCATION", location.href);
				for (const key of ["left:" + location.pathname, "draft:" + location.href]) sessionStorage.setItem("striderule:" + key, broken);
			} catch (e) { }`)
			p.Reload()
			p.Settle()
			assert.Contains(t, p.Address(), "/measure/")
			p.FillNth("rest", 1, "31.7")
			p.Wait(`location.hash.includes("31.7")`)
		})
	}
}
