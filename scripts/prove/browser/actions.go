package browser

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"time"

	"github.com/chromedp/chromedp/kb"
)

// What WebDriver and WebDriver BiDi have in common.

// asText makes a script's value one that both protocols hand over as it is: JSON.
func asText(expression string) string {
	return "Promise.resolve().then(() => (" + expression + ")).then((value) => JSON.stringify(value))"
}

// webDriverKeys are the names that WebDriver has for keys that write nothing.
var webDriverKeys = strings.NewReplacer(kb.Tab, "\uE004", kb.Enter, "\uE006", kb.Delete, "\uE017", kb.ArrowUp, "\uE013", kb.ArrowDown, "\uE015", kb.End, "\uE010")

const control = "\uE009"

type keyAction struct {
	Type  string `json:"type"`
	Value string `json:"value"`
}

// sequence is one device's part in what both protocols call actions.
type sequence struct {
	Type    string `json:"type"`
	ID      string `json:"id"`
	Actions []any  `json:"actions"`
}

// typing presses one key after the other.
func typing(keys string) []sequence {
	s := sequence{Type: "key", ID: "keyboard"}
	for _, key := range webDriverKeys.Replace(keys) {
		s.Actions = append(s.Actions, keyAction{"keyDown", string(key)}, keyAction{"keyUp", string(key)})
	}
	return []sequence{s}
}

// chord presses a key with Ctrl.
func chord(key string) []sequence {
	return []sequence{{Type: "key", ID: "keyboard", Actions: []any{
		keyAction{"keyDown", control}, keyAction{"keyDown", key}, keyAction{"keyUp", key}, keyAction{"keyUp", control},
	}}}
}

// middle brings an element to where nothing lies over it, and gives its middle (of
// words that go over two lines, that of the first).
func middle(selector string) string {
	return `(() => {
		const e = document.querySelector(` + strconv.Quote(selector) + `);
		const place = () => {
			const box = e.getClientRects()[0];
			return [box.left + box.width / 2, box.top + box.height / 2].map(Math.floor);
		};
		if (!e.contains(document.elementFromPoint(...place()))) e.scrollIntoView({block: "center", behavior: "instant"});
		return place();
	})()`
}

// clickOn clicks on the middle of an element, in a browser that performs actions.
func clickOn(t interface {
	eval(expression string) ([]byte, error)
	perform(actions []sequence) error
}, selector string, held time.Duration) error {
	place, err := t.eval(middle(selector))
	if err != nil {
		return err
	}
	actions, err := clicking(place, held)
	if err != nil {
		return err
	}
	return t.perform(actions)
}

// placeOf is where a script has said that the middle is.
func placeOf(place []byte) (at [2]float64, err error) {
	if err := json.Unmarshal(place, &at); err != nil {
		return at, fmt.Errorf("no place to click: %w", err)
	}
	return at, nil
}

// clicking clicks at a place, with the button held down for a while.
func clicking(place []byte, held time.Duration) ([]sequence, error) {
	at, err := placeOf(place)
	if err != nil {
		return nil, err
	}
	type move struct {
		Type string  `json:"type"`
		X    float64 `json:"x"`
		Y    float64 `json:"y"`
	}
	type pause struct {
		Type     string `json:"type"`
		Duration int64  `json:"duration"`
	}
	type button struct {
		Type   string `json:"type"`
		Button int    `json:"button"`
	}
	return []sequence{{Type: "pointer", ID: "mouse", Actions: []any{
		move{"pointerMove", at[0], at[1]}, button{"pointerDown", 0}, pause{"pause", held.Milliseconds()}, button{"pointerUp", 0},
	}}}, nil
}
