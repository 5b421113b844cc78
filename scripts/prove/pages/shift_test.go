package pages

import (
	"bytes"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"striderule/calc"
	"striderule/scripts/prove/browser"
)

// watchShifts notes what moves on the page. The browser takes what moves in the first half
// second for the person's doing (hadRecentInput), who has done nothing here yet.
const watchShifts = `window.shifts = []; new PerformanceObserver((list) => {
	const box = (r) => [r.x, r.y, r.width, r.height].map(Math.round).join(" ");
	const moved = (s) => (s.node && (s.node.id || s.node.className || s.node.nodeName)) + " from " + box(s.previousRect) + " to " + box(s.currentRect);
	for (const e of list.getEntries()) window.shifts.push(e.value.toFixed(4) + " " + e.sources.map(moved).join(", "));
}).observe({type: "layout-shift", buffered: true})`

// tellPaint asks for a file named painted when the first of the page shows, and when all does.
const tellPaint = `new PerformanceObserver((list, its) => {
	its.disconnect();
	const tell = () => fetch(document.getElementById("load").dataset.program.replace(/web.*/, "painted"));
	const look = () => requestAnimationFrame(() => document.querySelector(".foot") ? requestAnimationFrame(tell) : look());
	tell();
	look();
}).observe({type: "paint", buffered: true})`

// inPieces sends a page up to each of the marks in turn, and goes on when the browser has shown
// that: as it comes to a slow device, or over a slow connection.
func inPieces(t *testing.T, marks ...string) func(http.ResponseWriter, *http.Request) bool {
	dist, painted := browser.Dist(t), make(chan bool, len(marks))
	return func(w http.ResponseWriter, r *http.Request) bool {
		path := strings.TrimPrefix(r.URL.Path, browser.Mount)
		if path == "painted" {
			painted <- true
			w.WriteHeader(http.StatusNoContent)
			return true
		}
		page, err := os.ReadFile(filepath.Join(dist, path, "index.html"))
		if err != nil {
			return false
		}
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		for _, mark := range marks {
			at := bytes.Index(page, []byte(mark))
			if !assert.Positive(t, at, "%s: %s", path, mark) {
				break
			}
			_, _ = w.Write(page[:at])
			w.(http.Flusher).Flush()
			page = page[at:]
			select {
			case <-painted:
			case <-time.After(browser.Patience / 2):
				t.Errorf("%s up to %s did not show before the rest came", path, mark)
			}
		}
		_, _ = w.Write(page)
		return true
	}
}

// Nothing moves while a page starts, and the field that is typed into stays
// where it is when results appear, problems too.
func TestNothingMovesWhileReadingOrTyping(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Before(watchShifts)
	if browser.Name() == "chromium" { // others tell of no shifts
		s.Intercept(inPieces(t, "../convert/", "<noscript>")) // in the menu, and all that shows
		p.Before(tellPaint)
		p.Before(`delete Navigator.prototype.serviceWorker`) // a page that it keeps comes whole
	}
	for _, screen := range [][2]int64{{browser.Width, browser.Height}, {1280, 900}} {
		p.Viewport(screen[0], screen[1])
		for _, page := range calc.Pages {
			for _, fragment := range []string{"", page.Example} {
				if fragment == "" && screen[0] != browser.Width {
					continue
				}
				p.Open("/" + page.Slug + "/#" + fragment)
				p.Settle()
				assert.Empty(t, browser.Eval[[]string](p, `window.shifts`), "%s#%s at %d px, while it starts", page.Slug, fragment, screen[0])
			}
			if !browser.Eval[bool](p, `[...document.querySelectorAll("form.lead .typed")].filter((e) => e.checkVisibility()).length > 1`) {
				p.OpenFolds("#row-axis-1") // a link's rows are folded
			}
			field := `[...document.querySelectorAll("main input[type=text]")].filter((e) => e.checkVisibility() && !e.closest("details:not([open])"))[1]`
			top := `(() => { const e = ` + field + `; return e.getBoundingClientRect().top; })()`
			// On a desk a page may end with its answer, and be scrolled no further without: there a
			// person scrolls only if the field is not in view.
			block := map[bool]string{true: "center", false: "nearest"}[screen[0] == browser.Width]
			browser.Eval[bool](p, `(() => { const e = `+field+`; scrollTo(0, 0); e.scrollIntoView({block: "`+block+`"}); e.focus(); return true; })()`)
			before := browser.Eval[float64](p, top)
			for _, keys := range []string{"x", "\b", "7"} {
				p.Press(keys)
				assert.InDelta(t, before, browser.Eval[float64](p, top), 1, "%s at %d px, after %q", page.Slug, screen[0], keys)
			}
		}
	}
}
