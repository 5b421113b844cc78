package browser

import (
	"fmt"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
)

// watch notes everything that a page must not do.
type watch struct {
	root string

	mu      sync.Mutex
	seen    []string
	allowed []string
}

func newWatch(root string) *watch { return &watch{root: root} }

// see is called by Chromium for each event of the tab; it must be quick.
func (w *watch) see(event any) {
	switch e := event.(type) {
	case *runtime.EventConsoleAPICalled:
		if e.Type == runtime.ConsoleAPICalledTypeError || e.Type == runtime.ConsoleAPICalledTypeWarning || e.Type == runtime.ConsoleAPICalledTypeAssert {
			var words []string
			for _, a := range e.Args {
				words = append(words, strings.TrimSpace(strings.Trim(string(a.Value), `"`)+" "+a.Description))
			}
			w.note("console %s: %s", e.Type, strings.Join(words, " "))
		}
	case *runtime.EventExceptionThrown:
		text := e.ExceptionDetails.Text
		if x := e.ExceptionDetails.Exception; x != nil {
			text += " " + x.Description
		}
		w.note("exception: %s", text)
	case *log.EventEntryAdded:
		// The browser's own: missing files, violations of the policy.
		if e.Entry.Level == log.EntryLevelError || e.Entry.Level == log.EntryLevelWarning {
			w.note("browser %s: %s %s", e.Entry.Level, e.Entry.Text, e.Entry.URL)
		}
	case *network.EventRequestWillBeSent:
		w.requested(e.Request.URL)
	}
}

// requested notes a request to anywhere but the site's folder.
func (w *watch) requested(url string) {
	for _, ours := range []string{w.root, "data:", "about:"} {
		if strings.HasPrefix(url, ours) {
			return
		}
	}
	w.note("request outside the site: %s", url)
}

func (w *watch) note(format string, args ...any) {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.seen = append(w.seen, fmt.Sprintf(format, args...))
}

func (w *watch) allow(text string) {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.allowed = append(w.allowed, text)
}

func (w *watch) problems() []string {
	w.mu.Lock()
	defer w.mu.Unlock()
	var left []string
	for _, s := range w.seen {
		ok := false
		for _, a := range w.allowed {
			ok = ok || strings.Contains(s, a)
		}
		if !ok {
			left = append(left, s)
		}
	}
	return left
}

func (w *watch) report(t testing.TB) {
	for _, problem := range w.problems() {
		t.Errorf("%s", problem)
	}
}
