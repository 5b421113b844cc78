package calc

import "strings"

// doubtCommas tells of a list's figure with a comma in it. Pages write the
// point: the comma may have stood between two figures before somebody encoded
// it.
func (f *Form) doubtCommas(field Field) {
	if field.Group == nil {
		return
	}
	for row, text := range f.text[field.Key] {
		if !strings.Contains(text, ",") || !f.Visible(field, row) {
			continue
		}
		if plain := field.Cells.At(row).Plain(text); !strings.Contains(plain, ",") {
			f.notices = append(f.notices, Problem{field.Key, row,
				field.name(row) + " is " + quote(text) + " in the link, which is read as " + plain + ". Two values have a plain comma between them."})
		}
	}
}
