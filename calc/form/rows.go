package form

import (
	"slices"
	"strconv"
	"strings"

	"striderule/calc/lists"
	"striderule/calc/sheet"
	"striderule/calc/word"
)

// AddRow adds a row to a group, empty but for what is carried over from the row
// above, and reports whether there was room.
func (f *Form) AddRow(g *sheet.Group) bool {
	if f.rows[g] >= g.Most {
		return false
	}
	f.grow(g)
	f.changed()
	return true
}

// grow is AddRow without working anything out.
func (f *Form) grow(g *sheet.Group) {
	last := f.rows[g] - 1
	f.rows[g]++
	for _, field := range f.fields {
		if field.Group == g && field.Carry && last >= 0 {
			f.put(field, last+1, f.Text(field.Key, last))
		}
	}
}

// RemoveRow takes a row out of a group; at its least number of rows it is
// emptied instead.
func (f *Form) RemoveRow(g *sheet.Group, row int) RowsEdit {
	e, filled := f.rowsBefore(g, row), false
	e.Removed = true
	for _, field := range f.fields {
		if field.Group == g && row < len(f.text[field.Key]) {
			filled = filled || strings.TrimSpace(f.text[field.Key][row]) != ""
			f.text[field.Key] = lists.Concat(f.text[field.Key][:row], f.text[field.Key][row+1:])
		}
	}
	f.rows[g] = max(g.Least, f.rows[g]-1)
	f.dropFromLines(g, row)
	f.changed()
	if !filled {
		return RowsEdit{} // nothing to bring back
	}
	return e
}

// rowsBefore keeps what stands in the rows of a group, before something is done to them from a
// row on.
func (f *Form) rowsBefore(g *sheet.Group, from int) RowsEdit {
	e := RowsEdit{Group: g, From: from, before: map[string][]string{}, rows: f.rows[g], lines: lists.Concat(f.lines[g])}
	for _, c := range f.fields {
		if c.Group == g {
			e.before[c.Key] = slices.Clone(f.text[c.Key])
		}
	}
	return e
}

// Columns returns the columns of a group that apply in some row.
func (f *Form) Columns(g *sheet.Group) []sheet.Field {
	var columns []sheet.Field
	for _, field := range f.fields {
		if field.Group == g && f.anyVisible(field) {
			columns = append(columns, field)
		}
	}
	return columns
}

// Groups returns the groups that apply, in order.
func (f *Form) Groups() []*sheet.Group {
	var groups []*sheet.Group
	for _, field := range f.fields {
		if field.Group != nil && !slices.Contains(groups, field.Group) && f.anyVisible(field) {
			groups = append(groups, field.Group)
		}
	}
	return groups
}

// A RowsEdit is what was done to the rows of a group at once, to be taken back: a piece of a table
// was pasted into them, or one was taken out.
type RowsEdit struct {
	Group    *sheet.Group
	From     int  // the row it began with, counted from 0
	Rows     int  // that something went into
	Replaced int  // texts that stood there and were others
	Over     int  // lines for which there was no row
	Odd      int  // values for which there was no column, or that are not in a list
	Removed  bool // the row was taken out
	before   map[string][]string
	rows     int
	lines    []int
}

// Paste puts the lines of a text into a column's cell and the rows below, and
// what tabs part into the columns beside it, as a spreadsheet copies them. Rows
// are added while there is room. A first line that repeats the headings is left
// out. Blanks around a value go; else it is kept as it was written.
func (f *Form) Paste(key string, row int, text string) RowsEdit {
	field, ok := f.Field(key)
	if !ok || field.Group == nil || row < 0 || row >= f.Rows(field) {
		return RowsEdit{}
	}
	columns := f.Columns(field.Group)
	for len(columns) > 0 && columns[0].Key != key {
		columns = columns[1:]
	}
	p := f.rowsBefore(field.Group, row)
	f.lines[field.Group] = nil
	lines := tableLines(text)
	if len(columns) > 0 && len(lines) > 1 && isHeading(lines, field) {
		lines = named(lines, columns)
	}
	lines = withoutNumbers(lines, typedInto(columns))
	for _, line := range lines {
		at := row + p.Rows
		if at >= p.Group.Most {
			p.Over++
			continue
		}
		if at >= f.Rows(field) {
			f.grow(p.Group)
		}
		p.Rows++
		for j, value := range line {
			if j >= len(columns) {
				p.Odd += min(1, len(value))
				continue
			}
			f.pasteCell(&p, columns[j], at, value)
		}
	}
	f.changed()
	return p
}

// isHeading reports whether a table begins with the names of its columns: those of the field, or
// words above numbers.
func isHeading(lines [][]string, field sheet.Field) bool {
	_, words := field.Cells.At(0).(*sheet.Text)
	first := strings.Join(lines[0], "")
	return slices.Contains(lines[0], field.Label) || slices.Contains(lines[0], sheet.Heading(field)) ||
		!words && strings.TrimSpace(first) != "" && !strings.ContainsAny(first, digits) && strings.ContainsAny(lines[1][0], digits)
}

const digits = "0123456789"

// named takes the heading off a table. Where it names the column that is pasted into, and others
// before it, the lines are what stands there, and in the columns beside it that have their names.
func named(lines [][]string, columns []sheet.Field) [][]string {
	is := func(cell, label string) bool { return strings.HasPrefix(cell, label) }
	at := slices.IndexFunc(lines[0], func(cell string) bool { return is(cell, columns[0].Label) })
	if at <= 0 {
		return lines[1:]
	}
	n := 1
	for at+n < len(lines[0]) && n < len(columns) && is(lines[0][at+n], columns[n].Label) {
		n++
	}
	rest := make([][]string, len(lines)-1)
	for i, line := range lines[1:] {
		rest[i] = append(line, make([]string, at+n)...)[at : at+n]
	}
	return rest
}

// typedInto is how many of the columns are typed into: not ticks.
func typedInto(columns []sheet.Field) (n int) {
	for _, c := range columns {
		if !isFlag(c) {
			n++
		}
	}
	return n
}

// withoutNumbers leaves out a first column that numbers the lines of a table, where it is one
// column more than there is room for, and what it numbers are numbers.
func withoutNumbers(lines [][]string, room int) [][]string {
	bare := make([][]string, len(lines))
	for i, line := range lines {
		if len(line) < 2 || len(line) <= room || len(lines) < 2 || line[0] != strconv.Itoa(i+1) || !strings.ContainsAny(line[1], digits) {
			return lines
		}
		bare[i] = line[1:]
	}
	return bare
}

// pasteCell puts one value in, unless it is not among those to choose from.
func (f *Form) pasteCell(p *RowsEdit, column sheet.Field, row int, value string) {
	column.Cells.Resize(f.rows[p.Group])
	if choice, ok := column.Cells.At(row).(*sheet.Choice); ok {
		value = choice.Plain(value)
		for _, o := range choice.Options() {
			if strings.EqualFold(o.Label, value) {
				value = o.Word
			}
		}
	}
	switch v := column.Cells.At(row).(type) {
	case *sheet.Choice, *sheet.Flag:
		if v.Set(value) != nil {
			p.Odd++
			return
		}
	}
	if old := strings.TrimSpace(f.Text(column.Key, row)); old != "" && old != value && row < p.rows {
		p.Replaced++
	}
	f.put(column, row, value)
}

// UndoRows puts back what stood in the rows before.
func (f *Form) UndoRows(p RowsEdit) {
	for key, cells := range p.before {
		f.text[key] = cells
	}
	if p.Group != nil {
		f.rows[p.Group], f.lines[p.Group] = p.rows, p.lines
	}
	f.changed()
}

// Says tells what was done, in a sentence or some.
func (p RowsEdit) Says() string {
	if p.Removed {
		return rowRemoved.Fill("row", p.Group.Row(p.From))
	}
	says := pastedInto.Fill("rows", p.Group.RowsFrom(p.From, p.Rows))
	if p.Replaced > 0 {
		says = word.Together(says, pastedOver.Fill(p.Replaced))
	}
	if p.Over > 0 {
		says = word.Together(says, pastedBeyond.Fill(p.Over, "most", strconv.Itoa(p.Group.Most)))
	}
	if p.Odd > 0 {
		says = word.Together(says, notPasted.Fill(p.Odd))
	}
	return says
}

// tableLines are the values of a text, line by line; empty lines at its end go.
func tableLines(text string) [][]string {
	text = strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\n"), "\r", "\n")
	var lines [][]string
	filled := 1
	for _, line := range strings.Split(strings.TrimPrefix(text, "\ufeff"), "\n") {
		values := strings.Split(line, "\t")
		for i, v := range values {
			values[i] = strings.TrimSpace(word.OneLine(v))
			if values[i] != "" {
				filled = len(lines) + 1
			}
		}
		lines = append(lines, values)
	}
	return lines[:filled]
}
