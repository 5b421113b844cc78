package calc_test

import (
	"strconv"
	"strings"
	"testing"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/sheet"
)

// TestFieldsStay holds what the pages' entries are against testdata/pages/fields.txt: links
// are frozen, and so are keys, defaults, units and limits.
// TestSheetsSayTheSame says how to make the file anew.
func TestFieldsStay(t *testing.T) {
	w := writer{}
	for _, p := range calc.Pages {
		w.line(sheetMark, p.Slug, ": ", p.Menu, ", ", p.Title)
		w.fields(calc.NewForm(p))
		w.line()
	}
	keptAs(t, "testdata/pages/fields.txt", w.text.String())
}

func (w *writer) fields(f *form.Form) {
	var section *sheet.Section
	var group *sheet.Group
	for _, field := range f.Fields() {
		if field.Section != section {
			section = field.Section
			w.line("section ", section.Title, map[bool]string{true: ", folded"}[section.Folded])
		}
		if g := field.Group; g != nil && g != group {
			w.line("group ", g.Words.ID, ", ", g.Row(0), ", ", g.RowsFrom(1, 2), ", ", g.Words.All, ", ", g.Words.Add, ": least ", strconv.Itoa(g.Least), ", at the start ", strconv.Itoa(g.Start), ", most ", strconv.Itoa(g.Most))
		}
		group = field.Group
		w.field(f, field)
	}
}

func (w *writer) field(f *form.Form, field sheet.Field) {
	in, carry := "", ""
	if field.Group != nil {
		in = " in " + field.Group.Words.All
	}
	if field.Carry {
		carry = ", carried to new rows"
	}
	field.Cells.Resize(1)
	w.line("  ", field.Key, in, ": ", sheet.Heading(field), carry, ". ", sheet.About(field))
	if field.Suggest != nil {
		w.line("      suggests ", strings.Join(field.Suggest, "; "))
	}
	value := field.Cells.At(0)
	if text := value.String(); text != "" {
		w.line("      is ", text)
	}
	for _, o := range options(field) {
		w.line("      ", o.Word, ": ", o.Label, " (", o.Hint, ")")
	}
	if n, ok := value.(interface{ Numeric() bool }); ok && !n.Numeric() {
		w.line("      takes more than digits")
	}
}
