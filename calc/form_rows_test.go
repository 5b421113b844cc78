package calc_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/page/calibrate"
	"striderule/calc/page/convert"
	"striderule/calc/page/trial"
	"striderule/calc/sheet"
)

func textsOf(f *form.Form, key string) []string {
	field, _ := f.Field(key)
	var all []string
	for row := range f.Rows(field) {
		all = append(all, f.Text(key, row))
	}
	return all
}

func TestPaste(t *testing.T) {
	const marks = "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6"
	for _, c := range []struct {
		name, fragment, key string
		row                 int
		text                string
		want                map[string][]string
		says                string
	}{
		{"a column, as a spreadsheet copies it", "v=1", "rest", 0, "28.7\r\n28.9\r\n28.6\r\n",
			map[string][]string{"rest": {"28.7", "28.9", "28.6", ""}}, "Pasted into runs 1 to 3."},
		{"blanks go, a decimal comma stays", "v=1", "rest", 1, " 28,7 \n\u00a028,9 mm\t\n\n  \n",
			map[string][]string{"rest": {"", "28,7", "28,9 mm", ""}}, "Pasted into runs 2 to 3."},
		{"over texts that stood there", marks, "rest", 1, "28.9\n29.1",
			map[string][]string{"rest": {"28.7", "28.9", "29.1", ""}}, "Pasted into runs 2 to 3. 1 value was replaced."},
		{"a gap stays a gap", marks, "rest", 0, "1\n\n3",
			map[string][]string{"rest": {"1", "", "3", ""}}, "Pasted into runs 1 to 3. 3 values were replaced."},
		{"more than the rows that show", marks, "rest", 3, "1\n2\n3",
			map[string][]string{"rest": {"28.7", "28.9", "28.6", "1", "2", "3"}}, "Pasted into runs 4 to 6."},
		{"with its heading", "v=1", "rest", 0, "Remaining (mm)\n5\n6",
			map[string][]string{"rest": {"5", "6", "", ""}}, "Pasted into runs 1 to 2."},
		{"numbered lines", "v=1", "rest", 0, "1\t22,4\n2\t22,6\n3\t22,5",
			map[string][]string{"rest": {"22,4", "22,6", "22,5", ""}}, "Pasted into runs 1 to 3."},
		{"numbered lines, with headings", "v=1&marks=each", "eachmark", 0, "Run\tMark\tRemaining\n1\t105\t28.7\n2\t104.5\t28.9",
			map[string][]string{"eachmark": {"105", "104.5", "", ""}, "rest": {"28.7", "28.9", "", ""}}, "Pasted into runs 1 to 2."},
		{"a heading of other words", "v=1", "rest", 0, "Run\tLeft (mm)\n1\t22.4\n2\t22.9",
			map[string][]string{"rest": {"22.4", "22.9", "", ""}}, "Pasted into runs 1 to 2."},
		{"the page's own table", "v=1", "rest", 0, "Run\tMark, mm\tRemaining, mm\tFed, mm\tError, %\n1\t105\t28.7\t76.3\t−4.6\n2\t105\t28.9\t76.1",
			map[string][]string{"rest": {"28.7", "28.9", "", ""}}, "Pasted into runs 1 to 2."},
		{"columns", "v=1&marks=each", "eachmark", 0, "105\t28.7\t\n104.5\t28.9\tyes\n",
			map[string][]string{"eachmark": {"105", "104.5", "", ""}, "rest": {"28.7", "28.9", "", ""}, "aside": {"", "yes", "", ""}}, "Pasted into runs 1 to 2."},
		{"more columns than there are", "v=1", "rest", 0, "1\tmaybe\tJuly\n2\t\t",
			map[string][]string{"rest": {"1", "2", "", ""}, "aside": nil}, "Pasted into runs 1 to 2. Skipped 2 values: no matching column, or not one of the options."},
		{"rows of another name", "v=1&name=A", "name", 0, "Heron\nPlover",
			map[string][]string{"name": {"Heron", "Plover"}}, "Pasted into axes 1 to 2. 1 value was replaced."},
	} {
		t.Run(c.name, func(t *testing.T) {
			page := calibrate.Page
			if c.key == "name" {
				page = convert.Page
			}
			f := calc.Load(page, c.fragment)
			before := f.Fragment()
			p := f.Paste(c.key, c.row, c.text)
			for key, want := range c.want {
				if want == nil {
					assert.Empty(t, strings.Join(textsOf(f, key), ""), key)
					continue
				}
				assert.Equal(t, want, textsOf(f, key), key)
			}
			assert.Equal(t, c.says, p.Says())
			f.UndoRows(p)
			assert.Equal(t, before, f.Fragment(), "undone")
		})
	}
}

// What is chosen in a row is chosen by what the page shows, too.
func TestPasteChoices(t *testing.T) {
	f := calc.Load(convert.Page, "v=1&name=A")
	field, _ := f.Field("moves")
	choice := field.Cells.At(0).(*sheet.Choice)
	last := choice.Options()[len(choice.Options())-1]
	p := f.Paste("name", 0, "Heron\t"+last.Label+"\nPlover\t"+strings.ToUpper(last.Word)+"\nOther\tsomething else")
	assert.Equal(t, []string{last.Word, last.Word, ""}, textsOf(f, "moves"))
	assert.Equal(t, 1, p.Odd)
	assert.Empty(t, f.Problems(), "nothing is chosen that there is not")
}

func TestPasteFillsUpAndSaysSo(t *testing.T) {
	f := calc.Load(calibrate.Page, "v=1&rest=1,2,3")
	p := f.Paste("rest", 2, strings.Repeat("28.7\n", 60))
	field, _ := f.Field("rest")
	assert.Equal(t, sheet.MostRows, f.Rows(field))
	assert.Equal(t, "Pasted into runs 3 to 50. 1 value was replaced. 12 lines didn't fit: there are 50 rows at most.", p.Says())
	f.UndoRows(p)
	assert.Equal(t, 4, f.Rows(field))
	assert.Equal(t, "v=1&rest=1,2,3", f.Fragment())
}

// A row that is added brings what rows carry over.
func TestPasteCarries(t *testing.T) {
	f := calc.Load(convert.Page, "v=1&name=A&angle=0.9")
	f.Paste("name", 0, "X\nY")
	assert.Equal(t, []string{"0.9", "0.9"}, textsOf(f, "angle"))
}

// Whatever is pasted wherever: values stand in lines where they were in the
// text, what was elsewhere is untouched, and undoing it brings all of it back.
func TestPasteLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, sheet.MostRows).Draw(t, "rows")
		var cells []string
		for i := range n {
			cells = append(cells, strconv.Itoa(i+1))
		}
		f := calc.Load(calibrate.Page, "v=1&rest="+strings.Join(cells, ","))
		field, _ := f.Field("rest")
		before, rows := f.Fragment(), f.Rows(field)
		at := rapid.IntRange(0, rows-1).Draw(t, "at")
		lines := rapid.SliceOfN(rapid.StringMatching(`[ ]?[0-9]{1,3}([,.][0-9])?[ ]?`), 1, 70).Draw(t, "lines")
		p := f.Paste("rest", at, strings.Join(lines, "\n"))
		require.Equal(t, len(lines), p.Rows+p.Over)
		require.Zero(t, p.Odd)
		for row, text := range textsOf(f, "rest") {
			switch i := row - at; {
			case i >= 0 && i < p.Rows:
				require.Equal(t, strings.TrimSpace(lines[i]), text)
			case row < n:
				require.Equal(t, cells[row], text)
			default:
				require.Empty(t, text)
			}
		}
		f.UndoRows(p)
		require.Equal(t, before, f.Fragment())
		require.Equal(t, rows, f.Rows(field))
	})
}

func TestPasteElsewhereDoesNothing(t *testing.T) {
	f := calc.Load(calibrate.Page, "v=1&steps=538.0")
	for _, key := range []string{"steps", "nosuch"} {
		assert.Zero(t, f.Paste(key, 0, "1\n2").Rows)
	}
	field, _ := f.Field("rest")
	assert.Zero(t, f.Paste("rest", f.Rows(field), "1\n2").Rows)
	hidden := f.Paste("fed", 0, "1\n2")
	assert.Equal(t, 2, hidden.Odd, "a column that has no part takes nothing, and no other one does")
	f.UndoRows(hidden)
	c := calc.Load(convert.Page, "v=1&ratio=3")
	c.Paste("turn", 0, "7")
	assert.Equal(t, "v=1&ratio=3", c.Fragment())
	f.UndoRows(form.RowsEdit{})
	assert.Equal(t, "v=1&steps=538.0", f.Fragment())
}

// One line alone is a value, whatever it is called like, and nothing is one too.
func TestPasteOfOneLine(t *testing.T) {
	f := calc.Load(calibrate.Page, "v=1&rest=1,2")
	assert.Equal(t, 1, f.Paste("rest", 0, "Remaining").Rows)
	assert.Equal(t, []string{"Remaining", "2", "", ""}, textsOf(f, "rest"))
	for _, nothing := range []string{"", "\n\n", " \t "} {
		f = calc.Load(calibrate.Page, "v=1&rest=1,2")
		assert.Equal(t, 1, f.Paste("rest", 0, nothing).Rows)
		assert.Equal(t, []string{"", "2", "", ""}, textsOf(f, "rest"))
	}
}

// What a new row brought with it never stood there.
func TestPasteReplacesNothingInNewRows(t *testing.T) {
	f := calc.Load(convert.Page, "v=1&name=A&angle=1.8")
	p := f.Paste("angle", 0, "0.9\n0.7")
	assert.Equal(t, []string{"0.9", "0.7"}, textsOf(f, "angle"))
	assert.Equal(t, 1, p.Replaced)
}

func TestPastedSays(t *testing.T) {
	run := &sheet.Group{Words: trial.RunRows, Most: 50}
	for says, p := range map[string]form.RowsEdit{
		"Pasted into run 3.":       {Group: run, From: 2, Rows: 1},
		"Pasted into run 1.":       {Group: run},
		"Pasted into runs 3 to 4.": {Group: run, From: 2, Rows: 2},
		"Pasted into check run 1. 1 value was replaced. 2 lines didn't fit: there are 50 rows at most. Skipped 3 values: no matching column, or not one of the options.": {Group: &sheet.Group{Words: trial.CheckRows, Most: 50}, Rows: 1, Replaced: 1, Over: 2, Odd: 3},
		"Pasted into run 1. 2 values were replaced. 1 line didn't fit: there are 50 rows at most. Skipped 1 value: no matching column, or not one of the options.":       {Group: run, Rows: 1, Replaced: 2, Over: 1, Odd: 1},
	} {
		assert.Equal(t, says, p.Says())
	}
}

func TestGroupsThatHaveAPart(t *testing.T) {
	groups := func(slug, fragment string) (all []string) {
		for _, g := range calctest.Load(t, slug, fragment).Groups() {
			all = append(all, g.Words.ID)
		}
		return all
	}
	assert.Equal(t, []string{"run", "later-run"}, groups("measure", ""))
	assert.Equal(t, []string{"run", "later-run", "stage"}, groups("measure", "v=1&gears=pairs"))
	assert.Equal(t, []string{"target"}, groups("measure", "v=1&axis=travel&trip=sides"))
	assert.Empty(t, groups("plan", ""))
}

func TestRowsAreTakenOutAtOnce(t *testing.T) {
	f := calctest.Load(t, "measure", heron)
	was := f.Report().Answer.Value
	rest, _ := f.Field("rest")
	f.RemoveRow(rest.Group, 1)
	assert.Equal(t, []string{"28.7", "28.6", ""}, textsOf(f, "rest"))
	assert.NotEqual(t, was, f.Report().Answer.Value)
}
