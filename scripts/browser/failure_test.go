package browser

import (
	"net/http"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func program(t *testing.T, name string) []byte {
	t.Helper()
	content, err := os.ReadFile(filepath.Join(Dist(t), "web", name))
	require.NoError(t, err)
	return content
}

// serveHalf sends half of the program, and the rest once the gate opens; without
// a gate it breaks off.
func serveHalf(t *testing.T, w http.ResponseWriter, gate <-chan struct{}) {
	content := program(t, "app.wasm.gz")
	w.Header().Set("Content-Length", strconv.Itoa(len(content)))
	_, _ = w.Write(content[:len(content)/2])
	w.(http.Flusher).Flush()
	if gate == nil {
		panic(http.ErrAbortHandler)
	}
	<-gate
	_, _ = w.Write(content[len(content)/2:])
}

// answer intercepts all requests whose path contains part.
func answer(part string, f http.HandlerFunc) func(http.ResponseWriter, *http.Request) bool {
	return func(w http.ResponseWriter, r *http.Request) bool {
		if !strings.Contains(r.URL.Path, part) {
			return false
		}
		f(w, r)
		return true
	}
}

func notFound(w http.ResponseWriter, _ *http.Request) { http.Error(w, "not here", http.StatusNotFound) }

// Each cause has a sentence of its own, and the page can be read on.
func TestFailureSentences(t *testing.T) {
	for _, c := range []struct {
		name      string
		intercept func(http.ResponseWriter, *http.Request) bool
		before    string // script
		says      string
	}{
		{name: "program missing", intercept: answer("app.wasm", notFound),
			says: "for web/app.wasm the server answered 404"},
		{name: "a page in its place", intercept: answer("app.wasm", func(w http.ResponseWriter, _ *http.Request) {
			_, _ = w.Write([]byte("<!DOCTYPE html><title>Start</title>"))
		}), says: "the server sent something else in its place"},
		{name: "cut short", intercept: answer("app.wasm", func(w http.ResponseWriter, _ *http.Request) {
			serveHalf(t, w, nil)
		}), says: "arrived incomplete"},
		{name: "damaged", intercept: answer("app.wasm", func(w http.ResponseWriter, _ *http.Request) {
			content := program(t, "app.wasm")
			content[len(content)/2] ^= 0xff
			_, _ = w.Write(append(content[:20:20], content[40:]...))
		}), says: "arrived damaged, or this browser is too old"},
		{name: "connection refused", intercept: answer("app.wasm", func(http.ResponseWriter, *http.Request) {
			panic(http.ErrAbortHandler)
		}), says: "The connection failed"},
		{name: "support script missing", intercept: answer("wasm_exec.js", notFound),
			says: "web/wasm_exec.js is missing"},
		{name: "no WebAssembly", before: "delete window.WebAssembly",
			says: "This browser cannot run the calculator: it has no WebAssembly"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := NewSite(t)
			s.Intercept(c.intercept)
			p := s.NewPage(t)
			p.Allow("") // the browser's own words about it
			if c.before != "" {
				p.Before(c.before)
			}
			p.Load("/measure/")
			said := p.WaitFailed()
			assert.Contains(t, said, c.says)
			assert.Contains(t, said, "The page can still be read.")
			assert.True(t, Eval[bool](p, `document.getElementById("boot").offsetHeight > 0`), "it must show")
			assert.NotEmpty(t, p.Text("h1"))
		})
	}
}

// Hosts and browsers differ; the calculator starts with all of these.
func TestStartsAllTheSame(t *testing.T) {
	plainGzip := func(contentType, encoding string) func(http.ResponseWriter, *http.Request) bool {
		return answer("app.wasm.gz", func(w http.ResponseWriter, _ *http.Request) {
			w.Header().Set("Content-Type", contentType)
			if encoding != "" {
				w.Header().Set("Content-Encoding", encoding)
			}
			_, _ = w.Write(program(t, "app.wasm.gz"))
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
		{name: "the host refuses .gz", intercept: answer("app.wasm.gz", notFound), allow: "404"},
		{name: "no DecompressionStream", before: "delete window.DecompressionStream", allow: "preload"},
		{name: "no DecompressionStream and no type", before: "delete window.DecompressionStream", allow: "preload",
			intercept: answer("app.wasm", func(w http.ResponseWriter, r *http.Request) {
				w.Header().Set("Content-Type", "text/plain")
				_, _ = w.Write(program(t, filepath.Base(r.URL.Path)))
			})},
		{name: "no streaming", before: "delete WebAssembly.compileStreaming"},
		{name: "no streaming and no DecompressionStream", before: "delete WebAssembly.compileStreaming; delete window.DecompressionStream", allow: "preload"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := NewSite(t)
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

func TestFaultAfterStart(t *testing.T) {
	s := NewSite(t)
	p := s.NewPage(t)
	p.Allow("exit code")          // of Go
	p.Allow("the program ended")  // start.js
	p.Allow("already exited")     // keys that come later
	p.Allow("index out of range") // the fault itself
	p.Allow("[recovered")         // as go-app hands it on
	p.Allow("goroutine")          // Go's trace
	p.Open("/measure/")
	name := Eval[[]string](p, textFields)[0]
	p.Fill(name, "80,5")
	// go-app takes an argument that isn't there, and panics.
	Eval[bool](p, `(window.goappNav(), true)`)
	said := p.WaitFailed()
	assert.Contains(t, said, "stopped by a fault of its own")
	assert.Contains(t, said, "What you typed is still in the fields")
	assert.Equal(t, "80,5", p.Field(name))
}
