package pages

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// The method's texts are not in the program: by the menu they come from the host, or from
// what is kept offline. Back brings the sheet as it was left.
func TestMethodByTheMenu(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#" + heron)
	p.WaitOffline()
	for _, offline := range []bool{false, true} {
		if offline {
			s.Stop()
		}
		p.FillNth("rest", 1, "28.8")
		p.OpenMenu()
		p.Tap(`nav a[href$="/method/"]`)
		p.Wait(`document.querySelector("#glossary dt") && document.documentElement.dataset.app === "ready"`)
		assert.Equal(t, "title", browser.Eval[string](p, `document.querySelector("h1").id`))
		browser.Eval[bool](p, `(history.back(), true)`)
		p.Wait(`document.documentElement.dataset.app === "ready" && document.getElementsByName("rest")[1]?.value === "28.8"`)
		assert.NotZero(t, p.Value("out-steps"))
	}
}
