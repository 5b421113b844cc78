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
	layout := c.layoutOf(columns)
	head := c.rowsHead(layout, columns)
	shared, isShared := c.form.Shared(g)
	if lines := c.form.Lines(g); isShared && lines != nil && len(layout.typed) == 2 {
		return []app.UI{c.linesView(g, shared, lines, rows, head), c.rowsEditView(g)}
	}
	class, sign := layout.class(), g.Words.Add
	switch {
	case len(rows) == 1:
		class += " sole"
		rows[0] = &rowView{Cells: c.nameLast(rows[0].(*rowView).Cells), of: c}
	case layout.kind == stack:
		for row := range rows {
			rows[row] = c.rowFold(columns, row, rows[row])
		}
	}
	if layout.kind == boxes {
		sign = addSign
	}
	add := frame.Button("add-"+view.IDOf(g), sign, func() { c.addRow(columns[0].Key) }).Class("add").Aria("label", g.Words.Add)
	if len(rows) >= g.Most {
		add = add.Disabled(true)
	}
	return []app.UI{app.Div().Class(class).Body(append(append([]app.UI{head}, rows...), add)...), c.rowsEditView(g)}
}

// nameLast puts the name of the only row of its kind behind what counts.
func (c *calculator) nameLast(cells []cellState) []cellState {
	f, _ := c.form.Field(cells[0].Key)
	if _, text := view.ValueOf[*sheet.Text](f, 0); !text {
		return cells
	}
	return append(slices.Clip(cells[1:]), cells[0])
}

// A rowLayout is how the rows of a group are laid out: one column is a line of boxes with one
// head, two or three are a table, more have their names in each row.
type rowLayout struct {
	kind  string
	typed []sheet.Field // the columns that are typed or chosen in some row
	flags bool          // rows can be left out
}

// The kinds of layouts, as the style sheet knows them.
const (
	boxes = "boxes"
	table = "table"
	stack = "stack"
)

func (c *calculator) layoutOf(columns []sheet.Field) rowLayout {
	l := rowLayout{kind: stack}
	for _, f := range columns {
		if _, flag := view.ValueOf[*sheet.Flag](f, 0); flag {
			l.flags = true
		} else if c.inAnyRow(f) {
			l.typed = append(l.typed, f)
		}
	}
	switch len(l.typed) {
	case 1:
		l.kind = boxes
	case 2, 3:
		l.kind = table
	}
	return l
}

func (l rowLayout) class() string {
	class := "rows " + l.kind
	if len(l.typed) == 3 {
		class += " three"
	}
	if l.flags {
		class += " flags"
	}
	return class
}

// linesView are rows that share a text, line by line: the text once, then a box for each row.
func (c *calculator) linesView(g *sheet.Group, shared sheet.Field, starts []int, rows []app.UI, head app.UI) app.UI {
	body := []app.UI{head}
	for i, start := range starts {
		end := len(rows)
		if i+1 < len(starts) {
			end = starts[i+1]
		}
		body = append(body, app.Div().Class("line").Body(rows[start:end:end]...))
	}
	add := frame.Button("add-"+view.IDOf(g), g.Words.Lines.Of(shared.Key), func() { c.addLine(shared) }).Class("add")
	return app.Div().Class("rows lines").Body(append(body, add)...)
}

// addRepeat adds a box to the line of a row, and moves the focus there.
func (c *calculator) addRepeat(g *sheet.Group, row int) {
	c.edit(func(f *form.Form) {
		for _, present := range f.Groups() {
			if view.SameRows(present, g) {
				row = f.AddRepeat(present, row)
			}
		}
	})
	c.refill()
	c.focusRow(g, row)
}

// addLine adds a line, and moves the focus to the text that its rows share.
func (c *calculator) addLine(shared sheet.Field) {
	g, _ := c.rowsOf(shared.Key)
	row := c.form.Rows(shared)
	c.edit(func(f *form.Form) { f.AddLine(g) })
	c.ctx.Defer(func(app.Context) { browser.Focus(view.CellID(shared, row)) })
}

// focusRow moves the focus to the last field of a row that is typed into.
func (c *calculator) focusRow(g *sheet.Group, row int) {
	c.ctx.Defer(func(app.Context) {
		typed := c.layoutOf(c.fieldsOf(func(f sheet.Field) bool { return view.SameRows(f.Group, g) })).typed
		browser.Focus(view.CellID(typed[len(typed)-1], row))
	})
}

// rowFold is one of several rows of many fields: a fold, which says what the row holds.
func (c *calculator) rowFold(columns []sheet.Field, row int, body app.UI) app.UI {
	name, class, rest := columns[0].Group.Row(row), "unnamed", columns
	if text, ok := view.ValueOf[*sheet.Text](columns[0], row); ok {
		rest = columns[1:]
		if text.Value != "" {
			name, class = text.Value, "named"
		}
	}
	return c.folds.View(view.Fold{ID: rowFoldID(columns[0], row), Class: "row-fold", Heading: app.H3().Class(class).Text(name),
		Brief: c.marked(c.form.HoldsRow(rest, row), columns, row), Body: func() []app.UI { return []app.UI{body} }})
}

// rowFoldID is the fold of a row, by a column of its group.
func rowFoldID(column sheet.Field, row int) string {
	return "row-" + view.IDOf(column.Group) + "-" + strconv.Itoa(row+1)
}

// isStacked reports whether each row of a group has the names of its fields.
func (c *calculator) isStacked(g *sheet.Group) bool {
	return c.layoutOf(c.fieldsOf(func(f sheet.Field) bool { return f.Group == g })).kind == stack
}

// rowsHead names the columns of rows once.
func (c *calculator) rowsHead(layout rowLayout, columns []sheet.Field) app.UI {
	if layout.kind == stack {
		return c.rowHints(columns)
	}
	var names []app.UI
	for _, f := range layout.typed {
		names = append(names, app.Span().Body(labelOf(c.letter(f.Key), sheet.Heading(f))...))
	}
	return app.P().Class("rows-head").Aria("hidden", "true").Body(names...)
}

// rowHints explains the columns of rows that are no needed ones, once, above them.
func (c *calculator) rowHints(columns []sheet.Field) app.UI {
	var hints []app.UI
	for _, f := range columns {
		if c.inAnyRow(f) && f.Hint != "" && !f.Needed {
			hints = append(hints, app.P().Class("hint").ID(view.HintID(f)).Body(app.Strong().Text(f.Label+": "), app.Text(view.Bound(f.Hint))))
		}
	}
	return app.Div().Class("hints").Body(hints...)
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
	c.folds.Open(rowFoldID(columns[0], c.form.Rows(columns[0])))
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
	var cells, tools []app.UI
	var group *sheet.Group
	var column sheet.Field
	aside := false
	for _, s := range states {
		f, _ := c.form.Field(s.Key)
		group, column = f.Group, f
		if flag, ok := view.ValueOf[*sheet.Flag](f, s.Row); ok {
			tools = append(tools, c.flag(f, s.Row, flag))
			aside = aside || flag.On
			continue
		}
		cells = append(cells, c.rowCell(f, s.Row))
	}
	key, row := states[0].Key, states[0].Row
	name := group.Row(row)
	remove := removeRow.Fill("row", name)
	class := "row"
	if aside {
		class += " aside"
	}
	if lines := c.form.Lines(group); lines != nil {
		if !slices.Contains(lines, row) {
			class += " repeat"
		}
		tools = append([]app.UI{frame.Button("repeat-"+view.CellID(column, row), addSign, func() { c.addRepeat(group, row) }).Class("repeat-row").Aria("label", group.Words.Add)}, tools...)
	}
	tools = append(tools, app.Button().Type("button").Class("remove").Aria("label", remove).Title(remove).Text("×").
		OnClick(func(ctx app.Context, e app.Event) {
			g, _ := c.rowsOf(key)
			c.editRows(func(f *form.Form) form.RowsEdit { return f.RemoveRow(g, row) })
		}, app.EventScope(key, strconv.Itoa(row))))
	tools = append([]app.UI{app.Span().Class("row-of").Aria("hidden", "true").Text(name)}, tools...)
	return app.Div().Class(class).Attr("role", "group").Aria("label", name).Body(
		app.P().Class("row-name").Aria("hidden", "true").Text(name),
		app.Div().Class("cells").Body(append(cells, app.Div().Class("row-tools").Body(tools...))...),
	)
}

func (c *calculator) rowCell(f sheet.Field, row int) app.UI {
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
	return app.Div().Class(fieldClass(f)).Body(
		app.Label().For(id).Body(labelOf(c.letter(f.Key), f.Label)...),
		app.Select().ID(id).Name(f.Key).Body(options...).OnChange(func(ctx app.Context, e app.Event) {
			word := ctx.JSSrc().Get("value").String()
			c.edit(func(typed *form.Form) { typed.Set(f.Key, row, word) })
			c.refill()
		}, app.EventScope(f.Key, strconv.Itoa(row))),
		c.was(f.Key, row),
		app.If(problem != "", func() app.UI { return app.P().Class("problem").Text(view.Bound(problem)) }),
	)
}
