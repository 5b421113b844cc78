package browser

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A wall, typed in from an empty page on a phone; the answer waits for the scale.
func TestFlowFromAnEmptyPage(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	p := s.NewPage(t)
	p.Open("/flow/")
	assert.Contains(t, p.Text("#part-scale"), "would be hidden by the flow factor")
	p.Fill("flow", "105 %")
	p.Fill("width", "0,45")
	p.Fill("layer", "0,2")
	p.Fill("walls", "4")
	p.FillNth("thick", 0, "1,75")
	p.FillNth("thick", 1, "1.75 mm")
	p.FillNth("thick", 2, "1,70")
	for i, text := range []string{"1,80", "1,75", "1,75"} {
		p.Click("#add-reading")
		p.FillNth("thick", 3+i, text)
	}
	p.Choose("tool", "caliper-0.05")
	assert.Empty(t, answerOf(p), "not before the scale is said to be verified")
	assert.False(t, Eval[bool](p, `Boolean(document.getElementById("part-readings"))`))

	p.Choose("scale", "verified")
	assert.InEpsilon(t, 1.001555184962402, p.Value("out-flow"), 1e-12)
	assert.InEpsilon(t, 100.1555184962402, p.Value("out-percent"), 1e-12)
	assert.Contains(t, p.Text("#verdict"), "Change it")
	assert.Contains(t, p.Text("#verdict"), "2.4 to 7.3 % too much plastic")
	assert.Contains(t, p.Text("#part-next"), "burn skin")
	assert.Equal(t, "1,75", p.Field("thick"), "what was typed stays")
	p.Wait(`location.hash === "#v=1&scale=verified&flow=105%20%25&width=0.45&layer=0.2&walls=4&thick=1.75,1.75%20mm,1.70,1.80,1.75,1.75&tool=caliper-0.05"`)
	p.Wait(`document.getElementById("live").textContent.startsWith("Change it. The wall holds")`)
	assert.LessOrEqual(t, Eval[int64](p, `document.documentElement.scrollWidth`), int64(Width))

	// A wrong entry withholds the answer, and is named.
	p.Fill("width", "0,15")
	assert.Empty(t, answerOf(p))
	assert.Contains(t, p.Text(".problems"), "is less than the layer height")
	p.Fill("width", "0,45")
	assert.InEpsilon(t, 1.001555184962402, p.Value("out-flow"), 1e-12)
}

func TestFlowScaleComesFirst(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	p := s.NewPage(t)
	p.Open("/flow/")
	p.Click("#part-scale .ask a")
	assert.Equal(t, "f-scale", Eval[string](p, `document.activeElement.id`), "the way to the question")
	p.Choose("tool", "caliper-0.02")
	p.Click("#part-scale .links a")
	p.Wait(`document.querySelector("h1").textContent.startsWith("Correct")`)
	p.Wait(`document.querySelector('[name="tool"]').value === "caliper-0.02"`)
}

func TestFlowReadingSetAside(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	p := s.NewPage(t)
	p.Open("/flow/#v=1&scale=verified&width=0.45&layer=0.2&walls=4&thick=1.66,1.68,1.66,1.68,1.66,1.90&tool=caliper-0.02")
	assert.Contains(t, p.Text(".answer"), "Reading 6 stands out")
	p.Click("#f-aside-6")
	assert.InEpsilon(t, 1.668, p.Value("out-mean"), 1e-12)
	assert.Contains(t, p.Text("#verdict"), "Leave it")
	p.Wait(`location.hash.includes("aside=,,,,,yes")`)
	p.Fill("walls", "1")
	p.FillNth("thick", 5, "0,02")
	p.Click("#f-aside-6")
	assert.Contains(t, p.Text(".problems"), "Thickness in reading 6: “0.02 mm” is not more than 0.0429 mm")
	assert.Empty(t, answerOf(p))
}

func TestFlowByMassAndDiameter(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	p := s.NewPage(t)
	p.Open("/flow/#v=1&scale=verified")
	p.Choose("by", "mass")
	p.Fill("used", "4,12 m")
	p.Fill("set", "1,75")
	p.Fill("density", "1,24")
	assert.Contains(t, p.Text("#part-missing"), "For the flow factor, give Mass.")
	for i, text := range []string{"12,61", "12,58", "12,64 g"} {
		p.FillNth("weighed", i, text)
	}
	p.Fill("balance", "0,01")
	assert.InEpsilon(t, 0.974472961543811, p.Value("out-flow"), 1e-12)
	assert.Contains(t, p.Text("#verdict"), "Measure more")
	p.Fill("densitylimits", "0,5")
	assert.NotContains(t, p.Text(".answer"), "often only good")

	p.Choose("by", "diameter")
	assert.Equal(t, "1,75", p.Field("set"), "it is asked for in both ways")
	for i, text := range []string{"1,70", "1,69", "1,71"} {
		p.FillNth("across", i, text)
	}
	p.Choose("tool", "caliper-0.01")
	assert.InEpsilon(t, (1.75/1.70)*(1.75/1.70), p.Value("out-flow"), 1e-12)
	assert.Contains(t, p.Text("#verdict"), "Change it")
	assert.InEpsilon(t, 1.70, p.Value("out-diameter"), 1e-12)
	assert.Contains(t, p.Text("#part-next"), "Never both")
	p.Wait(`!location.hash.includes("weighed")`)
}
