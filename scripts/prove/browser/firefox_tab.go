package browser

import (
	"encoding/base64"
	"errors"
	"time"
)

type firefoxTab struct {
	*firefox
	user    string // see openFor
	context string
	log     *watch
	guest   bool // the user is another tab's
}

func (t *firefoxTab) close() {
	t.mu.Lock()
	delete(t.tabs, t.context)
	t.mu.Unlock()
	if t.guest {
		_ = t.do("browsingContext.close", map[string]any{})
		return
	}
	_, _ = command[any](t.firefox, "browser.removeUserContext", map[string]any{"userContext": t.user})
}

func (t *firefoxTab) beside() (tab, error) {
	other, err := t.openFor(t.user, t.log)
	if err != nil {
		return nil, err
	}
	other.guest = true
	return other, nil
}

func (t *firefoxTab) collect() {} // events come by themselves

// do sends a command about the tab.
func (t *firefoxTab) do(method string, params map[string]any) error {
	params["context"] = t.context
	_, err := command[any](t.firefox, method, params)
	return err
}

func (t *firefoxTab) viewport(width, height int64, scale float64) error {
	return t.do("browsingContext.setViewport", map[string]any{"viewport": map[string]any{"width": width, "height": height}, "devicePixelRatio": scale})
}

func (t *firefoxTab) before(script string) error {
	_, err := command[any](t.firefox, "script.addPreloadScript", map[string]any{"functionDeclaration": "() => {" + script + "}", "contexts": []string{t.context}})
	return err
}

// Asked to wait for the page, Firefox 140 never answers, once in some hundred times.
func (t *firefoxTab) navigate(url string) error {
	return leave(t, func() error {
		return t.do("browsingContext.navigate", map[string]any{"url": url, "wait": "none"})
	})
}

func (t *firefoxTab) reload() error {
	return leave(t, func() error { return t.do("browsingContext.reload", map[string]any{"wait": "none"}) })
}

func (t *firefoxTab) eval(expression string) ([]byte, error) {
	r, err := command[struct {
		Type             string
		Result           struct{ Value string }
		ExceptionDetails struct{ Text string }
	}](t.firefox, "script.evaluate", map[string]any{"expression": asText(expression), "target": map[string]any{"context": t.context}, "awaitPromise": true})
	if err == nil && r.Type != "success" {
		err = errors.New(r.ExceptionDetails.Text)
	}
	return []byte(r.Result.Value), err
}

func (t *firefoxTab) perform(actions []sequence) error {
	return t.do("input.performActions", map[string]any{"actions": actions})
}

func (t *firefoxTab) keys(keys string) error { return t.perform(typing(keys)) }
func (t *firefoxTab) chord(key string) error { return t.perform(chord(key)) }

func (t *firefoxTab) click(selector string, held time.Duration) error {
	return clickOn(t, selector, held)
}

func (t *firefoxTab) prefer(feature, value string) error { return preferred(t, feature, value) }

func (t *firefoxTab) screenshot(full bool) ([]byte, error) {
	origin := "viewport"
	if full {
		origin = "document"
	}
	r, err := command[struct{ Data string }](t.firefox, "browsingContext.captureScreenshot", map[string]any{"context": t.context, "origin": origin})
	if err != nil {
		return nil, err
	}
	return base64.StdEncoding.DecodeString(r.Data)
}

func (t *firefoxTab) saveTo(string) (string, error) {
	return emptied(t.downloads())
}
