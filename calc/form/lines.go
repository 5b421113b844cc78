package form

import (
	"slices"
	"strings"

	"striderule/calc/lists"
	"striderule/calc/sheet"
)

// Lines of rows: neighbours that share a text, such as the runs at one speed. Where a line begins
// is the form's own; a link has the text in each row.

// startLines is how many lines an empty group has.
const startLines = 3

// Shared returns the column that the rows of a group share, if that applies now.
func (f *Form) Shared(g *sheet.Group) (shared sheet.Field, ok bool) {
	for _, key := range g.Shared {
		if field, known := f.Field(key); known && f.Visible(field, 0) {
			return field, true
		}
	}
	return sheet.Field{}, false
}

// Lines returns the rows with which the lines of a group begin; nil where its rows share nothing.
func (f *Form) Lines(g *sheet.Group) []int {
	if _, ok := f.Shared(g); !ok {
		return nil
	}
	return f.lines[g]
}

// lineOf is the first row of a row's line, and the one behind its last.
func (f *Form) lineOf(g *sheet.Group, row int) (from, to int) {
	to = f.rows[g]
	for _, start := range f.lines[g] {
		if start > row {
			return from, start
		}
		from = start
	}
	return from, to
}

// layLines finds the lines of groups that have none yet: where the shared text changes, or as an
// empty form has them.
func (f *Form) layLines() {
	for _, field := range f.fields {
		g := field.Group
		if g == nil || f.lines[g] != nil || len(g.Shared) == 0 {
			continue
		}
		shared, ok := f.Shared(g)
		if !ok {
			continue
		}
		f.rows[g] = max(f.rows[g], startLines*sheet.Repeats)
		starts := []int{0}
		typed := f.Filled(shared)
		for row := 1; row < f.rows[g]; row++ {
			text, above := strings.TrimSpace(f.Text(shared.Key, row)), strings.TrimSpace(f.Text(shared.Key, row-1))
			if typed && (text != "" || row == len(f.text[shared.Key])) && text != above || !f.IsRowFilled(g, row-1) && row%sheet.Repeats == 0 && text == "" {
				starts = append(starts, row)
			}
		}
		f.lines[g] = starts
	}
}

// IsRowFilled reports whether something is typed in a row of a group.
func (f *Form) IsRowFilled(g *sheet.Group, row int) bool {
	return slices.ContainsFunc(f.fields, func(c sheet.Field) bool { return c.Group == g && f.Text(c.Key, row) != "" })
}

// AddLine adds a line at the end, with rows for repeats, as far as there is room.
func (f *Form) AddLine(g *sheet.Group) {
	start := f.rows[g]
	f.rows[g] = min(g.Most, start+sheet.Repeats)
	if f.rows[g] > start && f.lines[g] != nil {
		f.lines[g] = append(f.lines[g], start)
	}
	f.changed()
}

// AddRepeat adds a row at the end of a row's line, and returns it.
func (f *Form) AddRepeat(g *sheet.Group, row int) int {
	from, to := f.lineOf(g, row)
	if f.rows[g] >= g.Most {
		return row
	}
	for _, c := range f.fields {
		if c.Group == g && len(f.text[c.Key]) > to {
			f.text[c.Key] = lists.Concat(f.text[c.Key][:to], []string{""}, f.text[c.Key][to:])
		}
	}
	f.rows[g]++
	for i, start := range f.lines[g] {
		if start >= to {
			f.lines[g][i]++
		}
	}
	if shared, ok := f.Shared(g); ok && f.Text(shared.Key, from) != "" {
		f.put(shared, to, f.Text(shared.Key, from))
	}
	f.changed()
	return to
}

// dropFromLines follows a row that was taken out.
func (f *Form) dropFromLines(g *sheet.Group, row int) {
	if f.lines[g] == nil {
		return
	}
	starts := []int{0}
	for _, start := range f.lines[g][1:] {
		if start > row {
			start--
		}
		if start > starts[len(starts)-1] && start < f.rows[g] {
			starts = append(starts, start)
		}
	}
	f.lines[g] = starts
}
