package sheet

import (
	"errors"
	"strconv"
	"strings"

	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// mostQuoted is how much of an entry a sentence repeats, in characters.
const mostQuoted = mostTemplate

// ProblemWith makes the sentence from the error of a value's Set.
func ProblemWith(f Field, row int, err error) report.Problem {
	says := f.Name(row) + ": " + err.Error() + "."
	if refused, ok := errors.AsType[*unit.Error](err); ok { // errors.As would bring reflection in
		says = f.Name(row) + " is " + word.Quote(word.Clip(strings.TrimSpace(refused.Text), mostQuoted)) + ": " + refused.Problem
		if errors.Is(err, unit.ErrAmbiguous) {
			says += ": " + refused.Advice + "."
		} else {
			says += ". " + word.Capital(refused.Advice) + "."
		}
	}
	return report.Problem{Key: f.Key, Row: row, Says: says}
}

// Name is the field's label, with the row it stands in.
func (f Field) Name(row int) string {
	if f.Group == nil {
		return f.Label
	}
	return f.Label + " in " + f.Group.Noun + " " + strconv.Itoa(row+1)
}

// Heading names a column outside of the page: with the unit of bare numbers.
func Heading(column Field) string {
	if u, ok := column.Cells.At(0).(interface{ Unit() string }); ok && u.Unit() != "" {
		return column.Label + " (" + u.Unit() + ")"
	}
	return column.Label
}
