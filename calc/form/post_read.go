package form

import (
	"slices"
	"strings"

	"striderule/calc/link"
	"striderule/calc/sheet"
)

// ReadPost reads a sheet back from the plain text of its post, quoted or not; nil if it is none of
// this page. What is read is held against what a post would say of it: what is not the same to
// the letter is not taken, and said tells of it.
func ReadPost(p sheet.Page, text string) (f *Form, said []string) {
	titled := false
	f, said = untyped(p), []string{link.FromPost}
	for line := range strings.Lines(text) {
		line = strings.Trim(line, "> \t\r\n")
		bare := strings.TrimLeft(line, "*•- ")
		titled = titled || line == p.Title
		if !titled || bare == line {
			continue // an entry stands in a list
		}
		if !f.enterLine(bare) {
			said = append(said, postUnread.Fill("line", bare))
		}
	}
	if f.solve(); f.Fragment() == "" {
		return nil, nil
	}
	if a := f.report.Answer; a != nil && !strings.Contains(text, a.Label+": "+a.Figure.String()) {
		said = append(said, postOther)
	}
	return f, said
}

// enterLine enters a line of a post into the field that it is of.
func (f *Form) enterLine(line string) bool {
	for _, field := range f.fields {
		value, found := strings.CutPrefix(line, field.Label+": ")
		if !found || f.text[field.Key] != nil {
			continue
		}
		bare := strings.TrimSuffix(strings.TrimSuffix(value, unitOf(field)), " ")
		for _, text := range []string{bare, value} {
			f.take(field, f.cellsOf(field, text))
			f.readCells()
			if f.anyVisible(field) && f.Entered(field) == value {
				return true
			}
			delete(f.text, field.Key)
		}
	}
	return false
}

// cellsOf takes apart what inWords and flagged put together.
func (f *Form) cellsOf(field sheet.Field, text string) []string {
	if checks, ok := field.Cells.(*sheet.Checks); ok { // whose labels have commas in them
		var ticked []string
		for _, o := range checks.Options() {
			if rest, found := strings.CutPrefix(text, o.Label); found {
				ticked, text = append(ticked, o.Word), strings.TrimPrefix(rest, ", ")
			}
		}
		return ticked
	}
	field.Cells.Resize(1)
	if field.Group == nil {
		return []string{wordOf(field, text)}
	}
	cells := strings.Split(text, ", ")
	if _, flags := field.Cells.At(0).(*sheet.Flag); flags {
		rows := make([]string, field.Group.Most)
		for row := range rows {
			if slices.Contains(cells, field.Group.Row(row)) {
				rows[row] = (&sheet.Flag{On: true}).String()
			}
		}
		return rows
	}
	for i, cell := range cells {
		if cells[i] = wordOf(field, cell); cell == "–" {
			cells[i] = ""
		}
	}
	return cells
}

// wordOf is the word of the option that a label is of, or the text itself.
func wordOf(field sheet.Field, label string) string {
	for _, o := range optionsOf(field) {
		if o.Label == label {
			return o.Word
		}
	}
	return label
}
