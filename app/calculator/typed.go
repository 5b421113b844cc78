package calculator

import (
	"slices"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/view"
	"striderule/calc/form"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// pasteInto puts a piece of a table into the rows from a field on.
func (c *calculator) pasteInto(id, text string) {
	if f, row, ok := c.cellOf(id); ok && f.Group != nil {
		c.ctx.Dispatch(func(app.Context) {
			c.editRows(func(typed *form.Form) form.RowsEdit { return typed.Paste(f.Key, row, text) })
		})
	}
}

// cellOf is the cell with the ID of an input, where it could have one.
func (c *calculator) cellOf(id string) (f sheet.Field, row int, ok bool) {
	for _, f = range c.form.Fields() {
		most := 1
		if f.Group != nil {
			most = f.Group.Most
		}
		for row = range most {
			if view.CellID(f, row) == id {
				return f, row, true
			}
		}
	}
	return f, row, false
}

// fillIn takes what was typed into a field of the page as it was generated, which the sheet of a
// link has in a fold, or in no place at all.
func (c *calculator) fillIn(id, text string) bool {
	f, row, ok := c.cellOf(id)
	if ok {
		c.ctx.Dispatch(func(app.Context) {
			c.edit(func(typed *form.Form) { typed.Set(f.Key, row, text) })
			if c.form.Visible(f, row) {
				c.folds.Open(c.foldOf(f, row))
			} else {
				browser.Announce(typedInVain.Fill("field", f.Label, "text", text))
			}
			c.refill()
		})
	}
	return ok
}

// editRows does something to rows that can be taken back.
func (c *calculator) editRows(do func(*form.Form) form.RowsEdit) {
	var done form.RowsEdit
	c.edit(func(typed *form.Form) { done = do(typed) })
	c.rowsEdit = done
	c.refill()
}

// rowsEditView tells what was pasted into a group or taken out of it, with a way back. The line is
// always there: only so it is announced when it is filled.
func (c *calculator) rowsEditView(g *sheet.Group) app.UI {
	says, did := "", c.rowsEdit.Group == g && g != nil
	if did {
		says = c.rowsEdit.Says()
	}
	return app.Div().Class("pasted").Body(
		app.P().ID("pasted-"+view.IDOf(g)).Attr("role", "status").Text(says),
		app.If(did, func() app.UI {
			return frame.Button("unpaste", undoRows, func() {
				p := c.rowsEdit
				c.edit(func(f *form.Form) { f.UndoRows(p) })
				c.refill()
				browser.Announce(rowsUndone)
			})
		}),
	)
}

// unitChoice is the units to choose from beside a number.
func (c *calculator) unitChoice(f sheet.Field, row int, q *unit.Entry, chosen string) app.UI {
	var options []app.UI
	for _, symbol := range q.Units() {
		options = append(options, app.Option().Value(symbol).Text(symbol).Selected(symbol == chosen))
	}
	return app.Select().ID(view.UnitID(f, row)).Aria("label", unitOfField.Fill("field", f.Label)).Body(options...).
		OnChange(func(ctx app.Context, e app.Event) {
			symbol := ctx.JSSrc().Get("value").String()
			c.units[f.Key] = symbol
			c.edit(func(typed *form.Form) {
				f, _ := typed.Field(f.Key)
				if text := typed.Text(f.Key, row); text != "" {
					typed.Set(f.Key, row, view.QuantityOf(f, row).In(text, symbol))
				}
			})
			c.refill()
		}, app.EventScope(f.Key, strconv.Itoa(row)))
}

// inUnit is what was typed beside a choice of units, with the chosen one. A unit that was
// typed is the chosen one from then on.
func (c *calculator) inUnit(key string, row int, text string) string {
	f, _ := c.form.Field(key)
	q := view.QuantityOf(f, row)
	if q == nil || q.Units() == nil {
		return text
	}
	symbol := c.unitOf(f, row, q)
	typed := form.NamesUnit(text)
	if _, own, ok := q.Parted(text); ok && typed {
		symbol = own
	}
	c.units[key] = symbol
	if typed {
		c.showUnits(f, row, symbol)
		return text
	}
	return q.In(text, symbol)
}

// showUnits shows a unit as the chosen one, in a row and where nothing is typed yet.
func (c *calculator) showUnits(f sheet.Field, row int, symbol string) {
	for r := range c.form.Rows(f) {
		if e, ok := browser.Element(view.UnitID(f, r)); ok && (r == row || c.form.Text(f.Key, r) == "") {
			e.Set("value", symbol)
		}
	}
}

// unitBeside is the unit that stands beside a text: in which it is read, or would be. What
// names a unit itself has none beside it, unless units can be chosen there.
func (c *calculator) unitBeside(f sheet.Field, row int) string {
	q := view.QuantityOf(f, row)
	switch {
	case q == nil:
		return ""
	case q.Units() != nil:
		return c.unitOf(f, row, q)
	case form.NamesUnit(c.form.Text(f.Key, row)):
		return ""
	}
	return q.Unit()
}

// unitOf is the unit of a text, or, where there is no number, the one that was chosen last for
// the field or a row of it: who clears a field to type another number has not chosen anew.
func (c *calculator) unitOf(f sheet.Field, row int, q *unit.Entry) string {
	if _, symbol, ok := q.Parted(c.form.Text(f.Key, row)); ok {
		return symbol
	}
	if symbol := c.units[f.Key]; symbol != "" {
		return symbol
	}
	return q.Unit()
}

// shownIn is what a field shows of a text: not the unit, where that is chosen beside it.
func shownIn(f sheet.Field, row int, text string) string {
	if q := view.QuantityOf(f, row); q != nil && q.Units() != nil {
		text, _, _ = q.Parted(text)
	}
	return text
}

func (c *calculator) typed(key string, row int) app.EventHandler {
	return func(ctx app.Context, e app.Event) {
		c.startTyping(key, row)
		text := c.inUnit(key, row, ctx.JSSrc().Get("value").String())
		c.editByKey(ctx, func(f *form.Form) { f.Set(key, row, text) })
		c.showShared(key, row)
	}
}

// showShared shows a text that the rows of a line share in each of them.
func (c *calculator) showShared(key string, row int) {
	f, _ := c.form.Field(key)
	if f.Group == nil || !slices.Contains(f.Group.Shared, key) {
		return
	}
	for other := range c.form.Rows(f) {
		if e, ok := browser.Element(view.CellID(f, other)); ok && other != row {
			e.Set("value", shownIn(f, other, c.form.Text(key, other)))
		}
	}
}
