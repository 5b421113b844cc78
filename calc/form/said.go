package form

import (
	"strconv"
	"strings"

	"striderule/calc/lists"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// An Entry is what one field holds, in a few words.
type Entry struct{ Key, Says string }

// Assumed are the entries that count though their fields are folded away above the answer: the
// choices, what is typed, and what a blank one counts as.
func (f *Form) Assumed() []Entry {
	var all []Entry
	for _, field := range f.fields {
		if field.Needed || field.Section.Folded || field.Group != nil || !f.Visible(field, 0) {
			continue
		}
		says := f.saidBlank(field.Key)
		if f.Filled(field) || says == "" {
			says = f.said(field, 0)
		}
		if text := f.Text(field.Key, 0); text != "" && says != "" && isEntry(field) {
			says = entryHeld.Fill("field", field.InShort(), "text", says)
		}
		if says != "" {
			all = append(all, Entry{field.Key, says})
		}
	}
	return all
}

// Entries are all that is typed or chosen, in order; the rows of a column in one.
func (f *Form) Entries() []Entry {
	var all []Entry
	for _, field := range f.fields {
		says := f.Entered(field)
		if _, ticks := field.Cells.(*sheet.Checks); !ticks && choiceOf(field) != nil && f.Filled(field) {
			says = f.chosen(field)
		}
		if says != "" {
			all = append(all, Entry{field.Key, says})
		}
	}
	return all
}

// chosen is what a choice, or each of a column, stands at; empty if it has no part.
func (f *Form) chosen(field sheet.Field) string {
	if !f.anyVisible(field) {
		return ""
	}
	options := make([]string, f.Rows(field))
	for row := range options {
		options[row] = "–"
		if f.Visible(field, row) {
			options[row] = labelled(field, field.Cells.At(row).Plain(f.Text(field.Key, row)))
		}
	}
	return strings.Join(options, ", ")
}

// Holds says what fields hold that were typed or chosen, in a few words; empty if nothing was.
func (f *Form) Holds(fields []sheet.Field) string {
	var says []string
	for i, field := range fields {
		switch {
		case field.Group != nil && i > 0 && fields[i-1].Group == field.Group: // with the first column
		case field.Group != nil:
			says = append(says, f.heldRows(field.Group, fields)...)
		case f.Filled(field) && f.Visible(field, 0):
			if said := f.said(field, 0); said != "" {
				if isEntry(field) {
					said = entryHeld.Fill("field", field.InShort(), "text", said)
				}
				says = append(says, said)
			}
		}
	}
	return strings.Join(says, ", ")
}

// HoldsRow says what a row of a group holds, in a few words.
func (f *Form) HoldsRow(columns []sheet.Field, row int) string { return f.heldRow(columns, row, ", ") }

func (f *Form) heldRow(columns []sheet.Field, row int, between string) string {
	var says []string
	for _, c := range columns {
		if c, _ = f.Field(c.Key); f.Text(c.Key, row) != "" && f.Visible(c, row) {
			if said := f.said(c, row); said != "" {
				says = append(says, said)
			}
		}
	}
	return strings.Join(says, between)
}

// heldRows are the rows of a group that hold something, short ones themselves, else how many; and
// which of them a yes stands in.
func (f *Form) heldRows(g *sheet.Group, fields []sheet.Field) (says []string) {
	var columns []sheet.Field
	var flags []string
	for _, c := range fields {
		switch {
		case c.Group != g:
		case !isFlag(c):
			columns = append(columns, c)
		case f.Entered(c) != "":
			flags = append(flags, entryHeld.Fill("field", c.InShort(), "text", f.Entered(c)))
		}
	}
	var rows []string
	for row := range f.rows[g] {
		if held := f.heldRow(columns, row, betweenCells); held != "" {
			rows = append(rows, held)
		}
	}
	if all := strings.Join(rows, ", "); len(all) > mostHeld {
		says = append(says, rowsHeld.Fill("n", strconv.Itoa(len(rows)), "rows", g.Words.All))
	} else if all != "" {
		says = append(says, all)
	}
	return lists.Concat(says, flags)
}

// mostHeld is how long the rows of a group may be in the line of a fold.
const mostHeld = 24

// said is what a field holds: a choice that is made, the ticks, or the text with its unit.
func (f *Form) said(field sheet.Field, row int) string {
	if checks, ok := field.Cells.(*sheet.Checks); ok {
		return ticksHeld.Fill("n", strconv.Itoa(checks.Len()), "all", strconv.Itoa(len(checks.Options())))
	}
	switch v := field.Cells.At(row).(type) {
	case *sheet.Choice:
		word := v.Plain(f.Text(field.Key, row))
		for _, o := range v.Options() {
			if o.Word == word || word == "" && o.Word == v.Word {
				return o.Said()
			}
		}
	case *sheet.Flag:
		return field.Label
	case *unit.Entry:
		return v.Shown(f.Text(field.Key, row))
	}
	return strings.TrimSpace(f.Text(field.Key, row))
}

func isFlag(field sheet.Field) bool {
	_, ok := field.Cells.(*sheet.FlagList)
	return ok
}

func isEntry(field sheet.Field) bool {
	_, ok := field.Cells.At(0).(*unit.Entry)
	return ok
}

// saidBlank is what a blank entry counts as, empty if nothing is to be said.
func (f *Form) saidBlank(key string) string {
	for _, a := range f.report.Assumed {
		if a.Key == key {
			return a.Says
		}
	}
	return ""
}
