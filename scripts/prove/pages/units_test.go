package pages

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// chooseUnit chooses a unit beside a field as the browser does it.
func chooseUnit(p *browser.Page, id, symbol string) {
	browser.Eval[bool](p, `(() => { const f = document.getElementById("`+id+`-unit"); f.value = "`+symbol+`"; f.dispatchEvent(new Event("change", {bubbles: true})); return true; })()`)
	p.Settle()
}

// unitOf is the unit that stands beside a field.
func unitOf(p *browser.Page, id string) string {
	return browser.Eval[string](p, `document.getElementById("`+id+`-unit").value`)
}

// described is what a screen reader says of a field behind its name.
func described(p *browser.Page, id string) string {
	return browser.Eval[string](p, `(document.getElementById("`+id+`").getAttribute("aria-describedby") || "").split(" ").filter(Boolean).map((id) => { const e = document.getElementById(id); return e.value || e.textContent; }).join("; ")`)
}

// A number pad has no letters: the unit is chosen beside the number, and stays.
func TestUnitIsChosenBesideTheNumber(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/rate/#v=1&moves=feed&steps=564.3&back=45")
	p.Fill("limit", "150")
	p.Wait(`document.getElementById("f-limit-problem")`)
	assert.Contains(t, p.Text("#f-limit-problem"), "Did you mean 150 kHz?")
	assert.Contains(t, p.Text("#problems"), "Did you mean 150 kHz?")
	assert.Equal(t, "pulses/s", unitOf(p, "f-limit"))
	assert.Contains(t, described(p, "f-limit"), "pulses/s; Max. step rate: “150” was read as 150 pulses/s")
	for _, side := range []string{"width", "height"} {
		assert.GreaterOrEqual(t, browser.Eval[float64](p, `document.getElementById("f-limit-unit").getBoundingClientRect().`+side), 44., side)
	}
	assert.Equal(t, "Unit of Max. step rate", browser.Eval[string](p, `document.getElementById("f-limit-unit").getAttribute("aria-label")`))

	wide := browser.Eval[float64](p, `document.getElementById("f-limit").getBoundingClientRect().width`)
	chooseUnit(p, "f-limit", "kHz")
	assert.Equal(t, "150", p.Field("limit"))
	assert.Equal(t, "kHz", unitOf(p, "f-limit"))
	assert.InDelta(t, wide, browser.Eval[float64](p, `document.getElementById("f-limit").getBoundingClientRect().width`), .5, "nothing moves")
	assert.Contains(t, p.Text(".answer"), "OK: 16.9% of your controller's limit")
	p.Wait(`location.hash.endsWith("&limit=150%20kHz")`)
	assert.Contains(t, described(p, "f-limit"), "kHz")

	// Cleared and typed anew, it still is what stands beside it.
	p.Fill("limit", "")
	assert.Equal(t, "kHz", unitOf(p, "f-limit"))
	p.Fill("limit", "40")
	p.Wait(`location.hash.endsWith("&limit=40%20kHz")`)
	p.Reload()
	assert.Equal(t, "40", p.Field("limit"))
	assert.Equal(t, "kHz", unitOf(p, "f-limit"))

	// A unit that is typed is chosen with that.
	p.Fill("limit", "40000 pulses/s")
	assert.Equal(t, "pulses/s", unitOf(p, "f-limit"))
	p.Wait(`location.hash.endsWith("&limit=40000%20pulses/s")`)
}

// Before the program is there, or where it cannot start, a link's unit stands beside its number.
func TestUnitOfALinkBeforeTheStart(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	release := holdProgram(t, s)
	p := s.NewPage(t)
	p.Allow("offline use is off")
	p.Load("/rate/#v=1&steps=80&work=3000%20mm/min&fast=200&limit=40kHz")
	p.Wait(`document.getElementById("f-limit").value === "40"`)
	assert.Equal(t, "kHz", unitOf(p, "f-limit"))
	assert.Equal(t, "3000", browser.Eval[string](p, `document.getElementById("f-work-1").value`))
	assert.Equal(t, "mm/min", unitOf(p, "f-work-1"))
	assert.Equal(t, "200", browser.Eval[string](p, `document.getElementById("f-fast-1").value`))
	assert.Equal(t, "mm/s", unitOf(p, "f-fast-1"))
	p.FillNth("work", 0, "4500")
	chooseBefore := `(() => { const f = document.getElementById("f-fast-1-unit"); f.value = "mm/min"; f.dispatchEvent(new Event("change", {bubbles: true})); return true; })()`
	browser.Eval[bool](p, chooseBefore)
	release()
	p.WaitReady()
	p.Wait(`location.hash.includes("work=4500%20mm/min&fast=200%20mm/min&limit=40")`)
	assert.Equal(t, "mm/min", unitOf(p, "f-fast-1"))
}

// The question is answered by a tap.
func TestQuestionAboutAUnitIsAnswered(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#v=1&steps=538&trial=speeds&asked=80&mark=105&at=2&rest=28.7")
	assert.Contains(t, p.Text("#f-at-1-problem"), "100 mm take 50 minutes")
	p.Click(`.row button[aria-label="Feed speed: 2 mm/s"]`)
	p.Wait(`location.hash.includes("&at=2%20mm/s&")`)
	assert.Equal(t, "2", browser.Eval[string](p, `document.getElementById("f-at-1").value`))
	assert.Equal(t, "mm/s", unitOf(p, "f-at-1"))
	assert.False(t, browser.Eval[bool](p, `Boolean(document.getElementById("f-at-1-problem"))`))

	// What is chosen in one line holds for the lines that are still empty.
	chooseUnit(p, "f-at-2", "mm/s")
	p.FillNth("at", 1, "4")
	p.FillNth("at", 3, "8")
	assert.Equal(t, "mm/s", unitOf(p, "f-at-7"))
	p.Wait(`location.hash.includes("&at=2%20mm/s,4%20mm/s,4%20mm/s,8%20mm/s")`) // in each row of its line
	p.NoSidewaysScrolling()
	// Beside a unit there is room for a number, also in a row of two fields.
	assert.GreaterOrEqual(t, browser.Eval[float64](p, `(() => { const f = document.getElementById("f-at-1"), s = getComputedStyle(f); return f.clientWidth - parseFloat(s.paddingLeft) - parseFloat(s.paddingRight); })()`), 40.)
	for _, side := range []string{"width", "height"} {
		assert.GreaterOrEqual(t, browser.Eval[float64](p, `document.getElementById("f-at-1-unit").getBoundingClientRect().`+side), 44., side)
	}
}
