package view

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// MostRadios is how many options are shown side by side; more make a list to
// pull down, as do choices in rows.
const MostRadios = 4

// HasRadios reports whether a choice is shown as radio buttons side by side: not among needed
// fields, which share a line.
func HasRadios(f sheet.Field, c *sheet.Choice) bool {
	return f.Group == nil && !f.Needed && len(c.Options()) <= MostRadios
}

// OptionsOf returns a field's options if each has an input of its own.
func OptionsOf(f sheet.Field) []sheet.Option {
	if checks, ok := f.Cells.(*sheet.Checks); ok {
		return checks.Options()
	}
	if c, ok := ValueOf[*sheet.Choice](f, 0); ok && HasRadios(f, c) {
		return c.Options()
	}
	return nil
}

// ValueOf returns a field's value if it is of type V; a list of ticks has no
// row where nothing is ticked.
func ValueOf[V sheet.Value](f sheet.Field, row int) (v V, ok bool) {
	if row < f.Cells.Len() {
		v, ok = f.Cells.At(row).(V)
	}
	return v, ok
}

// IsChosen reports whether an option is chosen, or ticked.
func IsChosen(f sheet.Field, o sheet.Option) bool {
	if checks, ok := f.Cells.(*sheet.Checks); ok {
		return checks.Has(o.Word)
	}
	c, ok := ValueOf[*sheet.Choice](f, 0)
	return ok && c.Word == o.Word
}

// CellID is the id of the input for a field's cell; rows count from 1.
func CellID(f sheet.Field, row int) string {
	if f.Group == nil {
		return "f-" + f.Key
	}
	return "f-" + f.Key + "-" + strconv.Itoa(row+1)
}

// OptionID is the id of the input for an option.
func OptionID(f sheet.Field, o sheet.Option) string { return "f-" + f.Key + "-" + o.Word }

// QuantityOf returns a cell's value if it has a unit; nil otherwise.
func QuantityOf(f sheet.Field, row int) *unit.Entry {
	e, _ := ValueOf[*unit.Entry](f, row)
	return e
}

// UnitID is the id of what says, beside a cell's text, in which unit it is.
func UnitID(f sheet.Field, row int) string { return CellID(f, row) + "-unit" }

// HintID is the id of a field's hint.
func HintID(f sheet.Field) string { return "f-" + f.Key + "-hint" }

// SuggestID is the id of the texts that are offered for a field.
func SuggestID(f sheet.Field) string { return "f-" + f.Key + "-suggest" }

// Option is an option's input with its label.
func Option(input app.UI, o sheet.Option, id, hint string) app.UI {
	text := []app.UI{app.Span().Text(Bound(o.Label))}
	if hint != "" {
		text = append(text, app.Span().Class("hint").Text(Bound(hint)))
	}
	return app.Label().Class("option").For(id).Body(input, app.Span().Class("option-text").Body(text...))
}

// SameRows reports whether two groups are the same one, of two sheets of a page.
func SameRows(a, b *sheet.Group) bool { return a != nil && b != nil && IDOf(a) == IDOf(b) }

// IDOf tells groups apart in ids.
func IDOf(g *sheet.Group) string { return g.Words.ID }

// TextField is a field outside of a sheet, whose text goes where it belongs as it is typed.
func TextField(id, label, kind string, text *string) app.UI {
	return app.Div().Class("field").Body(app.Label().For(id).Text(label),
		app.Input().Class("typed").ID(id).Name(id).Type(kind).MaxLength(60).AutoComplete(false).Value(*text).
			OnInput(func(ctx app.Context, _ app.Event) { *text = ctx.JSSrc().Get("value").String() }, app.EventScope(id)))
}
