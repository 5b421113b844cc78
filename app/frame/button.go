package frame

import "github.com/maxence-charriere/go-app/v10/pkg/app"

// acts are what buttons do, by their ids, as last rendered.
var acts = map[string]func(){}

// Button is one that does something. The id tells go-app that it is another one
// where another stood before. While it is the same, go-app keeps the handler that it had
// first, with all that this knew: so it looks up what the button does now.
func Button(id, text string, do func()) app.HTMLButton {
	acts[id] = do
	return app.Button().Type("button").ID(id).Text(text).OnClick(func(app.Context, app.Event) { Press(id) }, app.EventScope(id))
}

// Press does what the button of an id does now.
func Press(id string) { acts[id]() }

// NoticeClass is the class of the place where a page says what was done last; without a word it
// takes no room.
func NoticeClass(said string) string {
	if said == "" {
		return "log-notice none"
	}
	return "log-notice"
}
