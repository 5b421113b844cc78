package browser

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"reflect"
	"time"
)

// Name is the browser that is tested, by the environment variable STRIDERULE_BROWSER:
// "chromium", which is meant where it is not set, "firefox" or "webkit".
func Name() string {
	if name := os.Getenv("STRIDERULE_BROWSER"); name != "" {
		return name
	}
	return "chromium"
}

// An engine is a running browser.
type engine interface {
	// open opens a tab, and has the watch told what it does. It has never seen anything, but
	// for other sites where the one that it is for is unseen.
	open(w *watch, unseen bool) (tab, error)
	end()
}

// engines start the browsers that tests can run in.
var engines = map[string]func() (engine, error){
	"chromium": newChromium,
	"firefox":  newFirefox,
	"webkit":   newWebKit,
}

// launch starts the browser of Name.
func launch() (engine, error) {
	start := engines[Name()]
	if start == nil {
		return nil, fmt.Errorf("STRIDERULE_BROWSER=%s: write chromium, firefox or webkit", Name())
	}
	return start()
}

// commandLimit is how long a browser may take for one command.
const commandLimit = 3 * time.Minute

// tab is what a Page needs of a browser. What one offers no way to do is a lack,
// and skips the test.
type tab interface {
	viewport(width, height int64, scale float64) error
	before(script string) error
	navigate(url string) error
	reload() error
	eval(expression string) ([]byte, error) // as JSON, of a promise what it resolves to
	keys(keys string) error
	chord(key string) error                          // with Ctrl: "c" copies, "v" pastes
	click(selector string, held time.Duration) error // held down for so long
	prefer(feature, value string) error
	screenshot(full bool) ([]byte, error)
	saveTo(dir string) (string, error) // the folder that it really goes to
	beside() (tab, error)              // another tab of the same person: storage and worker are the same
	collect()                          // tells the watch what it was not told yet
	close()
}

// A lack says what a browser gives no way to do.
type lack string

func (l lack) Error() string { return string(l) }

// unlacked skips the test if the error is a lack, and returns any other.
func (p *Page) unlacked(err error) error {
	if l, ok := errors.AsType[lack](err); ok {
		p.t.Helper()
		p.t.Skipf("skipped in %s: %s", Name(), l)
	}
	return err
}

// Chromium returns the tab for chromedp. In other browsers it skips the test, which
// needs what it names: "a slow processor".
func (p *Page) Chromium(needs string) context.Context {
	p.t.Helper()
	c, ok := p.tab.(*chromiumTab)
	if !ok {
		p.t.Skipf("skipped in %s: only Chromium's own protocol gives %s", Name(), needs)
	}
	c.strange = true
	return c.ctx
}

// decode reads the JSON of a value. No value is an error where T has none.
func decode[T any](data []byte) (T, error) {
	var v T
	if len(data) == 0 || string(data) == "null" {
		switch reflect.TypeFor[T]().Kind() {
		case reflect.Pointer, reflect.Map, reflect.Slice, reflect.Interface:
			return v, nil
		}
		return v, errors.New("it has no value")
	}
	return v, json.Unmarshal(data, &v)
}

// preferred is nil where a page sees already that the person prefers this.
func preferred(t tab, feature, value string) error {
	is, err := t.eval(`matchMedia("(` + feature + `: ` + value + `)").matches`)
	if err == nil && string(is) != "true" {
		err = lack("its protocol does not set what the person prefers (" + feature + ": " + value + ")")
	}
	return err
}

// leave departs from the document and waits until the next is there, with all that
// belongs to it.
func leave(t tab, depart func() error) error {
	if _, err := t.eval(`window.isLeft = true`); err != nil {
		return err
	}
	if err := depart(); err != nil {
		return err
	}
	return retry(Patience, func() error {
		done, err := t.eval(`!window.isLeft && document.readyState === "complete"`)
		if err == nil && string(done) != "true" {
			err = errors.New("the page does not load")
		}
		return err
	})
}
