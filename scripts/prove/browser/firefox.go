package browser

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"striderule/scripts/prove/browser/bidi"
)

// firefoxPreferences let the tests do what a person would be asked about.
const firefoxPreferences = `
user_pref("focusmanager.testmode", true); // each window has the focus, as each phone has
user_pref("browser.download.folderList", 2);
user_pref("browser.download.dir", %q);
user_pref("browser.download.always_ask_before_handling_new_types", false);
user_pref("layout.css.prefers-color-scheme.content-override", 1); // light
user_pref("ui.prefersReducedMotion", 0);
user_pref("ui.useOverlayScrollbars", 1); // as on phones: they take no room
user_pref("browser.display.use_system_colors", false);
`

// firefox is driven by WebDriver BiDi, which it speaks itself.
type firefox struct {
	process *exec.Cmd
	profile string
	conn    *bidi.Conn

	mu   sync.Mutex
	tabs map[string]*firefoxTab // by context
}

func newFirefox() (engine, error) {
	path, err := lookPath("firefox-esr", "firefox")
	if err != nil {
		return nil, errors.New("no Firefox found: install it (Debian: apt-get install firefox-esr)")
	}
	profile, err := os.MkdirTemp("", "striderule-firefox-")
	if err != nil {
		return nil, err
	}
	f := &firefox{profile: profile, tabs: map[string]*firefoxTab{}}
	if err := f.start(path); err != nil {
		f.end()
		return nil, err
	}
	return f, nil
}

func (f *firefox) start(path string) error {
	if err := os.MkdirAll(f.downloads(), 0o755); err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(f.profile, "user.js"), fmt.Appendf(nil, firefoxPreferences, f.downloads()), 0o644); err != nil {
		return err
	}
	port, err := freePort()
	if err != nil {
		return err
	}
	f.process = bound(exec.Command(path, "--headless", "--no-remote", "--profile", f.profile,
		fmt.Sprintf("--remote-debugging-port=%d", port), "--remote-allow-origins="+bidi.Origin))
	f.process.Env = append(os.Environ(), "HOME="+f.profile)
	if err := f.process.Start(); err != nil {
		return err
	}
	if err := retry(time.Minute, func() (err error) {
		f.conn, err = bidi.Dial(fmt.Sprintf("ws://127.0.0.1:%d/session", port), f.see)
		return err
	}); err != nil {
		return err
	}
	if _, err := command[any](f, "session.new", map[string]any{"capabilities": map[string]any{}}); err != nil {
		return err
	}
	_, err = command[any](f, "session.subscribe", map[string]any{"events": []string{"log.entryAdded", "network.beforeRequestSent", "network.responseCompleted"}})
	return err
}

func (f *firefox) downloads() string { return filepath.Join(f.profile, "downloads") }

func (f *firefox) end() {
	if f.conn != nil {
		_, _ = command[any](f, "browser.close", struct{}{})
		f.conn.Close()
	}
	stop(f.process)
	_ = os.RemoveAll(f.profile)
}

func command[T any](f *firefox, method string, params any) (T, error) {
	ctx, cancel := context.WithTimeout(context.Background(), commandLimit)
	defer cancel()
	return bidi.Call[T](ctx, f.conn, method, params)
}

// see hands events to the watches of the tabs that they come from. What a worker
// asks for has no tab: it is told to all.
func (f *firefox) see(method string, params json.RawMessage) {
	var e struct {
		Context  string
		Source   struct{ Context string }
		Type     string
		Level    string
		Text     string
		Request  struct{ URL string }
		Response struct {
			Status int
			URL    string
		}
	}
	if err := json.Unmarshal(params, &e); err != nil {
		return
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	for context, t := range f.tabs {
		if from := e.Context + e.Source.Context; from != "" && from != context {
			continue
		}
		switch method {
		case "log.entryAdded":
			if (e.Level == "error" || e.Level == "warn") && !strings.HasPrefix(e.Text, leftBehind) {
				t.log.note("%s %s: %s", e.Type, e.Level, e.Text)
			}
		case "network.beforeRequestSent":
			if e.Context != "" || !f.ours(e.Request.URL) {
				t.log.requested(e.Request.URL)
			}
		case "network.responseCompleted":
			if e.Context != "" && e.Response.Status >= 400 {
				t.log.note("browser error: answered %d: %s", e.Response.Status, e.Response.URL)
			}
		}
	}
}

// leftBehind is what Firefox says now and then, without an address, when a page that
// the worker serves is left for the next: nothing is missing then, as the tests of what
// is kept offline see.
const leftBehind = "Failed to load ‘’. A ServiceWorker intercepted the request"

// ours says whether an address is of the site of any tab.
func (f *firefox) ours(url string) bool {
	for _, t := range f.tabs {
		if strings.HasPrefix(url, t.log.root) {
			return true
		}
	}
	return false
}

func (f *firefox) open(w *watch, _ bool) (tab, error) {
	user, err := command[struct{ UserContext string }](f, "browser.createUserContext", struct{}{})
	if err != nil {
		return nil, err
	}
	t, err := f.openFor(user.UserContext, w)
	if err != nil {
		return nil, err
	}
	return t, nil
}

// openFor opens a tab for one of the browser's "user contexts", which share nothing.
func (f *firefox) openFor(user string, w *watch) (*firefoxTab, error) {
	// A window, because tabs that are not in front don't paint.
	made, err := command[struct{ Context string }](f, "browsingContext.create", map[string]any{"type": "window", "userContext": user})
	if err != nil {
		return nil, err
	}
	t := &firefoxTab{firefox: f, user: user, context: made.Context, log: w}
	f.mu.Lock()
	f.tabs[t.context] = t
	f.mu.Unlock()
	return t, t.before(tellViolations)
}

// tellViolations has what the page's policy stopped stand in the log.
const tellViolations = `document.addEventListener("securitypolicyviolation", (e) => console.error("policy violated: " + e.violatedDirective + " " + e.blockedURI));`
