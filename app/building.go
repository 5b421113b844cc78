package main

import "github.com/maxence-charriere/go-app/v10/pkg/app"

// The page is built beside the one that shows, and takes its place when it is
// whole. That takes longer than a browser may be kept from answering, so it is
// done in slices: between components the program sleeps for a moment, in which
// keys and touches go to the page that still shows. Nothing of this applies once
// it has started.
var building struct {
	on    bool
	since float64 // when the slice began, by the page's clock, in ms
}

func beginBuilding() { building.on, building.since = true, clock() }

func clock() float64 { return app.Window().Get("performance").Call("now").Float() }

// slice is how long the browser is kept busy at a time. What follows a piece of
// work that ends just before comes on top.
const slice = 5 // ms

// breathe is called by what a page is made of, when it is rendered.
func breathe() {
	if building.on && clock()-building.since > slice {
		rest()
	}
}

// rest lets the browser answer for a moment.
func rest() {
	await(func(over app.Func) { app.Window().Call("goappRest", over) })
	building.since = clock()
}

// await waits until the browser has called a function that it is told of.
func await(tell func(over app.Func)) {
	called := make(chan struct{})
	over := app.FuncOf(func(app.Value, []app.Value) any {
		close(called)
		return nil
	})
	tell(over)
	<-called
	over.Release()
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
		await(func(over app.Func) { app.Window().Call("setTimeout", over, 50) })
	}
	building.on = false
}
