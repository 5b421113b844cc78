package pages

import (
	"bytes"
	"net/http"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/make/serving"
	"striderule/scripts/prove/browser"
)

// program returns the program as the site has it, with an end of its name: "" or ".gz".
func program(t *testing.T, end string) []byte {
	t.Helper()
	file, err := serving.Program(browser.Dist(t))
	require.NoError(t, err)
	content, err := os.ReadFile(file + end)
	require.NoError(t, err)
	return content
}

// isProgram and isZipped tell requests for the program, in any form or compressed.
func isProgram(path string) bool { return strings.Contains(path, "/web/app.") }
func isZipped(path string) bool  { return isProgram(path) && strings.HasSuffix(path, ".gz") }

// serveHalf sends half of the program, and the rest once the gate opens; without
// a gate it breaks off.
func serveHalf(t *testing.T, w http.ResponseWriter, gate <-chan struct{}) {
	content := program(t, ".gz")
	w.Header().Set("Content-Length", strconv.Itoa(len(content)))
	_, _ = w.Write(content[:len(content)/2])
	w.(http.Flusher).Flush()
	if gate == nil {
		panic(http.ErrAbortHandler)
	}
	<-gate
	_, _ = w.Write(content[len(content)/2:])
}

// answer intercepts all requests whose path is such a one.
func answer(is func(path string) bool, f http.HandlerFunc) func(http.ResponseWriter, *http.Request) bool {
	return func(w http.ResponseWriter, r *http.Request) bool {
		if !is(r.URL.Path) {
			return false
		}
		f(w, r)
		return true
	}
}

func isScript(name string) func(path string) bool {
	return func(path string) bool { return strings.Contains(path, "/web/"+name+".") }
}

func notFound(w http.ResponseWriter, _ *http.Request) { http.Error(w, "not here", http.StatusNotFound) }

// Each cause has a sentence of its own, and the page can be read on.
func TestFailureSentences(t *testing.T) {
	browser.Alongside(t)
	for _, c := range []struct {
		name      string
		intercept func(http.ResponseWriter, *http.Request) bool
		before    string // script
		says      string
	}{
		{name: "program missing", intercept: answer(isProgram, notFound),
			says: ".wasm the server answered 404"},
		{name: "a page in its place", intercept: answer(isProgram, func(w http.ResponseWriter, _ *http.Request) {
			_, _ = w.Write([]byte("<!DOCTYPE html><title>Start</title>"))
		}), says: "the server sent the wrong file"},
		{name: "cut short", intercept: answer(isProgram, func(w http.ResponseWriter, _ *http.Request) {
			serveHalf(t, w, nil)
		}), says: "arrived incomplete"},
		{name: "damaged", intercept: answer(isProgram, func(w http.ResponseWriter, _ *http.Request) {
			content := program(t, "")
			content[len(content)/2] ^= 0xff
			_, _ = w.Write(append(content[:20:20], content[40:]...))
		}), says: "arrived damaged, or this browser is too old"},
		{name: "connection refused", intercept: answer(isProgram, func(http.ResponseWriter, *http.Request) {
			panic(http.ErrAbortHandler)
		}), says: "The connection failed"},
		{name: "one script changed and missing", intercept: changedPages(t, answer(isScript("load"), notFound)),
			says: "web/load.js is missing"},
		{name: "the other script missing", intercept: answer(isScript("start"), notFound),
			says: "web/start.js is missing"},
		{name: "no WebAssembly", before: "delete window.WebAssembly",
			says: "This browser can't run the calculator: it has no WebAssembly"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := browser.NewSite(t)
			s.Intercept(c.intercept)
			p := s.NewPage(t)
			p.Allow("") // the browser's own words about it
			if c.before != "" {
				p.Before(c.before)
			}
			p.Load("/measure/")
			said := p.WaitFailed()
			assert.Contains(t, said, c.says)
			assert.Contains(t, said, "You can still read the page.")
			assert.True(t, browser.Eval[bool](p, `document.getElementById("boot").offsetHeight > 0`), "it must show")
			assert.NotEmpty(t, p.Text("h1"))
		})
	}
}

// changedPages is a host that writes into the scripts of its pages, which their policy
// then does not let run.
func changedPages(t *testing.T, others func(http.ResponseWriter, *http.Request) bool) func(http.ResponseWriter, *http.Request) bool {
	return func(w http.ResponseWriter, r *http.Request) bool {
		if !strings.HasSuffix(r.URL.Path, "/") {
			return others(w, r)
		}
		page, err := os.ReadFile(filepath.Join(browser.Dist(t), filepath.FromSlash(strings.TrimPrefix(r.URL.Path, browser.Mount)), "index.html"))
		assert.NoError(t, err)
		_, err = w.Write(bytes.Replace(page, []byte("</script>"), []byte("/* by the host */</script>"), 1))
		return err == nil
	}
}

// Hosts and browsers differ; the calculator starts with all of these.
func TestStartsAllTheSame(t *testing.T) {
	browser.Alongside(t)
	plainGzip := func(contentType, encoding string) func(http.ResponseWriter, *http.Request) bool {
		return answer(isZipped, func(w http.ResponseWriter, _ *http.Request) {
			w.Header().Set("Content-Type", contentType)
			if encoding != "" {
				w.Header().Set("Content-Encoding", encoding)
			}
			_, _ = w.Write(program(t, ".gz"))
		})
	}
	for _, c := range []struct {
		name      string
		intercept func(http.ResponseWriter, *http.Request) bool
		before    string
		allow     string
	}{
		{name: "the host undoes gzip", intercept: plainGzip("application/wasm", "gzip")},
		{name: "the host undoes gzip by its old name", intercept: plainGzip("application/x-gzip", "x-gzip")},
		{name: "the host knows no type", intercept: plainGzip("application/octet-stream", "")},
		{name: "the host refuses .gz", intercept: answer(isZipped, notFound), allow: "404"},
		{name: "no DecompressionStream", before: "delete window.DecompressionStream"},
		{name: "no DecompressionStream and no type", before: "delete window.DecompressionStream",
			intercept: answer(isProgram, func(w http.ResponseWriter, r *http.Request) {
				w.Header().Set("Content-Type", "text/plain")
				_, _ = w.Write(program(t, strings.TrimSuffix(filepath.Ext(r.URL.Path), ".wasm")))
			})},
		{name: "the host writes into scripts", intercept: changedPages(t, func(http.ResponseWriter, *http.Request) bool { return false }), allow: "script"},
		{name: "no streaming", before: "delete WebAssembly.compileStreaming"},
		{name: "no streaming and no DecompressionStream", before: "delete WebAssembly.compileStreaming; delete window.DecompressionStream"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := browser.NewSite(t)
			s.Intercept(c.intercept)
			p := s.NewPage(t)
			if c.allow != "" {
				p.Allow(c.allow)
			}
			if c.before != "" {
				p.Before(c.before)
			}
			p.Open("/measure/")
		})
	}
}

// What a link holds may be at fault: the page is offered without it.
func TestFaultAtTheStart(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Allow("")
	p.Before(`Object.defineProperty(window.striderule = {}, "swap", { set() {}, get: () => () => { if (location.hash) throw new Error("a fault"); return true; } })`)
	p.Load("/measure/#" + heron)
	said := p.WaitFailed()
	assert.Contains(t, said, "The calculator crashed while it was starting. You can still read the page.")
	assert.NotContains(t, said, "connection")
	assert.Equal(t, "Open the page without entries", p.Text("#boot a"))
	p.Tap("#boot a")
	p.Wait(`location.hash === "" && !document.getElementById("boot").textContent`)
}

func TestFaultAfterStart(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Allow("exit code")          // of Go
	p.Allow("the program ended")  // start.js
	p.Allow("already exited")     // keys that come later
	p.Allow("index out of range") // the fault itself
	p.Allow("[recovered")         // as go-app hands it on
	p.Allow("goroutine")          // Go's trace
	p.Open("/measure/")
	p.Fill("steps", "537,5")
	p.FillNth("rest", 1, "28,8")
	browser.Eval[bool](p, `(document.querySelector("[name=aside]").click(), true)`)
	p.Choose("tool", "caliper-0.05")
	p.Settle()
	p.Click("#keep")
	p.Fill("keep-machine", "Heron")
	// go-app takes an argument that isn't there, and panics.
	browser.Eval[bool](p, `(window.goappNav(), true)`)
	said := p.WaitFailed()
	assert.Contains(t, said, "The calculator crashed.")
	assert.Contains(t, said, "What you typed is still here.")
	assert.Equal(t, "537,5", p.Field("steps"))
	p.Fill("keep-note", "new extruder")
	p.Fill("mark", "104") // also what is typed afterwards
	p.Tap("#boot a")      // not Click: the page goes away
	p.Wait(`document.documentElement.dataset.app === "ready"`)
	assert.Equal(t, "v=1&steps=537.5&mark=104&rest=,28.8&aside=yes&tool=caliper-0.05", strings.SplitN(browser.Eval[string](p, `document.getElementById("copy-link").dataset.copy`), "#", 2)[1])
	assert.Equal(t, []string{"Heron", "new extruder"}, []string{p.Field("keep-machine"), p.Field("keep-note")}, "the form beside it")
}
