package calc

import "strings"

// encodedTwice reports whether every percent sign in a fragment is an encoded
// one that begins an escape. Somebody may have typed that: it is no certain
// sign of a link that was encoded twice.
func encodedTwice(fragment string) bool {
	n := 0
	for i := range len(fragment) {
		c, ok := escaped(fragment[i:])
		if !ok {
			continue
		}
		if c != '%' {
			return false
		}
		if _, twice := escaped("%" + fragment[i+3:]); !twice {
			return false
		}
		n++
	}
	return n > 0
}

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
