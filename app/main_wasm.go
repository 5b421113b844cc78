//go:build wasm

package main

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/site"
)

// main waits until web/start.js calls striderule.start: what is before that is a task of its
// own. Building the page takes several: see building.
func main() {
	for _, p := range sitePages() {
		for _, name := range site.NamesOf(p.Path) {
			app.Route(name, p.New)
		}
	}
	start := make(chan struct{})
	browser.OnStart(func() { close(start) })
	<-start
	frame.BeginBuilding()
	frame.Rest()
	app.RunWhenOnBrowser()
}
