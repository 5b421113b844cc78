package logbook

import (
	"encoding/csv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/page/convert"
)

// formulaCells returns what a spreadsheet would take for a formula, whichever sign it parts
// cells at, and whether it knows of quotation marks or not. A number with a sign is none.
func formulaCells(text string) (found []string) {
	text = strings.TrimPrefix(text, "\ufeff")
	check := func(cell string) {
		cell = strings.TrimFunc(cell, func(r rune) bool { return unicode.IsSpace(r) || r == '"' || unicode.Is(unicode.Cf, r) })
		first, _ := utf8.DecodeRuneInString(cell)
		number, _, _ := strings.Cut(cell, ",")
		if strings.ContainsRune("=+-@＝＋－＠", first) && !isNumber(number) {
			found = append(found, cell)
		}
	}
	for _, mark := range []rune{',', ';', '\t', '|'} {
		r := csv.NewReader(strings.NewReader(text))
		r.Comma, r.LazyQuotes, r.FieldsPerRecord = mark, true, -1
		for {
			cells, err := r.Read()
			if err != nil {
				break
			}
			for _, c := range cells {
				check(c)
			}
		}
		if mark == ',' {
			continue // cells with commas are in quotation marks
		}
		for line := range strings.Lines(text) {
			for cell := range strings.SplitSeq(line, string(mark)) {
				check(cell)
			}
		}
	}
	return found
}

// hostileCells look like formulas, at their beginning or once they are parted.
var hostileCells = []string{
	"=1+1", "a;=1+1;b", "a; =1+1", "a\t=1+1", "a|=1+1|b", "a|@SUM(1)", `a;"=1+1";b`, `";=1+1`, `a";"=1+1`, "a;-1+2", "a;+1+2", "＝1+1", "a;＝1+1",
	"\u200b=1+1", "a;\u202e=1+1", "a;\ufeff=1+1", "\u2060@x", ";=1", ";;=1", "|=1", "a;\u00a0=1", "a\n=1+1", "a\r=1+1", "a\u2028=1+1", " =1", "'=1", "-5;=2", "=HYPERLINK(\"x\")",
}

func TestNoCellOfACSVBeginsAFormula(t *testing.T) {
	for _, text := range hostileCells {
		e := feed(t, "2026-11-25")
		e.Machine, e.Axis, e.Note, e.Label = text, text, text, text
		table := CSV([]Entry{e, e.tidy()})
		assert.Empty(t, formulaCells(table), "%q", text)

		f := calc.NewForm(convert.Page)
		f.Set("name", 0, text)
		f.Set("name", 1, "x")
		assert.Empty(t, formulaCells(RowsCSV(f, f.Groups()[0])), "%q", text)
	}
	// What is none stays as it is.
	for _, text := range []string{"Heron; the second", "a|b", "1;2", "5 - 3", "belt, -0.3%", "Plover's"} {
		rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(CSV([]Entry{{Machine: text}}), "\ufeff"))).ReadAll()
		require.NoError(t, err)
		assert.Equal(t, text, rows[1][2])
	}
}

// What cannot be seen, or turns a text round, is in no cell.
func TestCSVHasNothingInvisible(t *testing.T) {
	table := CSV([]Entry{{Machine: "He\u200bron\u202e", Note: "a\u2066b\u00adc\U000e0041\ufeff"}})
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(table, "\ufeff"))).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, []string{"Heron", "abc"}, []string{rows[1][2], rows[1][4]})
}

// Whatever is saved or typed, no cell begins a formula.
func FuzzCSV(f *testing.F) {
	for _, text := range hostileCells {
		f.Add(text, "Heron", text)
	}
	f.Fuzz(func(t *testing.T, machine, note, name string) {
		table := CSV([]Entry{{ID: "a", Machine: machine, Note: note, Axis: name, Label: note, Unit: name, Value: -5}})
		require.Empty(t, formulaCells(table))
		require.Equal(t, 2, strings.Count(table, "\n"))
		typed := calc.NewForm(convert.Page)
		typed.Set("name", 0, name)
		typed.Set("steps", 0, note)
		typed.Set("name", 1, machine)
		if table := RowsCSV(typed, typed.Groups()[0]); table != "" {
			require.Empty(t, formulaCells(table))
			require.LessOrEqual(t, strings.Count(table, "\n"), 3)
		}
	})
}
