package form

import (
	"striderule/calc/link"
	"striderule/calc/sheet"
)

// Fragment returns the link's fragment without `#`, canonical: fixed order of
// keys, decimal points, defaults and hidden text left out. It is empty when
// nothing is typed.
func (f *Form) Fragment() string { return link.Join(f.pieces()) }

func versionPiece() link.Piece { return link.Piece{Key: "v", Cells: []string{link.Version}} }

func (f *Form) pieces() []link.Piece { return f.piecesOf(f.plainText()) }

// piecesOf are the pieces of a link to a sheet of this text, and what else the link had.
func (f *Form) piecesOf(text map[string][]string) []link.Piece {
	pieces := make([]link.Piece, 1, len(text)+len(MachineKeys)+len(f.unknown)+2) // a result may follow
	pieces[0] = versionPiece()
	for _, field := range f.fields {
		if cells := text[field.Key]; len(cells) > 0 {
			pieces = append(pieces, link.Piece{Key: field.Key, Cells: cells})
		}
	}
	for _, p := range f.machine {
		if _, field := f.Field(p.Key); !field {
			pieces = append(pieces, p)
		}
	}
	pieces = append(pieces, f.unknown...)
	if len(pieces) == 1 {
		return nil
	}
	return pieces
}

// plainText is the text of all fields as a link carries it; what is empty is left out. It is
// worked out once after each change, and nobody may change it.
func (f *Form) plainText() map[string][]string {
	if f.plain == nil {
		f.plain = map[string][]string{}
		for _, field := range f.fields {
			if cells := f.plainCells(field); len(cells) > 0 {
				f.plain[field.Key] = cells
			}
		}
	}
	return f.plain
}

// plainCells returns a field's cells as a link carries them, without empty
// ones at the end.
func (f *Form) plainCells(field sheet.Field) []string {
	if !f.Filled(field) {
		return nil // most of them: what is empty is the default
	}
	var cells []string
	if checks, ok := field.Cells.(*sheet.Checks); ok && f.Visible(field, 0) {
		return f.plainTicks(checks, field.Key)
	}
	for row := range f.Rows(field) {
		cell := ""
		if f.Visible(field, row) {
			cell = field.Cells.At(row).Plain(f.Text(field.Key, row))
			if c, ok := field.Cells.At(row).(*sheet.Choice); ok && cell == c.Options()[0].Word {
				cell = "" // the default
			}
		}
		cells = append(cells, cell)
	}
	for len(cells) > 0 && cells[len(cells)-1] == "" {
		cells = cells[:len(cells)-1]
	}
	return cells
}

// plainTicks returns the ticks in the order of the options, then what is no
// option at all.
func (f *Form) plainTicks(checks *sheet.Checks, key string) []string {
	var cells []string
	for _, o := range checks.Options() {
		if checks.Has(o.Word) {
			cells = append(cells, o.Word)
		}
	}
	for row, text := range f.text[key] {
		if f.ProblemAt(key, row) != "" {
			cells = append(cells, text)
		}
	}
	return cells
}
