package main

import "github.com/maxence-charriere/go-app/v10/pkg/app"

// after does something some milliseconds later, by the browser's timer: Go's own
// come with a calendar and settings of the toolchain, 50 KB compressed. While pages
// are generated nothing comes later.
func after(milliseconds int, do func()) {
	var rings app.Func
	rings = app.FuncOf(func(app.Value, []app.Value) any {
		rings.Release()
		do()
		return nil
	})
	app.Window().Call("setTimeout", rings, milliseconds)
}
