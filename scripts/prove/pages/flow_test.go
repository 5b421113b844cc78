package pages

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// A wall, typed in from an empty page on a phone; the answer waits for the calibration.
func TestFlowFromAnEmptyPage(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/flow/")
	assert.Contains(t, p.Text("#part-scale"), "Flow would hide an extruder error")
	p.Fill("flow", "105 %")
	p.Fill("width", "0,45")
	p.Fill("layer", "0,2")
	p.Fill("walls", "4")
	p.FillNth("thick", 0, "1,74")
	p.FillNth("thick", 1, "1.76 mm")
	p.FillNth("thick", 2, "1,74")
	for i, text := range []string{"1,76", "1,74", "1,76"} {
		p.Click("#add-reading")
		p.FillNth("thick", 3+i, text)
	}
	p.Choose("tool", "caliper-0.02")
	assert.Empty(t, answerOf(p), "not before the extruder is said to be calibrated")
	assert.False(t, browser.Eval[bool](p, `Boolean(document.getElementById("part-readings"))`))

	p.Choose("scale", "verified")
	assert.InEpsilon(t, 1.001555184962402, p.Value("out-flow"), 1e-12)
	assert.InEpsilon(t, 100.1555184962402, p.Value("out-percent"), 1e-12)
	assert.Contains(t, p.Text("#verdict"), "Change it")
	assert.Contains(t, p.Text("#verdict"), "2.6 to 7.1% too much plastic")
	assert.Contains(t, p.Text("#part-next"), "burn")
	assert.Equal(t, "1,74", p.Field("thick"), "what was typed stays")
	p.Wait(`location.hash === "#v=1&scale=verified&flow=105%20%25&width=0.45&layer=0.2&walls=4&thick=1.74,1.76%20mm,1.74,1.76,1.74,1.76&tool=caliper-0.02"`)
	p.Wait(`document.getElementById("live").textContent.startsWith("Change it. There's 2.6")`)
	assert.LessOrEqual(t, browser.Eval[int64](p, `document.documentElement.scrollWidth`), int64(browser.Width))

	// A wrong entry withholds the answer, and is named.
	p.Fill("width", "0,15")
	assert.Empty(t, answerOf(p))
	assert.Contains(t, p.Text(".problems"), "is less than the layer height")
	p.Fill("width", "0,45")
	assert.InEpsilon(t, 1.001555184962402, p.Value("out-flow"), 1e-12)
}

func TestFlowCalibrationComesFirst(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/flow/")
	p.Click("#part-scale .ask a")
	assert.Equal(t, "f-scale", browser.Eval[string](p, `document.activeElement.id`), "the way to the question")
	p.Choose("tool", "caliper-0.02")
	p.Click("#part-scale .links a")
	p.Wait(`document.querySelector("h1").textContent.startsWith("Calibrate")`)
	p.Wait(`document.querySelector('[name="tool"]').value === "caliper-0.02"`)
}

func TestFlowReadingLeftOut(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/flow/#v=1&scale=verified&width=0.45&layer=0.2&walls=4&thick=1.66,1.68,1.66,1.68,1.66,1.90&tool=caliper-0.02&limits=0.01")
	assert.Contains(t, p.Text(".answer"), "Reading 6 is an outlier")
	p.Focus("thick", 5) // whose tools show then
	p.Click("#f-aside-6")
	assert.InEpsilon(t, 1.668, p.Value("out-mean"), 1e-12)
	assert.Contains(t, p.Text("#verdict"), "Leave it")
	p.Wait(`location.hash.includes("aside=,,,,,yes")`)
	p.Fill("walls", "1")
	p.FillNth("thick", 5, "0,02")
	p.Click("#f-aside-6")
	assert.Contains(t, p.Text(".problems"), "Thickness in reading 6: “0.02 mm” is too thin. Even with next to no plastic this wall would be 0.0429 mm thick")
	assert.Empty(t, answerOf(p))
}

func TestFlowByMassAndDiameter(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/flow/#v=1&scale=verified")
	p.Choose("by", "mass")
	p.Fill("used", "4,12 m")
	p.Fill("set", "1,75")
	p.Fill("density", "1,24")
	assert.Contains(t, p.Text("#part-missing"), "the new flow")
	assert.Equal(t, []string{"Weight"}, browser.Eval[[]string](p, `[...document.querySelectorAll("#part-missing .ask a")].map((a) => a.textContent)`), "all else is given")
	for i, text := range []string{"12,61", "12,58", "12,64 g"} {
		p.FillNth("weighed", i, text)
	}
	p.Fill("balance", "0,01")
	assert.InEpsilon(t, 0.974472961543811, p.Value("out-flow"), 1e-12)
	assert.Contains(t, p.Text("#verdict"), "Measure more")
	p.Fill("densitylimits", "0,5")
	assert.NotContains(t, p.Text(".answer"), "Labels are often only good")

	p.Choose("by", "diameter")
	assert.Equal(t, "1,75", p.Field("set"), "it is asked for in both ways")
	for i, text := range []string{"1,70", "1,69", "1,71"} {
		p.FillNth("across", i, text)
	}
	p.Choose("tool", "caliper-0.01")
	assert.Contains(t, p.Text(".answer"), "is accurate to the usual ± 0.03 mm")
	p.Fill("limits", "0,005")
	assert.InEpsilon(t, (1.75/1.70)*(1.75/1.70), p.Value("out-flow"), 1e-12)
	assert.Contains(t, p.Text("#verdict"), "Change it")
	assert.InEpsilon(t, 1.70, p.Value("out-diameter"), 1e-12)
	assert.Contains(t, p.Text("#part-next"), "Never do both")
	p.Wait(`!location.hash.includes("weighed")`)
}
