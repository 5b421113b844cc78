package logbook

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"striderule/calc/form"
	"striderule/calc/sheet"
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

// CSV returns entries as a table. A text that a spreadsheet would take for a
// formula gets an apostrophe in front.
func CSV(entries []Entry) string {
	var table csvTable
	cells := make([]string, len(Fields))
	for i, f := range Fields {
		cells[i] = f.Key
	}
	table.line(cells)
	for _, e := range entries {
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
