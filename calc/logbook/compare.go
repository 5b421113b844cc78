package logbook

import (
	"slices"
	"strings"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/sheet"
)

// A Comparison is what differs between two entries, the older one first.
type Comparison struct {
	Before, After Entry
	SamePage      bool
	Differences   []Difference // of their fields; only if they are of the same page
}

// A Difference is a field with its texts; those of rows are joined by commas.
type Difference struct{ Label, Before, After string }

// Compare returns what differs between two entries.
func Compare(a, b Entry) Comparison {
	if a.isBefore(b) {
		a, b = b, a
	}
	c := Comparison{Before: a, After: b, SamePage: a.Page == b.Page}
	page, known := calc.PageOf(a.Page)
	if !c.SamePage || !known {
		return c
	}
	before, after := calc.Load(page, a.Sheet), calc.Load(page, b.Sheet)
	fields := after.Fields()
	for i, f := range before.Fields() {
		d := Difference{f.Named(), shown(before, f), shown(after, fields[i])}
		if d.Before != d.After {
			c.Differences = append(c.Differences, d)
		}
	}
	return c
}

// shown is what a form has in a field, as a person sees it.
func shown(typed *form.Form, f sheet.Field) string {
	var texts []string
	if checks, ok := f.Cells.(*sheet.Checks); ok {
		for _, o := range checks.Options() {
			if checks.Has(o.Word) {
				texts = append(texts, o.Label)
			}
		}
		return orNotGiven(texts)
	}
	for row := range typed.Rows(f) {
		text := ""
		if typed.Visible(f, row) {
			text = strings.TrimSpace(typed.Text(f.Key, row))
			if choice, ok := f.Cells.At(row).(*sheet.Choice); ok {
				text = labelOf(choice)
			}
		}
		texts = append(texts, text)
	}
	for len(texts) > 0 && texts[len(texts)-1] == "" {
		texts = texts[:len(texts)-1]
	}
	return orNotGiven(texts)
}

func labelOf(c *sheet.Choice) string {
	i := slices.IndexFunc(c.Options(), func(o sheet.Option) bool { return o.Word == c.String() })
	return c.Options()[max(i, 0)].Label
}

func orNotGiven(texts []string) string {
	if s := strings.Join(texts, ", "); s != "" {
		return s
	}
	return notGiven
}
