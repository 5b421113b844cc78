package logbook

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"striderule/calc"
)

// The keys that a file of a sheet has besides those of an entry.
const (
	sheetKey   = "sheet"
	entriesKey = "entries"
)

// SheetFields are the keys of a file of one sheet, in the order in which they are
// written. What is empty is left out; what has no function is written apart.
var SheetFields = slices.Concat([]Field{
	{Key: sheetKey, Holds: "what the file is: " + mark},
	{Key: "version", Holds: "how it is to be read: " + strconv.Itoa(Version)},
}, fieldsOf("page"), []Field{
	{Key: entriesKey, Holds: "the entries: key and text as in the link of the sheet, a list where there are several; saw is the result for the check by whoever opens it"},
}, fieldsOf("output", "label", "unit", "value", "u", "verdict"))

func fieldsOf(keys ...string) []Field {
	var fields []Field
	for _, key := range keys {
		f, _ := fieldOf(key)
		fields = append(fields, f)
	}
	return fields
}

// WriteSheet returns a file that holds a form's sheet as JSON, with its result
// for who reads the file otherwise. It is empty while nothing is typed.
func WriteSheet(form *calc.Form) string {
	e := entryOf(form)
	if e.Sheet == "" {
		return ""
	}
	var b strings.Builder
	o := object{&b, "{"}
	for _, f := range SheetFields {
		switch f.Key {
		case sheetKey:
			o.key(f.Key)
			writeString(&b, mark)
		case "version":
			o.key(f.Key)
			b.WriteString(strconv.Itoa(Version))
		case entriesKey:
			o.key(f.Key)
			writePieces(&b, calc.Split(e.Sheet))
		default:
			o.field(f, &e)
		}
	}
	b.WriteString("}\n")
	return b.String()
}

// writePieces writes a link's pieces, one a line.
func writePieces(b *strings.Builder, pieces []calc.Piece) {
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

// ErrLog is the error of a file that holds a log.
var ErrLog = errors.New("it is a file of the log, which the log's page takes in")

// MostSheet is how long a file of a sheet may be, in bytes.
const MostSheet = 100_000

// ReadSheet returns the page and the link's fragment that a file of WriteSheet
// holds. The error says what is wrong with any other.
func ReadSheet(text string) (slug, fragment string, err error) {
	r := sheetReader{scanner: scanner{text: strings.TrimPrefix(text, "\ufeff")}}
	if len(text) > MostSheet {
		if !ReadFile(text).Foreign {
			return "", "", ErrLog
		}
		return "", "", errors.New("it is longer than a sheet can be")
	}
	v, bad := r.value(0)
	if bad == nil {
		if r.space(); r.at < len(r.text) {
			bad = r.fault("something stands behind its end")
		}
	}
	switch {
	case bad != nil && strings.Contains(text, `"`+sheetKey+`"`) && strings.Contains(text, `"`+entriesKey+`"`) && ReadFile(text).Foreign:
		return "", "", errors.New("it is damaged in line " + strconv.Itoa(r.lineOf(bad.at)) + ": " + bad.says)
	case bad != nil || v.get(sheetKey).text != mark:
		if !ReadFile(text).Foreign {
			return "", "", ErrLog
		}
		return "", "", errors.New(`it is no sheet of this site: such a file begins with {"` + sheetKey + `":"` + mark + `"`)
	}
	slug = v.get("page").text
	if _, known := calc.PageOf(slug); !known {
		return "", "", errors.New("it is of a page that this version of the site does not have: " + quote(slug))
	}
	entries := v.get(entriesKey)
	if entries.kind != anObject {
		return "", "", errors.New(quote(entriesKey) + " is " + entries.kind.String() + ", an object belongs there")
	}
	pieces, err := r.pieces(entries.members)
	if err != nil {
		return "", "", err
	}
	// A newer version is told as that of a link: read as far as it is understood.
	if n, err := strconv.Atoi(v.get("version").text); err == nil && n > Version {
		pieces = append([]calc.Piece{{Key: "v", Cells: []string{strconv.Itoa(n)}}}, slices.DeleteFunc(pieces, func(p calc.Piece) bool { return p.Key == "v" })...)
	}
	return slug, calc.Join(pieces), nil
}

type sheetReader struct{ scanner }

// pieces makes a link's pieces of entries.
func (r *sheetReader) pieces(members []member) ([]calc.Piece, error) {
	var pieces []calc.Piece
	for _, m := range members {
		p := calc.Piece{Key: m.key}
		cells := []member{m}
		if m.value.kind == aList {
			cells = m.value.members
		}
		for _, c := range cells {
			switch {
			case c.value.kind == anObject || c.value.kind == aList:
				return nil, errors.New("line " + strconv.Itoa(r.lineOf(c.value.at)) + ": " + quote(m.key) + " holds " + c.value.kind.String() + ", a text in quotes belongs there")
			case c.value.kind != aNull:
				p.Cells = append(p.Cells, calc.OneLine(c.value.text))
			case m.value.kind == aList:
				p.Cells = append(p.Cells, "")
			}
		}
		pieces = append(pieces, p)
	}
	return pieces, nil
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
