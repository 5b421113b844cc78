package logbook

import (
	"strconv"
	"strings"

	"striderule/calc/link"
)

// mark is what a file of the log begins with.
const mark = "striderule"

// WriteFile returns a file that holds entries, as JSON with an entry a line.
func WriteFile(entries []Entry) string {
	var b strings.Builder
	b.WriteString(`{"` + versionKey + `":"` + mark + `","version":` + strconv.Itoa(Version) + `,"entries":[`)
	for i, e := range entries {
		b.WriteString([...]string{"\n", ",\n"}[min(i, 1)])
		writeEntry(&b, e)
	}
	b.WriteString("\n]}\n")
	return b.String()
}

// An object is one of JSON in the making, behind what stands before its first
// member.
type object struct {
	*strings.Builder
	before string
}

// key begins a member.
func (o *object) key(key string) {
	o.WriteString(o.before)
	o.before = ","
	writeString(o.Builder, key)
	o.WriteByte(':')
}

// field writes a field of an entry, if there is something in it.
func (o *object) field(f Field, e *Entry) {
	text, ok := f.written(e)
	if !ok {
		return
	}
	o.key(f.Key)
	if f.Number() {
		o.WriteString(text)
	} else {
		writeString(o.Builder, text)
	}
}

func writeEntry(b *strings.Builder, e Entry) {
	o := object{b, "{"}
	for _, f := range Fields {
		o.field(f, &e)
	}
	for _, p := range link.Split(e.Other) {
		o.key(p.Key)
		writeString(b, strings.Join(p.Cells, ","))
	}
	b.WriteByte('}')
}

const hexDigits = "0123456789abcdef"

// writeString writes a string of JSON (RFC 8259, 7).
func writeString(b *strings.Builder, s string) {
	b.WriteByte('"')
	for _, r := range s { // what is no UTF-8 comes as U+FFFD
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteByte(byte(r))
		case r < ' ':
			b.WriteString(`\u00`)
			b.WriteByte(hexDigits[r>>4])
			b.WriteByte(hexDigits[r&15])
		default:
			b.WriteString(string(r))
		}
	}
	b.WriteByte('"')
}
