package pages

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// An extruder and an axis, typed in from an empty page.
func TestRateFromAnEmptyPage(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/rate/")
	assert.Empty(t, answerOf(p))
	assert.Contains(t, p.Text("#part-axis-1"), "Steps per mm")
	p.Fill("name", "Heron feed")
	browser.Eval[bool](p, `(() => { const f = document.getElementById("f-moves-1"); f.value = "feed"; f.dispatchEvent(new Event("change", {bubbles: true})); return true; })()`)
	p.Settle()
	p.Fill("steps", "564,3")
	p.Fill("angle", "1,8")
	p.Fill("micro", "1/16")
	p.Fill("back", "2700 mm/min")
	assert.InEpsilon(t, 25393.5, p.Value("out-most"), 1e-12)
	assert.False(t, browser.Eval[bool](p, `document.getElementById("part-corner").open`), "a rule of thumb is folded away")
	p.Fill("limit", "20 kHz")
	assert.Contains(t, p.Text(".answer"), "over the limit of 20000 pulses/s")
	assert.InEpsilon(t, 20000/564.3, p.Value("out-top-1"), 1e-12)
	p.Fill("limit", "40kHz")
	assert.Contains(t, p.Text(".answer"), "OK: 63.5% of your controller's limit")

	p.Click("#add-axis")
	p.FillNth("name", 1, "Plover X")
	assert.Equal(t, "1,8", browser.Eval[string](p, `document.getElementById("f-angle-2").value`), "carried over")
	p.FillNth("steps", 1, "88,888889")
	p.FillNth("work", 1, "50")
	p.Fill("fast", "200")
	assert.InEpsilon(t, 88.888889*200, p.Value("out-fast-2"), 1e-12)
	p.Wait(`location.hash === "#v=1&name=Heron%20feed,Plover%20X&moves=feed&steps=564.3,88.888889&angle=1.8,1.8&micro=1/16,1/16&work=,50&fast=,200&back=2700%20mm/min&limit=40kHz"`)
	assert.LessOrEqual(t, browser.Eval[int64](p, `document.documentElement.scrollWidth`), int64(browser.Width))

	p.Fill("supply", "24")
	p.Fill("inductance", "3,2")
	p.Fill("current", "1,5")
	assert.InEpsilon(t, 12.5, p.Value("out-corner-1"), 1e-12)
	assert.InEpsilon(t, 750., p.Value("out-rpm-2"), 1e-12)
}

func TestRateBeforeAndAfterFromTheSwap(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/swap/#v=1&changed=micro&steps=80&micro=16&micronew=32")
	p.Unfold()
	browser.Eval[bool](p, `(document.querySelector('.links a[href*="/rate/"]').click(), true)`)
	p.Wait(`document.querySelector("h1").textContent.startsWith("Step rate")`)
	assert.Equal(t, "160", p.Field("stepsnew"))
	p.Fill("fast", "200")
	assert.InEpsilon(t, 16000., p.Value("out-fast-1"), 1e-12)
	assert.InEpsilon(t, 32000., p.Value("out-new-fast-1"), 1e-12)
	assert.Contains(t, p.Text(".answer"), "after the swap")
}

func TestRateFromTheParts(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/parts/#v=1&angle=1.8&micro=16&pitch=2&teeth=20")
	p.Unfold()
	browser.Eval[bool](p, `(document.querySelector('.links a[href*="/rate/"]').click(), true)`)
	p.Wait(`document.querySelector("h1").textContent.startsWith("Step rate")`)
	assert.Equal(t, "80", p.Field("steps"))
	assert.Equal(t, "16", p.Field("micro"))
}
