package browser

import (
	"context"
	"encoding/base64"
	"encoding/json"
	"errors"
	"os/exec"
	"time"

	"striderule/scripts/prove/browser/webdriver"
)

type webkitTab struct {
	*webkit
	log     *watch
	proxy   *proxy
	process *exec.Cmd
	session *webdriver.Session

	window string  // of several: see beside
	front  *string // the window that the driver's commands go to, where there are several
	guest  bool    // in the browser of another tab
}

func post[T any](t *webkitTab, path string, params any) (T, error) {
	ctx, cancel := context.WithTimeout(context.Background(), commandLimit+time.Second)
	defer cancel()
	if err := t.toFront(ctx); err != nil {
		var none T
		return none, err
	}
	return webdriver.Post[T](ctx, t.session, path, params)
}

// toFront has the driver's commands go to this tab.
func (t *webkitTab) toFront(ctx context.Context) error {
	if t.front == nil || *t.front == t.window {
		return nil
	}
	if _, err := webdriver.Post[any](ctx, t.session, "/window", map[string]any{"handle": t.window}); err != nil {
		return err
	}
	*t.front = t.window
	return nil
}

// beside opens another window, because tabs that are not in front don't paint.
func (t *webkitTab) beside() (tab, error) {
	if t.front == nil {
		ctx, cancel := context.WithTimeout(context.Background(), commandLimit)
		defer cancel()
		handle, err := webdriver.Get[string](ctx, t.session, "/window")
		if err != nil {
			return nil, err
		}
		front := handle
		t.window, t.front = handle, &front
	}
	made, err := post[struct{ Handle string }](t, "/window/new", map[string]any{"type": "window"})
	if err != nil {
		return nil, err
	}
	other := *t
	other.window, other.guest = made.Handle, true
	return &other, nil
}

func (t *webkitTab) close() {
	if t.guest {
		return // it ends with its host
	}
	if t.session != nil {
		ctx, cancel := context.WithTimeout(context.Background(), 5*time.Second)
		defer cancel()
		_ = t.session.End(ctx)
	}
	stop(t.process)
	if t.proxy != nil {
		t.proxy.close()
	}
}

// viewport sets the size of the window so that the page has what is wanted.
func (t *webkitTab) viewport(width, height int64, scale float64) error {
	if scale != 1 {
		return lack("WebDriver sets no dots to a CSS pixel")
	}
	type rect struct {
		X      int64 `json:"x"`
		Y      int64 `json:"y"`
		Width  int64 `json:"width"`
		Height int64 `json:"height"`
	}
	window := rect{Width: width, Height: height}
	return retry(Patience, func() error {
		if _, err := post[any](t, "/window/rect", window); err != nil {
			return err
		}
		data, err := t.eval(`[innerWidth, innerHeight]`)
		if err != nil {
			return err
		}
		var size [2]int64
		if err := json.Unmarshal(data, &size); err != nil {
			return err
		}
		if size == [2]int64{width, height} {
			return nil
		}
		window.Height = height
		if size[1] < height { // less the browser's bar
			window.Height += height - size[1]
		}
		return errors.New("the window does not take the size")
	})
}

// before has the proxy put the script into the pages: WebDriver has no command for it.
func (t *webkitTab) before(script string) error {
	t.proxy.before(script)
	return nil
}

// The driver does not wait for pages (see start): it would with every command.
func (t *webkitTab) navigate(url string) error {
	t.collect()
	return leave(t, func() error {
		_, err := post[any](t, "/url", map[string]any{"url": url})
		return err
	})
}

func (t *webkitTab) reload() error {
	t.collect()
	return leave(t, func() error {
		_, err := post[any](t, "/refresh", struct{}{})
		return err
	})
}

func (t *webkitTab) eval(expression string) ([]byte, error) {
	r, err := post[struct{ Value, Fault *string }](t, "/execute/async", map[string]any{"args": []any{}, "script": `
		const done = arguments[arguments.length - 1];
		` + asText(expression) + `.then((value) => done({Value: value ?? null}), (fault) => done({Fault: String(fault)}));`})
	switch {
	case err != nil:
		return nil, err
	case r.Fault != nil:
		return nil, errors.New(*r.Fault)
	case r.Value == nil:
		return nil, nil
	}
	return []byte(*r.Value), nil
}

func (t *webkitTab) perform(actions []sequence) error {
	_, err := post[any](t, "/actions", map[string]any{"actions": actions})
	return err
}

func (t *webkitTab) keys(keys string) error { return t.perform(typing(keys)) }
func (t *webkitTab) chord(key string) error { return t.perform(chord(key)) }

func (t *webkitTab) click(selector string, held time.Duration) error {
	return clickOn(t, selector, held)
}

func (t *webkitTab) prefer(feature, value string) error { return preferred(t, feature, value) }

func (t *webkitTab) screenshot(full bool) ([]byte, error) {
	if full {
		return nil, lack("its driver takes pictures of what shows alone")
	}
	ctx, cancel := context.WithTimeout(context.Background(), commandLimit)
	defer cancel()
	if err := t.toFront(ctx); err != nil {
		return nil, err
	}
	data, err := webdriver.Get[string](ctx, t.session, "/screenshot")
	if err != nil {
		return nil, err
	}
	return base64.StdEncoding.DecodeString(data)
}

func (t *webkitTab) saveTo(string) (string, error) {
	return emptied(t.downloads())
}

// collect reads what watchWithin has noted in the page.
func (t *webkitTab) collect() {
	data, err := t.eval(`(() => {
		const kept = sessionStorage.getItem("` + notes + `") || "[]";
		sessionStorage.removeItem("` + notes + `");
		return JSON.parse(kept);
	})()`)
	var seen []string
	if err != nil || json.Unmarshal(data, &seen) != nil {
		return // an empty tab, which has no storage
	}
	for _, s := range seen {
		t.log.note("%s", s)
	}
}

// notes is where the page keeps what went wrong until it is collected.
const notes = "striderule test notes"

// watchWithin notes in the page what other browsers tell by themselves.
const watchWithin = `(() => {
	const get = Storage.prototype.getItem, set = Storage.prototype.setItem, store = sessionStorage;
	const note = (text) => set.call(store, "` + notes + `", JSON.stringify([...JSON.parse(get.call(store, "` + notes + `") || "[]"), text]));
	for (const kind of ["error", "warn", "assert"]) {
		const its = console[kind];
		console[kind] = (...words) => {
			if (kind !== "assert" || !words[0]) note("console " + kind + ": " + words.map(String).join(" "));
			its.apply(console, words);
		};
	}
	addEventListener("error", (e) => { if (e instanceof ErrorEvent) note("exception: " + e.message + " " + (e.error?.stack || "")); }, true);
	addEventListener("unhandledrejection", (e) => note("exception: " + e.reason + " " + (e.reason?.stack || "")));
	document.addEventListener("securitypolicyviolation", (e) => note("policy violated: " + e.violatedDirective + " " + e.blockedURI));
})();`
