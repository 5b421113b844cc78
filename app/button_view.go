package main

import "github.com/maxence-charriere/go-app/v10/pkg/app"

// button is one that does something. The id tells go-app that it is another one
// where another stood before.
func button(id, text string, do func()) app.HTMLButton {
	return app.Button().Type("button").ID(id).Text(text).OnClick(func(app.Context, app.Event) { do() }, app.EventScope(id))
}
