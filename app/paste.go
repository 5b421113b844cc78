package main

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/view"
	"striderule/calc/form"
	"striderule/calc/sheet"
)

// pasteInto puts a piece of a table into the rows from a field on.
func (c *calculator) pasteInto(id, text string) {
	c.ctx.Dispatch(func(app.Context) {
		for _, f := range c.form.Fields() {
			for row := range c.form.Rows(f) {
				if f.Group != nil && view.CellID(f, row) == id {
					var p form.Pasted
					c.edit(func(typed *form.Form) { p = typed.Paste(f.Key, row, text) })
					c.pasted = p
					c.refill()
					return
				}
			}
		}
	})
}

// pastedView tells what was pasted into a group, with a way back. The line is
// always there: only so it is announced when it is filled.
func (c *calculator) pastedView(g *sheet.Group) app.UI {
	says, did := "", c.pasted.Group == g && g != nil
	if did {
		says = c.pasted.Says()
	}
	return app.Div().Class("pasted").Body(
		app.P().ID("pasted-"+view.IDOf(g)).Attr("role", "status").Text(says),
		app.If(did, func() app.UI {
			return frame.Button("unpaste", "Undo", func() {
				p := c.pasted
				c.edit(func(f *form.Form) { f.Unpaste(p) })
				c.refill()
				browser.Announce("Undone: the rows are as they were.")
			})
		}),
	)
}
