package logbook

import (
	"slices"
	"strconv"
	"strings"

	"striderule/calc/link"
	"striderule/calc/word"
)

// A Damage is what could not be read in a file.
type Damage struct {
	Line int // counted from 1
	Says string
}

func (d Damage) String() string { return inLine.Fill("line", strconv.Itoa(d.Line), "damage", d.Says) }

// MostDamages is how many damages of a file are reported.
const MostDamages = 1000

// A File is what ReadFile made of one.
type File struct {
	Entries []Entry  // those that could be read
	Damages []Damage // what could not, in the order of the file, up to MostDamages
	Newer   bool     // the file is of a newer version: it may say more than was understood
	Foreign bool     // it is no log at all
}

// ReadFile reads a file of WriteFile, also one that was damaged, cut off, or
// written again by an editor: whatever entries there are, and what is wrong with
// the rest.
func ReadFile(text string) File {
	r := reader{scanner: scanner{text: strings.TrimPrefix(text, "\ufeff")}}
	r.read()
	if r.log == "" && len(r.file.Entries) == 0 && r.restart() {
		r.entries() // perhaps only the beginning is gone
	}
	switch {
	case r.log == mark:
	case r.log != "" || len(r.file.Entries) == 0:
		return File{Foreign: true}
	default:
		damages := append([]Damage{{1, startMissing}}, r.file.Damages...)
		r.file.Damages = damages[:min(len(damages), MostDamages)]
	}
	return r.file
}

// A reader reads a file.
type reader struct {
	scanner
	log  string
	file File
}

func (r *reader) damage(at int, says string) {
	if len(r.file.Damages) < MostDamages {
		r.file.Damages = append(r.file.Damages, Damage{r.lineOf(at), says})
	}
}

// read reads what stands around the entries.
func (r *reader) read() {
	r.space()
	if !r.take('{') {
		return
	}
	for {
		if !r.member() {
			return
		}
		r.space()
		switch {
		case r.take(','):
		case r.take('}'):
			if r.space(); r.at < len(r.text) {
				r.damage(r.at, textAfterLog)
			}
			return
		default:
			r.lost(r.at, logEndless)
			return
		}
	}
}

// restart goes to the first entry, with nothing reported yet.
func (r *reader) restart() bool {
	r.file = File{}
	return r.next(0)
}

// lost tells of a damage outside of the entries, and goes on with the first
// entry behind it.
func (r *reader) lost(at int, says string) {
	r.damage(at, says)
	if r.next(r.at) {
		r.entries()
	}
}

// member reads one key of the log with its value, and reports whether it makes
// sense to go on behind it.
func (r *reader) member() bool {
	r.space()
	key, bad := r.string()
	if bad == nil {
		r.space()
		if !r.take(':') {
			bad = r.fault(noColon)
		}
	}
	if bad != nil {
		r.lost(bad.at, bad.says)
		return false
	}
	r.space()
	if key == "entries" {
		if !r.take('[') {
			r.damage(r.at, noList)
		}
		return r.entries()
	}
	at := r.at
	v, bad := r.value(0)
	if bad != nil {
		r.lost(bad.at, bad.says)
		return false
	}
	switch key {
	case versionKey:
		r.log = v.text
	case "version":
		n, err := strconv.Atoi(v.text)
		if err != nil || n < 1 {
			r.damage(at, noVersion.Fill("version", strconv.Itoa(Version)))
		}
		r.file.Newer = n > Version
	}
	return true
}

// entries reads the list of entries, and reports whether its end was found.
func (r *reader) entries() bool {
	for {
		r.space()
		switch {
		case r.at == len(r.text):
			r.damage(r.at, cutOff)
			return false
		case r.take(']'):
			return true
		case r.take(','):
			continue
		}
		start := r.at
		v, bad := r.value(0)
		if bad != nil {
			r.damage(bad.at, bad.says)
			if !r.next(start + 1) {
				return false
			}
			continue
		}
		if v.kind != anObject {
			r.damage(start, noObject)
		} else {
			r.entry(start, v)
		}
		if r.space(); r.at < len(r.text) && strings.IndexByte(",]", r.text[r.at]) < 0 {
			r.damage(r.at, noComma)
			if r.text[r.at] != '{' && !r.next(r.at) {
				return false
			}
		}
	}
}

// entry takes an entry that is whole as JSON.
func (r *reader) entry(start int, v value) {
	var e Entry
	var other []link.Piece
	seen, valued := map[string]bool{}, false
	for i := len(v.members) - 1; i >= 0; i-- { // of two with the same key the last one counts
		m := v.members[i]
		if seen[m.key] || m.value.kind == aNull || m.key == "" {
			continue
		}
		seen[m.key] = true
		f, known := fieldOf(m.key)
		switch {
		case !known && m.value.kind == aList || !known && m.value.kind == anObject:
			r.damage(m.value.at, unknownKey.Fill("key", quote(m.key)))
		case !known:
			if key := strings.TrimSpace(word.OneLine(m.key)); key == m.key && key != versionKey {
				other = append(other, link.Piece{Key: key, Cells: []string{word.OneLine(m.value.text)}})
			}
		case f.Number() && m.value.kind == aNumber:
			n, err := strconv.ParseFloat(m.value.text, 64)
			if err != nil {
				r.damage(m.value.at, tooLarge.Fill("key", quote(m.key)))
				return
			}
			*f.number(&e) = n
			valued = valued || f.Key == "value"
		case !f.Number() && m.value.kind == aString:
			*f.text(&e) = m.value.text
		default:
			r.damage(m.value.at, f.wants().Fill("key", quote(m.key)))
			return
		}
	}
	slices.Reverse(other)
	e.Other = link.Join(other)
	if e.ID == "" {
		e.ID = idOf(e.tidy())
	}
	e, err := e.checked(valued)
	if err == nil && len(e.Text()) > MostEntry-mostID { // with room for another ID
		err = errLong
	}
	if err != nil {
		r.damage(start, leftOut.Fill("why", err.Error()))
		return
	}
	r.file.Entries = append(r.file.Entries, e)
}

// wants says what belongs into a field.
func (f Field) wants() word.Template {
	if f.Number() {
		return wantsNumber
	}
	return wantsText
}

// next goes to the next place from a position on where an entry may begin: a
// brace with a key in it that is no key's value and in no other list. A quote
// within a text is escaped, so that a text never looks so.
func (r *reader) next(from int) bool {
	for r.at = from; r.at < len(r.text); r.at++ {
		if r.text[r.at] != '{' {
			continue
		}
		inside := strings.TrimLeft(r.text[r.at+1:min(len(r.text), r.at+200)], blanks)
		before := strings.TrimRight(r.text[max(0, r.at-200):r.at], blanks)
		if strings.HasPrefix(inside, `"`) && !strings.HasSuffix(before, ":") && !inOtherList(before) {
			return true
		}
	}
	return false
}

// inOtherList reports whether a text ends with the beginning of a list that is
// not the log's own.
func inOtherList(before string) bool {
	before, begins := strings.CutSuffix(before, "[")
	if !begins {
		return false
	}
	key, ok := strings.CutSuffix(strings.TrimRight(before, blanks), ":")
	return ok && !strings.HasSuffix(strings.TrimRight(key, blanks), `"entries"`)
}
