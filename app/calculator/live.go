package calculator

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/frame"
	"striderule/app/view"
	"striderule/calc/report"
	"striderule/calc/sheet"
)

// A page has a thousand elements, and a key changes some twenty of them. What
// stands below are components of their own, because go-app renders a component
// again only when one of its exported fields has changed.

// A blockView is a block of a report.
type blockView struct {
	app.Compo
	Block report.Block
	folds *view.Folds
}

func (v *blockView) Render() app.UI {
	frame.Yield()
	return view.Block(v.Block, v.folds)
}

// A quickView is a piece of a calculator that a key renders at once, and only that.
type quickView struct {
	app.Compo
	Turn int // of the calculator, with which it is always rendered
	of   *calculator
	view func() app.UI
}

func (c *calculator) quickly(view func() app.UI) app.UI {
	return &quickView{Turn: c.turns, of: c, view: view}
}

func (v *quickView) OnMount(ctx app.Context) {
	v.of.quick = append(v.of.quick, ctx)
	ctx.PreventUpdate()
}

func (v *quickView) Render() app.UI {
	frame.Yield()
	return v.view()
}

// A cellState is all that the look of a field's cell depends on.
type cellState struct {
	Key    string
	Row    int
	Chosen string // the words that are chosen or ticked
	Unit   string // beside a text
	Beside beside
	Was    string // before it was changed
}

func (c *calculator) cellState(f sheet.Field, row int) cellState {
	s := cellState{Key: f.Key, Row: row, Beside: c.besideOf(f, row), Was: c.wasAt(f.Key, row)}
	if checks, ok := f.Cells.(*sheet.Checks); ok {
		for _, o := range checks.Options() {
			if checks.Has(o.Word) {
				s.Chosen += " " + o.Word
			}
		}
		return s
	}
	switch v := f.Cells.At(row).(type) {
	case *sheet.Choice:
		s.Chosen = v.Word
	case *sheet.Flag:
		s.Chosen = v.String()
	default:
		s.Unit = c.unitBeside(f, row)
	}
	return s
}

// A fieldView is a field that stands by itself.
type fieldView struct {
	app.Compo
	State cellState
	of    *calculator
}

// CompoID keeps the element of one field from becoming that of another, with
// what is typed in it.
func (v *fieldView) CompoID() string { return v.State.Key }

func (v *fieldView) Render() app.UI {
	frame.Yield()
	f, _ := v.of.form.Field(v.State.Key)
	return v.of.single(f)
}

// A rowView is a row of a group.
type rowView struct {
	app.Compo
	Cells []cellState
	of    *calculator
}

// CompoID is that of its first column: see fieldView.
func (v *rowView) CompoID() string { return v.Cells[0].Key }

func (v *rowView) Render() app.UI {
	frame.Yield()
	return v.of.row(v.Cells)
}
