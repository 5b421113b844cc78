package calc

import (
	"errors"

	"striderule/calc/unit"
)

// A Problem is something wrong with an entry or a link, as a whole sentence
// that names the field, repeats what was typed and says what to write.
type Problem struct {
	Key  string // of the field; of the unknown piece if no field has it
	Row  int    // in a group, from 0
	Says string
}

// mostQuoted is how much of an entry a sentence repeats, in characters.
const mostQuoted = mostTemplate

// problemWith makes the sentence from the error of a value's Set.
func problemWith(f Field, row int, err error) Problem {
	says := f.name(row) + ": " + err.Error() + "."
	if refused, ok := errors.AsType[*unit.Error](err); ok { // errors.As would bring reflection in
		says = f.name(row) + " is " + quote(clip(plainText(refused.Text), mostQuoted)) + ": " + refused.Problem
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
	return f.Label + " in " + f.Group.Noun + " " + itoa(row+1)
}
