package main

import "github.com/maxence-charriere/go-app/v10/pkg/app"

// after does something some milliseconds later, by the browser's timer: Go's own
// come with a calendar and settings of the toolchain, 50 KB compressed. While pages
// are generated nothing comes later.
func after(milliseconds int, do func()) {
	app.Window().Call("setTimeout", once(do), milliseconds)
}

// nextTurn does something when the browser has seen to what else waits.
func nextTurn(do func()) { app.Window().Call("goappRest", once(do)) }

// once is a function for the browser to call one time.
func once(do func()) app.Func {
	var called app.Func
	called = app.FuncOf(func(app.Value, []app.Value) any {
		called.Release()
		do()
		return nil
	})
	return called
}
