package main

import "github.com/maxence-charriere/go-app/v10/pkg/app"

// offers is what a page takes from outside of its fields. web/page.js hands it
// over: some of it is there only while the browser's own event lasts, and go-app
// tells of events afterwards.
type offers struct {
	file  func(name, text, failed string) // chosen, or dropped on the page
	paste func(id, text string)           // a piece of a table, into a row's field
	print func()                          // the last moment before the page is printed
	leave func()                          // the last moment before it is left
	// overtaken is asked when the history has gone on to another step: what the one
	// before should have in its address, if that has not followed.
	overtaken func() (fragment string, late bool)
}

// offered are those of the page that shows.
var offered offers

// listen tells web/page.js where to hand things over.
func listen() {
	app.Window().Set("takeFile", app.FuncOf(func(_ app.Value, file []app.Value) any {
		if offered.file == nil {
			return false
		}
		offered.file(file[0].String(), file[1].String(), file[2].String())
		return true
	}))
	app.Window().Set("pasteRows", app.FuncOf(func(_ app.Value, piece []app.Value) any {
		if offered.paste != nil {
			offered.paste(piece[0].String(), piece[1].String())
		}
		return nil
	}))
	app.Window().Call("addEventListener", "beforeprint", app.FuncOf(func(app.Value, []app.Value) any {
		if offered.print != nil {
			offered.print()
		}
		return nil
	}))
	app.Window().Set("leavePage", app.FuncOf(func(app.Value, []app.Value) any {
		if offered.leave != nil {
			offered.leave()
		}
		return nil
	}))
	app.Window().Set("overtaken", app.FuncOf(func(app.Value, []app.Value) any {
		if offered.overtaken != nil {
			if fragment, late := offered.overtaken(); late {
				return fragment
			}
		}
		return nil
	}))
}

// announce says something for a moment.
func announce(text string) { app.Window().Call("announce", text) }
