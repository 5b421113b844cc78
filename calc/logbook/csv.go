package logbook

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"striderule/calc/form"
	"striderule/calc/sheet"
	"striderule/calc/word"
)

// A csvTable is one for spreadsheets in the making (RFC 4180), after the mark
// that tells them that it is UTF-8.
type csvTable struct{ strings.Builder }

func (c *csvTable) line(cells []string) {
	if c.Len() == 0 {
		c.WriteRune('\ufeff')
	}
	c.WriteString(strings.Join(cells, ","))
	c.WriteString("\r\n")
}

// CSV returns entries as a table, in words: it is not read back. What a spreadsheet would
// take for a formula gets an apostrophe in front, also where it parts cells at another sign.
func CSV(entries []Entry) string {
	var table csvTable
	cells := make([]string, len(Fields))
	for i, f := range Fields {
		cells[i] = f.Key
	}
	table.line(cells)
	for _, e := range entries {
		e = e.inWords()
		for i, f := range Fields {
			cells[i], _ = f.written(&e)
			if !f.Number() {
				cells[i] = cell(cells[i])
			}
		}
		table.line(cells)
	}
	return table.String()
}

// RowsCSV returns a form's rows of a group as a table under their headings: what
// was typed, with the decimal point, and what is chosen by its word in links. It
// is empty while nothing is typed.
func RowsCSV(typed *form.Form, g *sheet.Group) string {
	columns := typed.Columns(g)
	if len(columns) == 0 {
		return ""
	}
	var lines [][]string
	filled := 0
	for row := range typed.Rows(columns[0]) {
		var cells []string
		for _, f := range columns {
			text := ""
			if typed.Visible(f, row) {
				v := f.Cells.At(row)
				if text = v.Plain(typed.Text(f.Key, row)); text != "" {
					filled = row + 1
				} else {
					text = v.String() // what is chosen by default
				}
			}
			if !isNumber(text) {
				text = cell(text)
			}
			cells = append(cells, text)
		}
		lines = append(lines, cells)
	}
	if filled == 0 {
		return ""
	}
	var heads []string
	for _, f := range columns {
		heads = append(heads, cell(sheet.Heading(f)))
	}
	var table csvTable
	table.line(heads)
	for _, cells := range lines[:filled] {
		table.line(cells)
	}
	return table.String()
}

// isNumber reports whether a spreadsheet reads a text as a number, with its sign.
func isNumber(text string) bool {
	_, err := strconv.ParseFloat(text, 64)
	return err == nil && strings.Trim(text, "+-.0123456789") == ""
}

// cell makes a text safe for a spreadsheet, without what cannot be seen.
func cell(text string) string {
	text = word.Shown(text)
	for at := 0; ; {
		if isFormula(text[at:]) {
			text = text[:at] + "'" + text[at:]
		}
		next := strings.IndexAny(text[at:], ";\t|") // what some spreadsheets part cells at
		if next < 0 {
			break
		}
		at += next + 1
	}
	if strings.ContainsAny(text, ",;|\"'") {
		return `"` + strings.ReplaceAll(text, `"`, `""`) + `"`
	}
	return text
}

// isFormula reports whether a spreadsheet would take a text for a formula: blanks, also those of other
// alphabets, and quotation marks may stand before it.
func isFormula(text string) bool {
	text = strings.TrimLeftFunc(text, func(r rune) bool { return r == '"' || unicode.IsSpace(r) })
	first, _ := utf8.DecodeRuneInString(text)
	return strings.ContainsRune("=+-@＝＋－＠", first)
}
