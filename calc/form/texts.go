package form

import (
	"slices"

	"striderule/calc/link"
)

// Texts are texts to put into a form at once, and whose axis it is about then.
type Texts struct {
	Machine []link.Piece
	texts   []textsOf
}

type textsOf struct {
	key   string
	row   int // of the only cell; anyRow if cells are all that the field holds
	cells []string
}

const anyRow = -1

// Fill makes cells all that a field holds.
func (t *Texts) Fill(key string, cells ...string) {
	t.texts = append(t.texts, textsOf{key, anyRow, cells})
}

// Cell makes a text that of one row.
func (t *Texts) Cell(key string, row int, text string) {
	t.texts = append(t.texts, textsOf{key, row, []string{text}})
}

// Put puts texts in, which are the person's own, and returns what was there, to put back.
func (f *Form) Put(t Texts) (before Texts) {
	before.Machine = f.machine
	for _, s := range t.texts {
		field, ok := f.Field(s.key)
		if !ok {
			continue
		}
		before.Fill(s.key, slices.Clone(f.text[s.key])...)
		delete(f.brought, s.key)
		if s.row == anyRow {
			f.text[s.key] = nil
		}
		for i, cell := range s.cells {
			f.put(field, max(s.row, 0)+i, cell)
		}
	}
	f.SetMachine(t.Machine)
	f.changed()
	return before
}
