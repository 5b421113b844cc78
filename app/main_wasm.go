//go:build wasm

package main

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// main waits until web/start.js calls goappStart: loading and starting Go are
// tasks of their own then, between which the browser answers to touch and keys.
// Building the page takes several: see building.
func main() {
	start := make(chan struct{})
	app.Window().Set("goappStart", app.FuncOf(func(app.Value, []app.Value) any {
		close(start)
		return nil
	}))
	<-start
	beginBuilding()
	rest()
	for _, p := range sitePages() {
		app.Route(p.Path, p.New)
		// Two other names that hosts have for the same page.
		app.Route(p.Path+"index.html", p.New)
		if p.Path != "/" {
			app.Route(strings.TrimSuffix(p.Path, "/"), p.New)
		}
	}
	breathe()
	app.RunWhenOnBrowser()
}
