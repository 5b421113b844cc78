package main

import (
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/calc/sheet"
)

// mostRadios is how many options are shown side by side; more make a list to
// pull down, as do choices in rows.
const mostRadios = 4

// optionsOf returns a field's options if each has an input of its own.
func optionsOf(f sheet.Field) []sheet.Option {
	if checks, ok := f.Cells.(*sheet.Checks); ok {
		return checks.Options()
	}
	if c, ok := valueOf[*sheet.Choice](f, 0); ok && f.Group == nil && len(c.Options()) <= mostRadios {
		return c.Options()
	}
	return nil
}

// valueOf returns a field's value if it is of type V; a list of ticks has no
// row where nothing is ticked.
func valueOf[V sheet.Value](f sheet.Field, row int) (v V, ok bool) {
	if row < f.Cells.Len() {
		v, ok = f.Cells.At(row).(V)
	}
	return v, ok
}

func isChosen(f sheet.Field, o sheet.Option) bool {
	if checks, ok := f.Cells.(*sheet.Checks); ok {
		return checks.Has(o.Word)
	}
	c, ok := valueOf[*sheet.Choice](f, 0)
	return ok && c.Word == o.Word
}

// cellID is the id of the input for a field's cell; rows count from 1.
func cellID(f sheet.Field, row int) string {
	if f.Group == nil {
		return "f-" + f.Key
	}
	return "f-" + f.Key + "-" + strconv.Itoa(row+1)
}

func optionID(f sheet.Field, o sheet.Option) string { return "f-" + f.Key + "-" + o.Word }

// A quantity is a value with a unit.
type quantity interface {
	Unit() string
	Numeric() bool
}

func hintID(f sheet.Field) string { return "f-" + f.Key + "-hint" }

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

func option(input app.UI, o sheet.Option, id, hint string) app.UI {
	text := []app.UI{app.Span().Text(o.Label)}
	if hint != "" {
		text = append(text, app.Span().Class("hint").Text(hint))
	}
	return app.Label().Class("option").For(id).Body(input, app.Span().Class("option-text").Body(text...))
}

// idOf tells groups apart in ids.
func idOf(g *sheet.Group) string { return strings.ReplaceAll(g.Noun, " ", "-") }

// rowClass tells by how many fields it has how a row is laid out.
func rowClass(fields int) string {
	return "row " + [...]string{"", "single", "two", "three", "many"}[min(fields, 4)]
}
