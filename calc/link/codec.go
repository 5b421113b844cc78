package link

import (
	"strings"

	"striderule/calc/word"
)

// Version is what links are marked with. Defaults, keys and meanings are
// frozen for each version: a link made today opens for ever.
const Version = "1"

// MostLink is the length in characters up to which a link is read.
const MostLink = 4000

// ClaimKey carries, in a shared link, the result that its sender saw, as
// output:value:uncertainty:edition:sum; the last three may be missing. It stands before the
// entries: a link that was cut short has it still. See Sum.
const ClaimKey = "saw"

// RemarkKey carries a line that somebody wrote to go with a reply. It is text and nothing else.
const RemarkKey = "remark"

// WasMark begins the keys under which a reply carries what the changed fields
// held before: only they travel twice.
const WasMark = "was-"

const hex = "0123456789ABCDEF"

// A Piece is one `key=a,b` of a fragment, decoded.
type Piece struct {
	Key   string
	Cells []string // nil if there is no `=`
}

// Split reads a fragment. It is total: what has no `=` is a piece without
// cells, and a broken percent escape stands for itself. Nothing is dropped or
// reordered, as a query parser would do.
func Split(fragment string) []Piece {
	fragment = strings.TrimPrefix(fragment, "#")
	var pieces []Piece
	for _, raw := range strings.Split(fragment, "&") {
		if raw == "" {
			continue
		}
		key, list, found := strings.Cut(raw, "=")
		p := Piece{Key: Unescape(key)}
		if found {
			for _, cell := range strings.Split(list, ",") {
				p.Cells = append(p.Cells, Unescape(cell))
			}
		}
		pieces = append(pieces, p)
	}
	return pieces
}

// CellsOf are the cells of the first piece with a key.
func CellsOf(pieces []Piece, key string) []string {
	for _, p := range pieces {
		if p.Key == key {
			return p.Cells
		}
	}
	return nil
}

// TextOf are those cells as one text.
func TextOf(pieces []Piece, key string) string { return strings.Join(CellsOf(pieces, key), ",") }

// Join writes pieces as a fragment without its `#`.
func Join(pieces []Piece) string {
	var b strings.Builder
	for _, p := range pieces {
		if b.Len() > 0 {
			b.WriteByte('&')
		}
		b.WriteString(Escape(p.Key))
		mark := byte('=')
		for _, c := range p.Cells {
			b.WriteByte(mark)
			b.WriteString(Escape(c))
			mark = ','
		}
	}
	return guardEnd(b.String())
}

// Escape writes text so that it survives a forum: only letters, digits and
// what stands inside links everywhere stay as they are.
func Escape(text string) string {
	if !strings.ContainsFunc(text, func(r rune) bool { return r > '~' || !staysAsItIs(byte(r)) }) {
		return text // most texts
	}
	var b strings.Builder
	for i := range len(text) {
		if staysAsItIs(text[i]) {
			b.WriteByte(text[i])
		} else {
			writeEscape(&b, text[i])
		}
	}
	return b.String()
}

func staysAsItIs(c byte) bool { return isAlnum(c) || strings.IndexByte("-._~/:", c) >= 0 }

func writeEscape(b *strings.Builder, c byte) {
	b.WriteByte('%')
	b.WriteByte(hex[c>>4])
	b.WriteByte(hex[c&15])
}

// guardEnd escapes a last character that auto-linkers would cut off. The
// link's own marks stay: they mean something.
func guardEnd(s string) string {
	if s == "" || isAlnum(s[len(s)-1]) || strings.IndexByte("=,&", s[len(s)-1]) >= 0 {
		return s
	}
	var b strings.Builder
	b.WriteString(s[:len(s)-1])
	writeEscape(&b, s[len(s)-1])
	return b.String()
}

func isAlnum(c byte) bool {
	return c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z'
}

// Unescape decodes percent escapes and makes the text one valid line.
func Unescape(s string) string {
	if strings.IndexByte(s, '%') < 0 {
		return word.OneLine(s)
	}
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		if s[i] == '%' && i+2 < len(s) {
			hi, lo := strings.IndexByte(hex, upper(s[i+1])), strings.IndexByte(hex, upper(s[i+2]))
			if hi >= 0 && lo >= 0 {
				b.WriteByte(byte(hi<<4 | lo))
				i += 2
				continue
			}
		}
		b.WriteByte(s[i])
	}
	return word.OneLine(b.String())
}

func upper(c byte) byte {
	if c >= 'a' && c <= 'z' {
		return c - 'a' + 'A'
	}
	return c
}
