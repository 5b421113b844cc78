package form

import (
	"strings"

	"striderule/calc/report"
	"striderule/calc/sheet"
)

// doubtCommas tells of a list's figure with a comma in it. Pages write the
// point: the comma may have stood between two figures before somebody encoded
// it.
func (f *Form) doubtCommas(field sheet.Field) {
	if field.Group == nil {
		return
	}
	for row, text := range f.text[field.Key] {
		if !strings.Contains(text, ",") || !f.Visible(field, row) {
			continue
		}
		if plain := field.Cells.At(row).Plain(text); !strings.Contains(plain, ",") {
			f.notices = append(f.notices, report.Problem{Key: field.Key, Row: row,
				Says: commaInValue.Fill("field", field.Name(row), "typed", text, "value", plain)})
		}
	}
}
