package main

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/view"
	"striderule/calc/form"
	"striderule/calc/sheet"
)

// group is a group's rows with the buttons that add and remove them; nothing
// while none of its columns applies.
func (c *calculator) group(g *sheet.Group, columns []sheet.Field) []app.UI {
	var rows []app.UI
	for row := range c.form.Rows(columns[0]) {
		var cells []cellState
		for _, f := range columns {
			if c.form.Visible(f, row) {
				cells = append(cells, c.cellState(f, row))
			}
		}
		if len(cells) > 0 {
			rows = append(rows, &rowView{Cells: cells, of: c})
		}
	}
	if len(rows) == 0 {
		return nil
	}
	add := frame.Button("add-"+view.IDOf(g), g.Words.Add, func() { c.addRow(columns[0].Key) }).Class("add")
	if len(rows) >= g.Most {
		add = add.Disabled(true)
	}
	return []app.UI{c.rowHints(columns), app.Div().Class("rows").Body(rows...), c.rowsEditView(g), add}
}

// rowHints explains the columns once, above the rows, and names a sole one.
func (c *calculator) rowHints(columns []sheet.Field) app.UI {
	var hints []app.UI
	fields, sole := 0, ""
	for _, f := range columns {
		if !c.inAnyRow(f) {
			continue
		}
		if _, ok := view.ValueOf[*sheet.Flag](f, 0); !ok {
			fields++
			sole = f.Label
		}
		if f.Hint != "" {
			hints = append(hints, app.P().Class("hint").ID(view.HintID(f)).Body(app.Strong().Text(f.Label+": "), app.Text(view.Bound(f.Hint))))
		}
	}
	if len(hints) == 0 && fields == 1 {
		hints = append(hints, app.P().Class("sole").Aria("hidden", "true").Text(sole))
	}
	if len(hints) <= 1 {
		return app.Div().Class("hints").Body(hints...)
	}
	return c.folds.Fold("hints-"+columns[0].Key, "hints", false, app.Text(hintsTitle), hints...)
}

func (c *calculator) inAnyRow(f sheet.Field) bool {
	for row := range c.form.Rows(f) {
		if c.form.Visible(f, row) {
			return true
		}
	}
	return false
}

// flag is a yes or no of a row.
func (c *calculator) flag(f sheet.Field, row int, flag *sheet.Flag) app.UI {
	id := view.CellID(f, row)
	return app.Label().Class("option").For(id).Body(
		app.Input().Type("checkbox").ID(id).Name(f.Key).Value("yes").Checked(flag.On).
			OnChange(func(ctx app.Context, e app.Event) {
				text := ""
				if ctx.JSSrc().Get("checked").Bool() {
					text = "yes"
				}
				c.edit(func(typed *form.Form) { typed.Set(f.Key, row, text) })
			}, app.EventScope(f.Key, strconv.Itoa(row))),
		app.Span().Class("option-text").Text(f.Label),
	)
}

// rowsOf finds a group in the present form, by the key of a column: a handler
// lives longer than the form that it was made for.
func (c *calculator) rowsOf(key string) (g *sheet.Group, columns []sheet.Field) {
	for _, f := range c.form.Fields() {
		if f.Key == key {
			g = f.Group
		}
		if g != nil && f.Group == g {
			columns = append(columns, f)
		}
	}
	return g, columns
}

// addRow adds a row and moves the focus to its first field.
func (c *calculator) addRow(key string) {
	g, columns := c.rowsOf(key)
	c.edit(func(f *form.Form) { f.AddRow(g) })
	c.refill() // with what is carried over
	c.ctx.Defer(func(app.Context) {
		for _, f := range columns {
			if last := c.form.Rows(f) - 1; c.form.Visible(f, last) {
				browser.Focus(view.CellID(f, last))
				return
			}
		}
	})
}

// row is one row of a group, with the cells that apply.
func (c *calculator) row(states []cellState) app.UI {
	var cells []app.UI
	var group *sheet.Group
	fields := 0
	for _, s := range states {
		f, _ := c.form.Field(s.Key)
		group = f.Group
		cells = append(cells, c.rowCell(f, s.Row))
		if _, ok := view.ValueOf[*sheet.Flag](f, s.Row); !ok {
			fields++
		}
	}
	key, row := states[0].Key, states[0].Row
	name := group.Row(row)
	remove := removeRow.Fill("row", name)
	return app.FieldSet().Class(view.RowClass(fields)).Body(
		app.Legend().Text(name),
		app.Div().Class("cells").Body(cells...),
		app.Button().Type("button").Class("remove").Aria("label", remove).Title(remove).Text("×").
			OnClick(func(ctx app.Context, e app.Event) {
				g, _ := c.rowsOf(key)
				c.editRows(func(f *form.Form) form.RowsEdit { return f.RemoveRow(g, row) })
			}, app.EventScope(key, strconv.Itoa(row))),
	)
}

func (c *calculator) rowCell(f sheet.Field, row int) app.UI {
	if flag, ok := view.ValueOf[*sheet.Flag](f, row); ok {
		return c.flag(f, row, flag)
	}
	if choice, ok := view.ValueOf[*sheet.Choice](f, row); ok {
		return c.pulldown(f, row, choice)
	}
	return c.cell(f, row)
}

// pulldown is a choice as a list.
func (c *calculator) pulldown(f sheet.Field, row int, choice *sheet.Choice) app.UI {
	id := view.CellID(f, row)
	var options []app.UI
	for _, o := range choice.Options() {
		options = append(options, app.Option().Value(o.Word).Text(o.Label).Selected(o.Word == choice.Word))
	}
	problem := c.form.ProblemAt(f.Key, row)
	return app.Div().Class("field").Body(
		app.Label().For(id).Text(f.Label),
		app.Select().ID(id).Name(f.Key).Body(options...).OnChange(func(ctx app.Context, e app.Event) {
			word := ctx.JSSrc().Get("value").String()
			c.edit(func(typed *form.Form) { typed.Set(f.Key, row, word) })
			c.refill()
		}, app.EventScope(f.Key, strconv.Itoa(row))),
		c.was(f.Key, row),
		app.If(problem != "", func() app.UI { return app.P().Class("problem").Text(view.Bound(problem)) }),
	)
}
