package browser

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/calc"
)

// watchShifts counts what moves on the page without the person's doing.
const watchShifts = `window.shifts = []; new PerformanceObserver((list) => {
	for (const e of list.getEntries()) if (!e.hadRecentInput) window.shifts.push(e.value.toFixed(4) + " " + e.sources.map((s) => s.node && (s.node.id || s.node.className || s.node.nodeName)).join(","));
}).observe({type: "layout-shift", buffered: true})`

// Nothing moves while a page starts, and the field that is typed into stays
// where it is when results appear, problems too.
func TestNothingMovesWhileReadingOrTyping(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	p := s.NewPage(t)
	p.Before(watchShifts)
	for _, screen := range [][2]int64{{Width, Height}, {1280, 900}} {
		p.Viewport(screen[0], screen[1])
		for _, page := range calc.Pages {
			for _, fragment := range []string{"", page.Example} {
				if fragment == "" && screen[0] != Width {
					continue
				}
				p.Open("/" + page.Slug + "/#" + fragment)
				p.Settle()
				assert.Empty(t, Eval[[]string](p, `window.shifts`), "%s#%s at %d px, while it starts", page.Slug, fragment, screen[0])
			}
			field := `[...document.querySelectorAll("main input[type=text]")].filter((e) => e.checkVisibility() && !e.closest("details:not([open])"))[1]`
			top := `(() => { const e = ` + field + `; return e.getBoundingClientRect().top; })()`
			Eval[bool](p, `(() => { const e = `+field+`; e.scrollIntoView({block: "center"}); e.focus(); return true; })()`)
			before := Eval[float64](p, top)
			for _, keys := range []string{"x", "\b", "7"} {
				p.Press(keys)
				assert.InDelta(t, before, Eval[float64](p, top), 1, "%s at %d px, after %q", page.Slug, screen[0], keys)
			}
		}
	}
}
