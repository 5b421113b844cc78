package pages

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// traverse goes through the history without waiting, as right after a key.
func traverse(p *browser.Page, direction string) {
	p.T().Helper()
	browser.Eval[bool](p, "(history."+direction+"(), true)")
}

// secondReading is what stands in the second reading.
const secondReading = `document.getElementsByName("rest")[1]?.value`

// follow goes to another page of the site by the menu.
func follow(p *browser.Page, slug string) {
	p.T().Helper()
	browser.Eval[bool](p, `(document.querySelector("nav a[href*=`+slug+`]").click(), true)`)
	waitForSheet(p, slug)
}

// waitForSheet waits until a calculator shows within the document.
func waitForSheet(p *browser.Page, slug string) {
	p.T().Helper()
	p.Wait(`location.pathname.includes("` + slug + `") && document.querySelector("form[data-sheet=` + slug + `]")`)
	p.Settle()
}

// Within the site the browser changes pages without leaving the document: the address
// that had not followed yet is no longer the one that shows.
func TestBackWithinTheSiteRightAfterAKey(t *testing.T) {
	browser.Alongside(t)
	typeAndGo := func(p *browser.Page, direction string) {
		p.Focus("rest", 1)
		p.Type("31.7")
		traverse(p, direction)
	}
	backToSwap := func(t *testing.T) *browser.Page {
		p := browser.NewSite(t).NewPage(t)
		p.Open("/swap/")
		follow(p, "measure")
		typeAndGo(p, "back")
		waitForSheet(p, "swap")
		return p
	}

	t.Run("to another page", func(t *testing.T) {
		p := backToSwap(t)
		assert.NotContains(t, p.Address(), "31.7")
		traverse(p, "forward")
		p.Wait(secondReading + ` === "31.7"`)
		p.Wait(`location.hash.includes("31.7")`)

		// It was for that step alone.
		p.Open("/swap/")
		follow(p, "measure")
		assert.Empty(t, browser.Eval[string](p, secondReading))
	})

	t.Run("to another sheet", func(t *testing.T) {
		p := browser.NewSite(t).NewPage(t)
		p.Open("/measure/#" + heron)
		browser.Eval[bool](p, `(document.getElementById("clear").click(), true)`)
		p.Wait(`!location.hash && ` + secondReading + ` === ""`)
		typeAndGo(p, "back")
		p.Wait(secondReading + ` === "28.9"`)
		p.Settle()
		assert.Contains(t, p.Address(), "rest=28.7,28.9,28.6", "as it was")
		traverse(p, "forward")
		p.Wait(secondReading + ` === "31.7"`)
		p.Wait(`location.hash.includes("31.7")`)
	})

	t.Run("forward", func(t *testing.T) {
		p := browser.NewSite(t).NewPage(t)
		p.Open("/measure/#" + heron)
		browser.Eval[bool](p, `(document.getElementById("clear").click(), true)`)
		p.Wait(`!location.hash && ` + secondReading + ` === ""`)
		p.Back()
		p.Wait(secondReading + ` === "28.9"`)
		p.Settle()
		typeAndGo(p, "forward")
		p.Wait(secondReading + ` === ""`)
		p.Settle()
		assert.Empty(t, browser.Eval[string](p, "location.hash"))
		traverse(p, "back")
		p.Wait(secondReading + ` === "31.7"`)
		p.Wait(`location.hash.includes("rest=28.7,31.7,28.6")`)
	})

	t.Run("and a reload there", func(t *testing.T) {
		p := backToSwap(t)
		p.Reload()
		p.Forward()
		p.Wait(secondReading + ` === "31.7"`)
	})
}
