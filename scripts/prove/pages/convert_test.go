package pages

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// With gears between, neither card nor bar has one number large, or to copy, until it is told
// what the new controller stores; then what must be entered together stands together.
func TestConvertAsksWhatIsWanted(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/convert/#v=1&name=Heron&steps=538.0&angle=1.8&micro=16&ratio=54:12")
	one := func() bool {
		return browser.Eval[bool](p, `Boolean(document.querySelector(".answer .headline, .answer .copy, .bar strong"))`)
	}
	assert.False(t, one())
	assert.Equal(t, "Heron: depends on the new controller", p.Text(".bar"))
	assert.Contains(t, p.Text(".answer"), "If it stores travel per output turn, enter:")
	assert.InEpsilon(t, 5.947955390334572, p.Value("out-turn"), 1e-15)
	assert.InEpsilon(t, 26.765799256505577, p.Value("out-output"), 1e-15)

	p.Choose("wants", "output")
	p.Wait(`location.hash.endsWith("&wants=output")`)
	assert.False(t, one())
	assert.Equal(t, "Heron: enter these together", p.Text(".bar"))
	assert.Regexp(t, `Travel per output turn\s*26.765799\s*mm/rev\s*Gear ratio, 54:12\s*4.5\s*Full steps per motor turn\s*200\s*Microsteps\s*16`, p.Text(".answer"))

	p.Choose("wants", "steps")
	p.Settle()
	assert.True(t, one())
	p.Choose("wants", "unknown")
	p.FillNth("ratio", 0, "1")
	assert.True(t, one(), "without gears both travels are one")
}

// What a screw or a gear was read as stands beside its field, and is read out with it; a doubt
// is in the bar too.
func TestFieldsSayHowTheyWereRead(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/swap/#v=1&changed=out&steps=640&out=screw&outnew=screw&screwnew=5&anglekept=1.8&microkept=16")
	p.Fill("screw", "2.5 x 2")
	p.Wait(`document.getElementById("f-screw-read")`)
	assert.Equal(t, "Lead 5 mm, 2 starts.", p.Text("#f-screw-read"))
	assert.Contains(t, browser.Eval[string](p, `document.getElementById("f-screw").getAttribute("aria-describedby")`), "f-screw-read")
	assert.NotContains(t, p.Text(".bar"), "?")
	p.Fill("screw", "2.5")
	p.Wait(`document.getElementById("f-screw-read")?.textContent.includes("1 start.")`)
	assert.Equal(t, "Lead 2.5 mm, 1 start.", p.Text("#f-screw-read"))
	assert.Equal(t, "These parts give 1280 steps/mm.", p.Text("#f-steps-read.doubted"))
	assert.Contains(t, p.Text(".answer .doubt"), "if yours has 2 starts, write 2.5 x 2.")
	assert.Regexp(t, `^\?`, p.Text(".bar"))
	p.Fill("screw", "thick")
	p.Wait(`document.getElementById("f-screw-problem")`)
	assert.False(t, browser.Eval[bool](p, `Boolean(document.getElementById("f-screw-read"))`), "what is wrong stands there")

	p.Open("/convert/#v=1&steps=538.0&angle=1.8&micro=16&ratio=12:54")
	assert.Equal(t, "The output turns 4.5 times for one motor turn. If it's the other way, write 54:12.", p.Text("#f-ratio-1-read.doubted"))
}
