package sheet

import (
	"errors"

	"striderule/calc/report"
	"striderule/calc/unit"
)

// ProblemWith makes the sentence from the error of a value's Set.
func ProblemWith(f Field, row int, err error) report.Problem {
	says := ""
	if refused, ok := errors.AsType[*unit.Error](err); ok { // errors.As would bring reflection in
		says = refused.In(f.Name(row))
	} else {
		says = notToRead.Fill("field", f.Name(row))
	}
	return report.Problem{Key: f.Key, Row: row, Says: says}
}

// Name is the field's label, with the row it stands in.
func (f Field) Name(row int) string {
	if f.Group == nil {
		return f.Label
	}
	return inRow.Fill("field", f.Label, "row", f.Group.Row(row))
}

// Named is the field's label, with the rows that it is a column of: it tells columns with the
// same label apart.
func (f Field) Named() string {
	if f.Group == nil {
		return f.Label
	}
	return inRows.Fill("field", f.Label, "rows", f.Group.Words.All)
}

// Heading names a column outside of the page: with the unit of bare numbers.
func Heading(column Field) string {
	if u, ok := column.Cells.At(0).(interface{ Unit() string }); ok && u.Unit() != "" {
		return withUnit.Fill("field", column.Label, "unit", u.Unit())
	}
	return column.Label
}
