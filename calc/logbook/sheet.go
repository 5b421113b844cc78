package logbook

import (
	"strconv"
	"strings"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/word"
)

// The keys that a file of a sheet has besides those of an entry.
const (
	sheetKey   = "sheet"
	entriesKey = "entries"
)

// sheetKeys are the keys of a file of one sheet, in the order in which they are
// written: its own, and some of an entry.
var sheetKeys = [...]string{sheetKey, "version", "page", entriesKey, "output", "unit", "value", "u", "verdict"}

// sheetOwn are its own.
var sheetOwn = [...]Field{
	{Key: sheetKey, Holds: holdsFileOfSheet.Fill("mark", mark)},
	{Key: "version", Holds: holdsVersion},
	{Key: entriesKey, Holds: holdsEntries},
}

// SheetFields are the keys of a file of one sheet, as Fields are those of an
// entry.
func SheetFields() []Field {
	var fields []Field
	for _, key := range sheetKeys {
		f, _ := fieldOf(key)
		for _, own := range sheetOwn {
			if own.Key == key {
				f = own
			}
		}
		fields = append(fields, f)
	}
	return fields
}

// WriteSheet returns a file that holds a form's sheet as JSON, with its result
// for who reads the file otherwise. It is empty while nothing is typed.
func WriteSheet(typed *form.Form) string {
	e := entryOf(typed)
	if e.Sheet == "" {
		return ""
	}
	var b strings.Builder
	o := object{&b, "{"}
	for _, f := range SheetFields() {
		switch f.Key {
		case sheetKey:
			o.key(f.Key)
			writeString(&b, mark)
		case "version":
			o.key(f.Key)
			b.WriteString(strconv.Itoa(Version))
		case entriesKey:
			o.key(f.Key)
			writePieces(&b, link.Split(e.Sheet))
		default:
			o.field(f, &e)
		}
	}
	b.WriteString("}\n")
	return b.String()
}

// writePieces writes a link's pieces, one a line.
func writePieces(b *strings.Builder, pieces []link.Piece) {
	o := object{b, "{\n"}
	for _, p := range pieces {
		o.key(p.Key)
		o.before = ",\n"
		switch len(p.Cells) {
		case 0:
			b.WriteString("null")
		case 1:
			writeString(b, p.Cells[0])
		default:
			comma := "["
			for _, c := range p.Cells {
				b.WriteString(comma)
				comma = ","
				writeString(b, c)
			}
			b.WriteByte(']')
		}
	}
	b.WriteString("\n}")
}

// A refusal says in whole sentences why a file is not opened.
type refusal string

func (r refusal) Error() string { return string(r) }

// ErrLog is the error of a file that holds a log.
const ErrLog refusal = isALog

// MostSheet is how long a file of a sheet may be, in bytes.
const MostSheet = 100_000

// ReadSheet returns the page and the link's fragment that a file of WriteSheet
// holds. The error says what is wrong with any other.
func ReadSheet(text string) (slug, fragment string, err error) {
	slug, fragment, err = readSheet(text)
	if err != nil && !ReadFile(text).Foreign {
		err = ErrLog
	}
	return slug, fragment, err
}

func readSheet(text string) (slug, fragment string, err error) {
	if len(text) > MostSheet {
		return "", "", refusal(longSheet)
	}
	s := scanner{text: strings.TrimPrefix(text, "\ufeff")}
	v, bad := s.value(0)
	if s.space(); bad == nil && s.at < len(s.text) {
		bad = s.fault(textAfterEnd)
	}
	entries := v.get(entriesKey)
	slug = v.get("page").text
	_, known := calc.PageOf(slug)
	switch {
	case bad != nil && strings.Contains(text, `"`+sheetKey+`"`):
		return "", "", refusal(damagedSheet.Fill("line", strconv.Itoa(s.lineOf(bad.at)), "damage", bad.says))
	case v.get(sheetKey).text != mark:
		return "", "", refusal(notASheet)
	case !known:
		return "", "", refusal(unknownPage.Fill("page", quote(slug)))
	case entries.kind != anObject:
		return "", "", refusal(noEntries.Fill("key", quote(entriesKey)))
	}
	var pieces []link.Piece
	for _, m := range entries.members {
		p := link.Piece{Key: m.key}
		cells := []member{m}
		if m.value.kind == aList {
			cells = m.value.members
		}
		for _, c := range cells {
			switch {
			case c.value.kind >= anObject:
				return "", "", refusal(textInEntries.Fill("line", strconv.Itoa(s.lineOf(c.value.at)), "key", quote(m.key)))
			case c.value.kind != aNull:
				p.Cells = append(p.Cells, word.OneLine(c.value.text))
			case m.value.kind == aList:
				p.Cells = append(p.Cells, "")
			}
		}
		pieces = append(pieces, p)
	}
	// A newer version is reported as that of a link: read as far as it is understood.
	if n, err := strconv.Atoi(v.get("version").text); err == nil && n > Version {
		for i := range pieces {
			if pieces[i].Key == "v" {
				pieces[i].Cells = []string{strconv.Itoa(n)}
			}
		}
	}
	return slug, link.Join(pieces), nil
}

// get returns the value of a key, nothing if there is none. Of two with the same
// key the last one counts.
func (v value) get(key string) value {
	for i := len(v.members) - 1; i >= 0; i-- {
		if v.members[i].key == key {
			return v.members[i].value
		}
	}
	return value{kind: aNull}
}
