package pages

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// A machine set up from its parts, typed in from an empty page.
func TestPartsFromAnEmptyPage(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/parts/")
	assert.Empty(t, answerOf(p))
	assert.Contains(t, p.Text("#part-axis-1"), "To get steps per mm, fill in Belt pitch, Pulley teeth, Step angle and Microsteps.")
	p.Fill("name", "Heron feed")
	p.Choose("out", "roller")
	p.Fill("angle", "1,8")
	p.Fill("micro", "1/16")
	p.Choose("gears", "pairs")
	p.Fill("driving", "12")
	p.Fill("driven", "54 x 2")
	assert.Contains(t, p.Text(".problems"), "different numbers of stages, 1 on the motor side and 2 here")
	p.Fill("driven", "54")
	p.Fill("roller", "8,5")
	assert.InEpsilon(t, 14400/(8.5*math.Pi), p.Value("out-steps"), 1e-12)
	assert.InEpsilon(t, 4.5, p.Value("out-ratio-1"), 1e-15)
	assert.Contains(t, p.Text(".answer"), "A starting value only: run a test.")

	p.Click("#add-axis")
	p.FillNth("name", 1, "Plover Z")
	assert.Equal(t, "1,8", browser.Eval[string](p, `document.getElementById("f-angle-2").value`), "carried over")
	browser.Eval[bool](p, `(() => { const f = document.getElementById("f-out-2"); f.value = "screw"; f.dispatchEvent(new Event("change", {bubbles: true})); return true; })()`)
	p.Settle()
	p.Fill("screw", "Tr10x4(P2)")
	assert.InDelta(t, 800, p.Value("out-steps-2"), 1e-12)
	assert.Contains(t, p.Text("#part-all"), "Plover Z")
	p.Wait(`location.hash === "#v=1&name=Heron%20feed,Plover%20Z&out=roller,screw&angle=1.8,1.8&micro=1/16,1/16&gears=pairs&driving=12&driven=54&screw=,Tr10x4%28P2%29&roller=8.5"`)

	p.Viewport(browser.Width, browser.Height)
	assert.LessOrEqual(t, browser.Eval[int64](p, `document.documentElement.scrollWidth`), int64(browser.Width))
	p.Click(`#part-axis-1 .links a`)
	p.Wait(`document.querySelector("h1").textContent.startsWith("Calibrate")`)
	assert.Equal(t, "539.2544", p.Field("steps"))
	assert.Equal(t, "54", p.Field("driven"))
}

// An inch screw and an inch rack at the width of a phone, typed as they are marked.
func TestPartsByTheNamesOnTheShelf(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Viewport(browser.Width, browser.Height)
	p.Open("/parts/")
	p.Choose("out", "screw")
	p.Fill("angle", "1,8")
	p.Fill("micro", "16")
	p.Fill("screw", "1/4-20")
	assert.Contains(t, p.Text(".problems"), "Write an inch screw by its threads per inch: 20 tpi")
	p.Fill("screw", "20 tpi")
	assert.InEpsilon(t, 3200/1.27, p.Value("out-steps"), 1e-12)
	assert.Equal(t, "", browser.Eval[string](p, `document.querySelector("[name=screw]").inputMode`), "a keyboard with letters")
	p.Wait(`location.hash === "#v=1&out=screw&angle=1.8&micro=16&screw=20%20tpi"`)
	p.Choose("out", "rack")
	p.Fill("pinion", "20")
	p.Fill("module", "24 DP")
	assert.Equal(t, "", browser.Eval[string](p, `document.querySelector("[name=module]").inputMode`), "a keyboard with letters")
	assert.InEpsilon(t, 3200/(20*math.Pi*127/120), p.Value("out-steps"), 1e-12)
	p.Choose("out", "drum2")
	p.Fill("drum", "20")
	p.Fill("cable", "0,8")
	assert.InEpsilon(t, 3200/(10.4*math.Pi), p.Value("out-steps"), 1e-12)
	assert.LessOrEqual(t, browser.Eval[int64](p, `document.documentElement.scrollWidth`), int64(browser.Width))
	p.Reload()
	assert.InEpsilon(t, 3200/(10.4*math.Pi), p.Value("out-steps"), 1e-12)
}

func TestPartsTheWayBack(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/parts/#v=1&find=element")
	p.Fill("steps", "89,0")
	p.Fill("angle", "1,8")
	p.Fill("micro", "16")
	p.Fill("pitch", "2 mm")
	assert.InEpsilon(t, 1600/89., p.Value("out-teeth"), 1e-12)
	assert.InDelta(t, 18, p.Value("out-nearest-1"), 1e-12)
	assert.InEpsilon(t, 800/9., p.Value("out-fitting-1"), 1e-12)
	assert.Contains(t, p.Text(".answer"), "0.12% smaller")
	p.Choose("as", "turn")
	p.Fill("turn", "40")
	assert.Contains(t, p.Text(".answer"), "A pulley with 20 teeth gives exactly this setting.")
	p.Click(`#part-meaning summary`)
	p.Reload()
	assert.InDelta(t, 20, p.Value("out-teeth"), 1e-12)
}
