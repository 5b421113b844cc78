package calc

import (
	"errors"
	"strconv"
	"strings"

	"striderule/calc/unit"
)

// mostQuoted is how much of an entry a sentence repeats, in characters.
const mostQuoted = mostTemplate

// problemWith makes the sentence from the error of a value's Set.
func problemWith(f Field, row int, err error) Problem {
	says := f.name(row) + ": " + err.Error() + "."
	if refused, ok := errors.AsType[*unit.Error](err); ok { // errors.As would bring reflection in
		says = f.name(row) + " is " + quote(clip(strings.TrimSpace(refused.Text), mostQuoted)) + ": " + refused.Problem
		if errors.Is(err, unit.ErrAmbiguous) {
			says += ": " + refused.Advice + "."
		} else {
			says += ". " + capital(refused.Advice) + "."
		}
	}
	return Problem{f.Key, row, says}
}

// name is the field's label, with the row it stands in.
func (f Field) name(row int) string {
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
