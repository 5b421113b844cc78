package main

import (
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// The page is built beside the one that shows, and takes its place when it is
// whole. That takes longer than a browser may be kept from answering, so it is
// done in slices: between components the program sleeps for a moment, in which
// keys and touches go to the page that still shows. Nothing of this applies once
// it has started.
var building struct {
	on    bool
	since time.Time // when the slice began
}

// slice is how long the browser is kept busy at a time. What follows a piece of
// work that ends just before comes on top.
const slice = 20 * time.Millisecond

// breathe is called by what a page is made of, when it is rendered.
func breathe() {
	if building.on && time.Since(building.since) > slice {
		rest()
	}
}

// rest sleeps. A page that nobody sees need not answer, and browsers let its timers
// wait for a second each.
func rest() {
	if !app.Window().Get("document").Get("hidden").Bool() {
		time.Sleep(time.Millisecond)
	}
	building.since = time.Now()
}

// finish is called by the last component of every page. All that is left is done
// in one slice, at whose beginning web/start.js notes what was typed, to put it back
// at its end. It puts that off while a word is half composed.
func finish() {
	if !building.on {
		return
	}
	rest()
	for !app.Window().Call("goappSwap").Bool() {
		time.Sleep(50 * time.Millisecond)
	}
	building.on = false
}
