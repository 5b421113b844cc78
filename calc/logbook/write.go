package logbook

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"striderule/calc"
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

func writeEntry(b *strings.Builder, e Entry) {
	comma := "{"
	member := func(key string) {
		b.WriteString(comma)
		comma = ","
		writeString(b, key)
		b.WriteByte(':')
	}
	for _, f := range Fields {
		text, ok := f.written(&e)
		if !ok {
			continue
		}
		member(f.Key)
		if f.Number() {
			b.WriteString(text)
		} else {
			writeString(b, text)
		}
	}
	for _, p := range calc.Split(e.Other) {
		member(p.Key)
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

// CSV returns entries as a table for spreadsheets (RFC 4180), after the mark
// that tells them that it is UTF-8. A text that a spreadsheet would take for a
// formula gets an apostrophe in front.
func CSV(entries []Entry) string {
	var b strings.Builder
	b.WriteRune('\ufeff')
	for i, f := range Fields {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString(f.Key)
	}
	b.WriteString("\r\n")
	for _, e := range entries {
		for i, f := range Fields {
			if i > 0 {
				b.WriteByte(',')
			}
			text, _ := f.written(&e)
			if !f.Number() {
				text = cell(text)
			}
			b.WriteString(text)
		}
		b.WriteString("\r\n")
	}
	return b.String()
}

// cell makes a text safe for a spreadsheet. Blanks of other alphabets may stand
// before what it takes for a formula.
func cell(text string) string {
	if first, _ := utf8.DecodeRuneInString(strings.TrimSpace(text)); strings.ContainsRune("=+-@＝＋－＠", first) {
		text = "'" + text
	}
	if strings.ContainsAny(text, ",;\"\t\r\n'") || !utf8.ValidString(text) {
		return `"` + strings.ReplaceAll(text, `"`, `""`) + `"`
	}
	return text
}
