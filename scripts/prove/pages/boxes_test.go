package pages

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// noBox lists the fields that are there but have no box to be seen in, but for what lies
// in closed folds.
const noBox = `[...document.querySelectorAll("form.sheet :is(input, select, textarea)")]
	.filter((f) => !f.closest("details:not([open])") && f.getBoundingClientRect().height < 10).map((f) => f.id)`

// Chromium has lost the box of a field (its own, not its place's) whose neighbour went away
// in the same moment.
func TestFieldsStayToBeSeen(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	for _, path := range []string{"/measure/", "/convert/", "/swap/", "/parts/", "/plan/", "/rate/", "/flow/"} {
		t.Run(path, func(t *testing.T) {
			p := p.In(t)
			p.Show(path)
			assert.Empty(t, browser.Eval[[]string](p, noBox))
			p.Click("#example")
			p.Settle()
			assert.Empty(t, browser.Eval[[]string](p, noBox), "with the example")
			p.Click("#clear")
			p.Settle()
			assert.Empty(t, browser.Eval[[]string](p, noBox), "emptied")
			p.Back()
			p.Settle()
			assert.Empty(t, browser.Eval[[]string](p, noBox), "one step back")
		})
	}
}
