package machine

import (
	"slices"
	"strings"

	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/sheet"
)

// testKeys are the facts of a test, which belong to readings that were made with it.
var testKeys = []string{"drive", "path", "trip", "asked", "askeddeg", "speed", "read", "marks", "mark",
	"tool", "step", "limits", "tooldeg", "stepdeg", "limitsdeg", "marktool", "markstep", "marklimits"}

// Into fills the axis into a form: its facts take the place of those that the sheet has. Readings
// stay, and with them what is said of the test that they are from: above all the setting that they
// were made with. On a page of several axes it takes its own row, by its name, or the first empty one.
// It returns what the form held, to put back.
func (a Axis) Into(f *form.Form) form.Texts {
	var texts form.Texts
	name, several := f.Field("name")
	row := 0
	if several {
		row = a.rowIn(f, name)
	} else {
		texts.Machine = a
	}
	kind := func(word string) string { return strings.TrimPrefix(word, "feed") }
	tested := hasReadings(f) && kind(f.Text("axis", 0)) == kind(a.Text("axis"))
	_, setting := f.Setting()
	isOfTest := func(field sheet.Field) bool { // and belongs to the readings
		isSetting := field.Key == "as" || slices.Contains(form.SettingKeys, field.Key)
		return isSetting && setting != "" || slices.Contains(testKeys, field.Key) && f.Filled(field)
	}
	for _, field := range f.Fields() {
		cells, isFact := a.factFor(field)
		switch {
		case !isFact, tested && isOfTest(field):
		case field.Group == nil || field.Group != name.Group:
			if !several || f.Text(field.Key, 0) == "" {
				texts.Fill(field.Key, cells...)
			}
		default:
			texts.Cell(field.Key, row, strings.Join(cells, betweenStages))
		}
	}
	return f.Put(texts)
}

// hasReadings reports whether something is typed in rows that are no part of a drivetrain.
func hasReadings(f *form.Form) bool {
	return slices.ContainsFunc(f.Fields(), func(field sheet.Field) bool { return isReading(f, field) })
}

// isReading reports whether a field has readings in it.
func isReading(f *form.Form, field sheet.Field) bool {
	return field.Group != nil && field.Needed && f.Filled(field) && f.Visible(field, 0)
}

// rowIn is the row that is the axis', by its name.
func (a Axis) rowIn(f *form.Form, name sheet.Field) int {
	rows := f.Rows(name)
	free := min(rows, name.Group.Most-1)
	for row := rows - 1; row >= 0; row-- {
		if f.Text("name", row) == a.Title() {
			return row
		}
		if !f.IsRowFilled(name.Group, row) {
			free = row
		}
	}
	return free
}

// keptSuffix ends the keys of Swap for parts that stay.
const keptSuffix = "kept"

// factFor is what the axis says in a field of some page; isFact is false where the field is none of
// an axis, or takes other words.
func (a Axis) factFor(field sheet.Field) (cells []string, isFact bool) {
	key := strings.TrimSuffix(field.Key, keptSuffix)
	options := optionsOf(field)
	cells = link.CellsOf(a, key)
	switch {
	case key == "name":
		return []string{a.Title()}, true
	case key == "moves":
		cells = a.kindIn(options)
	case key == "ratio" && cells == nil:
		cells = a.ratio()
	case !slices.Contains(facts[:], key):
		return nil, false
	}
	for _, cell := range cells {
		if options != nil && !isOption(options, cell) {
			return nil, false
		}
	}
	return cells, true
}

func isOption(options []sheet.Option, text string) bool {
	return slices.ContainsFunc(options, func(o sheet.Option) bool { return o.Word == text })
}

// kindIn is the kind of the axis in the words of a page.
func (a Axis) kindIn(options []sheet.Option) []string {
	for _, kind := range [...]string{"linear", "feed", a.Text("axis")} {
		if isOption(options, kind) && (kind == a.Text("axis") || kind == "feed" && a.Text("axis") == "" || kind == "linear" && a.Text("axis") == "travel") {
			return []string{kind}
		}
	}
	return nil
}

// ratio is that of a pair of teeth, for pages that ask for no pairs.
func (a Axis) ratio() []string {
	driving, driven := link.CellsOf(a, "driving"), link.CellsOf(a, "driven")
	if len(driving) == 1 && len(driven) == 1 {
		return []string{driven[0] + ":" + driving[0]}
	}
	return nil
}

func optionsOf(field sheet.Field) []sheet.Option {
	if field.Cells.Len() > 0 {
		if choice, ok := field.Cells.At(0).(*sheet.Choice); ok {
			return choice.Options()
		}
	}
	return nil
}
