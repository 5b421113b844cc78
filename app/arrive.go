package main

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// arrival knows how the page that is about to show was reached. go-app neither
// scrolls nor moves the focus when it changes pages; after Back and Forward the
// browser restores the place by itself.
var arrival struct {
	watching  bool
	shownPath string
	back      bool
	ours      bool     // a popstate event that we send ourselves
	pasted    string   // the fragment of a pasted link that is about to open
	mended    []string // in it
}

// arrived is called by every page when it is navigated to: on another page
// than before it goes to the top and hands the focus to the heading. What the page
// before offered ends.
func arrived(ctx app.Context) {
	offered = offers{}
	if !arrival.watching {
		arrival.watching = true
		listen()
		app.Window().Call("addEventListener", "popstate", app.FuncOf(func(app.Value, []app.Value) any {
			arrival.back = !arrival.ours
			return nil
		}))
	}
	path := ctx.Page().URL().Path
	moved := arrival.shownPath != "" && arrival.shownPath != path
	if moved {
		app.Window().Call("announce", "") // what was said was about the other page
	}
	if moved {
		shown := strings.TrimSuffix(app.Window().Get("location").Get("pathname").String(), "index.html")
		for _, p := range sitePages() {
			if root()+p.Path == shown {
				app.Window().Get("document").Set("title", p.Title)
			}
		}
	}
	if moved && !arrival.back {
		focus("title") // which may scroll to it
		app.Window().Call("scrollTo", 0, 0)
	}
	arrival.shownPath, arrival.back = path, false
}

// focus moves the focus to an element, if it is there.
func focus(id string) {
	if e := app.Window().GetElementByID(id); e.Truthy() {
		e.Call("focus")
	}
}
