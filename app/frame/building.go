package frame

import "striderule/app/browser"

// The page is built beside the one that shows, and takes its place when it is
// whole. That takes longer than a browser may be kept from answering, so it is
// done in slices: between components the program sleeps for a moment, in which
// keys and touches go to the page that still shows. Nothing of this applies once
// it has started.
var building struct {
	on    bool
	since float64 // when the slice began, by the page's clock, in ms
}

// IsBuilding reports whether the page that shows is not yet the one that is built.
func IsBuilding() bool { return building.on }

// BeginBuilding begins the first slice.
func BeginBuilding() { building.on, building.since = true, browser.Clock() }

// slice is how long the browser is kept busy at a time. What follows a piece of
// work that ends just before comes on top.
const slice = 5 // ms

// Yield is called by what a page is made of, when it is rendered.
func Yield() {
	if building.on && browser.Clock()-building.since > slice {
		Rest()
	}
}

// Rest lets the browser answer for a moment.
func Rest() {
	await(browser.NextTurn)
	building.since = browser.Clock()
}

// await waits until what is begun says that it is over.
func await(begin func(over func())) {
	ended := make(chan struct{})
	begin(func() { close(ended) })
	<-ended
}

// Finish is called by the last component of every page. All that is left is done
// in one slice, at whose beginning web/start.js notes what was typed, to put it back
// at its end. It puts that off while a word is half composed.
func Finish() {
	if !building.on {
		return
	}
	Rest()
	for !browser.Swap() {
		await(func(over func()) { browser.After(50, over) })
	}
	building.on = false
}
