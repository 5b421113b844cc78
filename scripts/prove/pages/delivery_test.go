package pages

import (
	"net/http"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// askedProgram returns the forms of the program that a site was asked for.
func askedProgram(s *browser.Site) []string {
	forms := []string{}
	for _, path := range s.Asked() {
		if isProgram("/" + path) {
			forms = append(forms, regexp.MustCompile(`\.[0-9a-f]{10}`).ReplaceAllString(path, ""))
		}
	}
	return forms
}

// requestsBeforeStart lists what went over the network before the calculator was
// there, less the icon that a browser's own tab shows ("other").
const requestsBeforeStart = `(() => {
	const end = performance.getEntriesByType("mark").find((m) => m.name === "app-mounted").startTime;
	return [...performance.getEntriesByType("navigation"), ...performance.getEntriesByType("resource")]
		.filter((e) => e.startTime < end && e.transferSize > 0 && e.initiatorType !== "other").map((e) => e.name);
})()`

// needCache skips the test where the browser keeps nothing of what it has fetched.
func needCache(t *testing.T) {
	t.Helper()
	if browser.Name() == "webkit" {
		t.Skip("skipped in webkit: its driver's sessions keep no HTTP cache, and ask for brotli over TLS alone")
	}
}

// The smallest form that a host can send is fetched, once, and it is kept for
// offline use without being fetched again.
func TestProgramIsFetchedOnceInTheSmallestForm(t *testing.T) {
	browser.Alongside(t)
	needCache(t)
	const plain, zipped = "web/app.wasm", "web/app.wasm.gz"
	for _, c := range []struct {
		name   string
		send   []string
		before string
		none   string // what the host does not compress, though it does others
		want   []string
	}{
		{name: "a host that compresses nothing", want: []string{zipped}},
		{name: "gzip", send: []string{"gzip"}, want: []string{zipped}},
		{name: "brotli", send: []string{"br", "gzip"}, want: []string{plain}},
		{name: "brotli, a browser that says only that it was compressed", send: []string{"br"},
			before: `delete PerformanceResourceTiming.prototype.contentEncoding`, want: []string{plain}},
		{name: "gzip, a browser that says only that it was compressed", send: []string{"gzip"},
			before: `delete PerformanceResourceTiming.prototype.contentEncoding`, want: []string{zipped}},
		{name: "nothing, a browser that does not say how", before: `delete PerformanceResourceTiming.prototype.contentEncoding`, want: []string{zipped}},
		{name: "a browser that says nothing", send: []string{"br"}, before: `const its = performance.getEntriesByType.bind(performance); performance.getEntriesByType = (type) => type === "navigation" ? [] : its(type)`, want: []string{zipped}},
		{name: "a browser that undoes no gzip", send: []string{"br"}, before: `delete window.DecompressionStream`, want: []string{plain}},
		// The plain one is broken off as soon as its head is there.
		{name: "brotli for text alone", send: []string{"br"}, none: ".wasm", want: []string{plain, zipped}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := browser.NewSite(t)
			s.Send(c.send...)
			broken := make(chan bool, 1)
			if c.none != "" {
				s.Intercept(func(w http.ResponseWriter, r *http.Request) bool {
					if !strings.HasSuffix(r.URL.Path, c.none) {
						return false
					}
					_, _ = w.Write(program(t, "")[:1<<20])
					w.(http.Flusher).Flush()
					select {
					case <-r.Context().Done():
						broken <- true
					case <-time.After(browser.Patience):
						broken <- false
					}
					return true
				})
			}
			p := s.NewPage(t)
			if c.before != "" {
				p.Before(c.before)
			}
			p.Open("/measure/")
			assert.Equal(t, c.want, askedProgram(s))
			if c.none == "" {
				requests := browser.Eval[[]string](p, requestsBeforeStart)
				assert.LessOrEqual(t, len(requests), 6, "requests before the calculator is there: %v", requests)
			} else {
				select {
				case off := <-broken:
					assert.True(t, off, "the plain one was to be broken off")
				case <-time.After(browser.Patience):
					assert.Fail(t, "the plain one was never asked for")
				}
			}
			p.WaitOffline()
			assert.Equal(t, c.want, askedProgram(s), "kept for offline use from what the browser has")
			s.Stop()
			p.Reload()
		})
	}
}

// A visit without the worker, as in a private window with the cache filled.
func TestProgramIsTakenFromTheBrowsersCache(t *testing.T) {
	browser.Alongside(t)
	needCache(t)
	for _, send := range [][]string{nil, {"br"}} {
		s := browser.NewSite(t)
		s.Send(send...)
		p := s.NewPage(t)
		p.Before(`delete Navigator.prototype.serviceWorker`)
		p.Open("/measure/")
		p.Open("/swap/")
		assert.Len(t, askedProgram(s), 1, "%v", send)
	}
}

func TestNothingHoldsUpFirstPaint(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	gate := make(chan struct{})
	release := sync.OnceFunc(func() { close(gate) })
	t.Cleanup(release)
	s.Intercept(func(w http.ResponseWriter, r *http.Request) bool {
		if strings.HasSuffix(r.URL.Path, ".js") || isProgram(r.URL.Path) {
			<-gate
		}
		return false
	})
	p := s.NewPage(t)
	// Load would wait for the scripts.
	browser.Eval[bool](p, `(setTimeout(() => { location.href = "`+s.URL+`measure/"; }), true)`)
	p.Wait(`location.href !== "about:blank" && performance.getEntriesByName("first-contentful-paint").length`)
	require.NotEmpty(t, p.Text("h1"))
	assert.Empty(t, browser.Eval[string](p, `document.documentElement.dataset.app || ""`))
	release()
	p.WaitReady()
}
