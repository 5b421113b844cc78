package pages

import (
	"strconv"
	"testing"
	"time"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// placesInForm are where the fields of the form stand.
const placesInForm = `[...document.querySelectorAll("form.lead .typed, form.lead select, form.lead .option")].filter((f) => f.checkVisibility())
	.map((f) => { const b = f.getBoundingClientRect(); return [Math.round(b.left + scrollX), Math.round(b.top + scrollY), Math.round(b.width)]; })`

// A number half typed may be a wrong or an odd one. What is said of it comes below when the person
// pauses or goes on: the field that they are about to touch stays where it is.
func TestNothingMovesWhileTyping(t *testing.T) {
	browser.Alongside(t)
	cases := []struct{ path, id, key, says string }{
		{"/measure/#v=1&steps=415&asked=100&trial=speeds&read=fed", "f-at-1", "5", "Did you mean"},
		{"/measure/#v=1&steps=415&asked=100&trial=speeds&read=fed&at=60,60,60&fed=99", "f-at-4", "5", "Did you mean"},
		{"/measure/#v=1&steps=538.0&asked=80&mark=105", "f-rest-2", "2x", "isn't a unit"},
		{"/measure/", "f-steps", "5,380", "could mean"},
		{"/measure/", "f-mark", "x", "isn't a number"},
		{"/convert/", "f-ratio-1", "1:", ""},
		{"/rate/#v=1&steps=80", "f-limit", "150", "Did you mean"},
		{"/swap/#v=1&changed=angle", "f-anglenew", "0", ""},
		{"/flow/", "f-thick-1", "4x", ""},
	}
	if !full() {
		cases = cases[:4]
	}
	for _, c := range cases {
		t.Run(c.path+" "+c.id, func(t *testing.T) {
			p := browser.NewSite(t).NewPage(t)
			p.Open(c.path)
			if !browser.Eval[bool](p, `Boolean(document.getElementById("`+c.id+`"))`) {
				p.Unfold()
				p.Wait(`document.getElementById("` + c.id + `")`)
			}
			p.Settle()
			before := browser.Eval[[][]int](p, placesInForm)
			require.NotEmpty(t, before)
			about := `[...document.querySelectorAll("[id='` + c.id + `-problem'], [id='` + c.id + `-read']")].filter((e) => e.checkVisibility({ visibilityProperty: true })).map((e) => e.textContent).join("")`
			was := browser.Eval[string](p, about)
			browser.Eval[bool](p, `(document.getElementById("`+c.id+`").focus(), true)`)
			p.Press(c.key)
			// What follows typing at once has followed then.
			const soon = `new Promise((r) => setTimeout(r, 300)).then(() => ` + placesInForm + `)`
			assert.Equal(t, before, browser.Eval[[][]int](p, soon))
			assert.Equal(t, was, browser.Eval[string](p, about))
			if c.says == "" {
				return
			}
			p.WaitFor(5*time.Second, `(`+about+`).includes(`+strconv.Quote(c.says)+`)`) // the person pauses
			// Nothing moves either while that is put right; then it goes.
			said := browser.Eval[[][]int](p, placesInForm)
			browser.Eval[bool](p, `(document.activeElement.select(), document.execCommand("insertText", false, "60"))`)
			assert.Equal(t, said, browser.Eval[[][]int](p, soon))
			assert.Empty(t, browser.Eval[string](p, about))
		})
	}
}

// What is said of a field when it is left comes after the click that leaves it: it would push the
// button from under the mouse, which then clicks on nothing.
func TestClickThatLeavesAFieldIsHeard(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/convert/#v=1&name=Heron&steps=538.0&angle=1.8&micro=16")
	p.FillNth("ratio", 0, "54:12")
	const said = `Boolean(document.getElementById("f-ratio-1-read")?.textContent.includes("ratio 4.5"))`
	assert.False(t, browser.Eval[bool](p, said), "it is said before the field is left: this shows nothing")
	p.Hold("#add-axis", 150*time.Millisecond)
	p.Wait(`document.activeElement.id === "f-name-2"`)
	p.OpenFolds("#row-axis-1")
	p.Wait(said)
	// A button that was pressed and never let go holds nothing back for long.
	p.FillNth("ratio", 1, "0")
	browser.Eval[bool](p, `(dispatchEvent(new PointerEvent("pointerdown")), true)`)
	p.Press(kb.Tab)
	p.WaitFor(1300*time.Millisecond, `document.getElementById("f-ratio-2-problem")`)
}
