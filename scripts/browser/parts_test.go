package browser

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A machine set up from its parts, typed in from an empty page.
func TestPartsFromAnEmptyPage(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	p := s.NewPage(t)
	p.Open("/parts/")
	assert.Empty(t, answerOf(p))
	assert.Contains(t, p.Text("#part-axis-1"), "For steps per mm, give Belt pitch, Pulley teeth, Step angle and Microsteps.")
	p.Fill("name", "Heron feed")
	p.Choose("out", "roller")
	p.Fill("angle", "1,8")
	p.Fill("micro", "1/16")
	p.Choose("gears", "pairs")
	p.Fill("driving", "12")
	p.Fill("driven", "54 x 2")
	assert.Contains(t, p.Text(".problems"), "there are counts for 2 stages here, and for 1 on the motor side")
	p.Fill("driven", "54")
	p.Fill("roller", "8,5")
	assert.InEpsilon(t, 14400/(8.5*math.Pi), p.Value("out-steps"), 1e-12)
	assert.InEpsilon(t, 4.5, p.Value("out-ratio-1"), 1e-15)
	assert.Contains(t, p.Text(".answer"), "A start only: measure it.")

	p.Click("#add-axis")
	p.FillNth("name", 1, "Plover Z")
	assert.Equal(t, "1,8", Eval[string](p, `document.getElementById("f-angle-2").value`), "carried over")
	Eval[bool](p, `(() => { const f = document.getElementById("f-out-2"); f.value = "screw"; f.dispatchEvent(new Event("change", {bubbles: true})); return true; })()`)
	p.Settle()
	p.Fill("screw", "Tr10x4(P2)")
	assert.InDelta(t, 800, p.Value("out-steps-2"), 1e-12)
	assert.Contains(t, p.Text("#part-all"), "Plover Z")
	p.Wait(`location.hash === "#v=1&name=Heron%20feed,Plover%20Z&out=roller,screw&angle=1.8,1.8&micro=1/16,1/16&gears=pairs&driving=12&driven=54&screw=,Tr10x4%28P2%29&roller=8.5"`)

	p.Viewport(Width, Height)
	assert.LessOrEqual(t, Eval[int64](p, `document.documentElement.scrollWidth`), int64(Width))
	p.Click(`#part-axis-1 .links a`)
	p.Wait(`document.querySelector("h1").textContent.startsWith("Correct")`)
	assert.Equal(t, "539.2544", p.Field("steps"))
	assert.Equal(t, "54", p.Field("driven"))
}

func TestPartsTheWayBack(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	p := s.NewPage(t)
	p.Open("/parts/#v=1&find=element")
	p.Fill("steps", "89,0")
	p.Fill("angle", "1,8")
	p.Fill("micro", "16")
	p.Fill("pitch", "2 mm")
	assert.InEpsilon(t, 1600/89., p.Value("out-teeth"), 1e-12)
	assert.InDelta(t, 18, p.Value("out-nearest-1"), 1e-12)
	assert.InEpsilon(t, 800/9., p.Value("out-fitting-1"), 1e-12)
	assert.Contains(t, p.Text(".answer"), "0.12 % less")
	p.Choose("as", "turn")
	p.Fill("turn", "40")
	assert.Contains(t, p.Text(".answer"), "A pulley of 20 teeth gives exactly this setting.")
	p.Click(`#part-meaning summary`)
	p.Reload()
	assert.InDelta(t, 20, p.Value("out-teeth"), 1e-12)
}
