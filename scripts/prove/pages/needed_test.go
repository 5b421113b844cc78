package pages

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

const active = `document.activeElement.id`

// From the first moment the bar says what the answer needs, each a way to its field.
func TestBarSaysWhatIsNeeded(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Viewport(360, 740)
	p.Open("/measure/")
	p.Wait(barShows)
	// By the letters of the picture, where a field has one.
	assert.Equal(t, "Still needed: Steps per mm A B C", p.Text(".bar"))
	for n, field := range []string{"f-steps", "f-asked", "f-mark", "f-rest-1"} {
		p.Click(fmt.Sprintf(`.bar a:nth-of-type(%d)`, n+1))
		assert.Equal(t, field, browser.Eval[string](p, active))
		assert.True(t, browser.Eval[bool](p, `(() => {
			const field = document.activeElement.getBoundingClientRect(), bar = document.querySelector(".bar").getBoundingClientRect();
			return field.top > 0 && field.bottom < bar.top;
		})()`), "%s is in view", field)
	}
	p.Fill("mark", "105")
	p.Fill("steps", "538.0")
	p.Fill("asked", "80")
	assert.Equal(t, "Still needed: C", p.Text(".bar"))
	p.FillNth("rest", 0, "28.7")
	assert.Contains(t, p.Text(".bar"), "keep steps per mm")
	assert.False(t, browser.Eval[bool](p, `!!document.querySelector(".needed")`))
}

// Enter goes on to the next field, and from a full list to a new row.
func TestEnterGoesOn(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/")
	p.Focus("asked", 0)
	p.Press("80" + kb.Enter)
	assert.NotEqual(t, "f-asked", browser.Eval[string](p, active))
	p.Focus("rest", 0)
	for range 5 {
		p.Press("28.7" + kb.Enter)
	}
	p.Press("28.9")
	assert.Equal(t, "f-rest-6", browser.Eval[string](p, active), "a row that was added")
	assert.Equal(t, "28.9", browser.Eval[string](p, `document.activeElement.value`))
	p.Focus("rest", 1)
	p.Press(kb.Enter)
	assert.Equal(t, "28.7", browser.Eval[string](p, `getSelection().toString() || document.activeElement.value.slice(document.activeElement.selectionStart, document.activeElement.selectionEnd)`), "ready to be typed over")
	browser.Eval[bool](p, `(document.activeElement.form.requestSubmit(), true)`)
	assert.Contains(t, p.Address(), "/measure/#")
}

// Who leaves by the menu and comes back by it finds the sheet again.
func TestBackToTheSheetByTheMenu(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/")
	p.Fill("steps", "538.0")
	p.Fill("asked", "80")
	p.Click(`nav a[href$="log/"]`)
	p.Wait(`document.querySelector("h1").textContent.includes("Log") || location.pathname.endsWith("/log/")`)
	p.Click(`nav a[href$="measure/"]`)
	p.Wait(`document.getElementById("continue")`)
	assert.Empty(t, p.Field("asked"))
	p.Click("#continue")
	p.Wait(`!document.getElementById("continue")`)
	assert.Equal(t, "80", p.Field("asked"))
	assert.Equal(t, "#v=1&steps=538.0&asked=80", browser.Eval[string](p, `location.hash`))

	p.Click("#clear")
	p.Wait(`document.getElementById("example")`)
	assert.False(t, browser.Eval[bool](p, `!!document.getElementById("continue")`), "it was cleared, and Back brings it back")
}
