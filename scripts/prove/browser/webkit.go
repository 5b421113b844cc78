package browser

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"striderule/scripts/prove/browser/webdriver"
)

// webkit is GTK's small browser for WebKit, on a screen of its own that nobody sees.
// Each tab is a browser of its own: its driver has one session at a time, which keeps
// nothing.
type webkit struct {
	driver, browser string
	home            string // settings and what is saved
	screen          *exec.Cmd
	display         string
}

// smallWindow takes the browser's own bar together: a phone is narrower.
const smallWindow = `* { font-size: 1px; padding: 0; margin: 0; border: 0; min-width: 0; min-height: 0; }
image { -gtk-icon-transform: scale(0.01); }
`

func newWebKit() (engine, error) {
	const install = " found: install it (Debian: apt-get install webkit2gtk-driver xvfb)"
	w := &webkit{}
	var err error
	if w.driver, err = lookPath("WebKitWebDriver"); err != nil {
		return nil, errors.New("no WebKitWebDriver" + install)
	}
	// Where distributions put it; the newest comes last.
	browsers, _ := filepath.Glob("/usr/lib*/*/webkit2gtk-4*/MiniBrowser")
	more, _ := filepath.Glob("/usr/lib*/webkit2gtk-4*/MiniBrowser")
	if browsers = append(browsers, more...); len(browsers) == 0 {
		return nil, errors.New("no MiniBrowser of WebKit" + install)
	}
	w.browser = browsers[len(browsers)-1]
	if w.home, err = os.MkdirTemp("", "striderule-webkit-"); err != nil {
		return nil, err
	}
	if err := w.start(); err != nil {
		w.end()
		return nil, err
	}
	return w, nil
}

func (w *webkit) start() error {
	settings := filepath.Join(w.home, ".config", "gtk-3.0")
	if err := os.MkdirAll(settings, 0o755); err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(settings, "gtk.css"), []byte(smallWindow), 0o644); err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(w.home, ".config", "user-dirs.dirs"), []byte(`XDG_DOWNLOAD_DIR="$HOME/downloads"`+"\n"), 0o644); err != nil {
		return err
	}
	x, err := lookPath("Xvfb")
	if err != nil {
		return errors.New("no Xvfb found, the screen for WebKit: install it (Debian: apt-get install xvfb)")
	}
	w.screen = bound(exec.Command(x, "-displayfd", "1", "-screen", "0", "1400x1100x24", "-nolisten", "tcp"))
	out, err := w.screen.StdoutPipe()
	if err != nil {
		return err
	}
	if err := w.screen.Start(); err != nil {
		return err
	}
	var number int
	if _, err := fmt.Fscan(out, &number); err != nil {
		return fmt.Errorf("no screen from Xvfb: %w", err)
	}
	w.display = fmt.Sprintf(":%d", number)
	return nil
}

func (w *webkit) downloads() string { return filepath.Join(w.home, "downloads") }

func (w *webkit) end() {
	stop(w.screen)
	_ = os.RemoveAll(w.home)
}

// environment is that of a browser with no settings but ours.
func (w *webkit) environment() []string {
	env := []string{"HOME=" + w.home, "DISPLAY=" + w.display}
	for _, v := range os.Environ() {
		if name, _, _ := strings.Cut(v, "="); !strings.HasPrefix(name, "XDG_") && name != "HOME" && name != "DISPLAY" && name != "WAYLAND_DISPLAY" {
			env = append(env, v)
		}
	}
	return env
}

func (w *webkit) open(log *watch, _ bool) (tab, error) {
	t := &webkitTab{webkit: w, log: log}
	if err := t.start(); err != nil {
		t.close()
		return nil, err
	}
	return t, nil
}

func (t *webkitTab) start() (err error) {
	if t.proxy, err = newProxy(t.log); err != nil {
		return err
	}
	port, err := freePort()
	if err != nil {
		return err
	}
	t.process = bound(exec.Command(t.driver, fmt.Sprintf("--port=%d", port)))
	t.process.Env = t.environment()
	if err := t.process.Start(); err != nil {
		return err
	}
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	driver := fmt.Sprintf("http://127.0.0.1:%d", port)
	if err := retry(time.Minute, func() error {
		if !webdriver.Ready(ctx, driver) {
			return errors.New("WebKitWebDriver is not ready")
		}
		return nil
	}); err != nil {
		return err
	}
	if t.session, err = webdriver.New(ctx, driver, map[string]any{
		"pageLoadStrategy":         "none",
		"webkitgtk:browserOptions": map[string]any{"binary": t.browser, "args": []string{"--automation"}},
		"proxy":                    map[string]any{"proxyType": "manual", "httpProxy": t.proxy.address, "sslProxy": t.proxy.address},
	}); err != nil {
		return err
	}
	_, err = post[any](t, "/timeouts", map[string]any{"script": commandLimit.Milliseconds(), "pageLoad": Patience.Milliseconds()})
	return err
}
