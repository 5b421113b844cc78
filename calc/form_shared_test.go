package calc_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/page/calibrate"
	"striderule/calc/sheet"
)

// Rows that share a text stand in lines: the runs at one speed.

const speeds = "v=1&trial=speeds&read=fed&at=60,60,60,120,120,120&fed=1,2,3,4,5,6&aside=,,,,,yes"

// linesOf is a sheet of runs, and the group that has their lines.
func linesOf(fragment string) (*form.Form, *sheet.Group) {
	f := calc.Load(calibrate.Page, fragment)
	fed, _ := f.Field("fed")
	return f, fed.Group
}

// upTo are the texts of a column in so many rows.
func upTo(f *form.Form, key string, n int) []string { return textsOf(f, key)[:n] }

func TestLinesOfALink(t *testing.T) {
	for fragment, want := range map[string][]int{
		speeds: {0, 3, 6}, // and one to go on with
		"v=1&trial=speeds&read=fed&at=60,60,60,120,120,120&fed=1,2": {0, 3, 6},
		"v=1&trial=speeds":                                   {0, 3, 6},
		"v=1&trial=speeds&read=fed&fed=1,2":                  {0, 3, 6},
		"v=1&trial=speeds&at=60,120,180":                     {0, 1, 2, 3, 6},
		"v=1&trial=speeds&at=60,60,120,60":                   {0, 2, 3, 4, 6},
		"v=1&axis=travel&trip=lengths&want=20":               {0, 1, 3, 6},
		"v=1&axis=rotary&trip=lengths&wantdeg=90,90,180,180": {0, 2, 4, 6},
		"v=1&read=fed&fed=1,2,3":                             nil, // nothing is shared
		"v=1&axis=travel&trip=sides":                         nil,
	} {
		f, g := linesOf(fragment)
		assert.Equal(t, want, f.Lines(g), fragment)
		shared, ok := f.Shared(g)
		assert.Equal(t, want != nil, ok, fragment)
		if ok {
			assert.Contains(t, g.Shared, shared.Key)
			assert.True(t, f.Visible(shared, 0))
		}
	}
	// Each row of a link can be a line, as far as there are rows.
	var each []string
	for i := range sheet.MostRows {
		each = append(each, strconv.Itoa(60+i))
	}
	f, g := linesOf("v=1&trial=speeds&at=" + strings.Join(each, ","))
	assert.Len(t, f.Lines(g), sheet.MostRows)
}

func TestSharedTextFillsItsLine(t *testing.T) {
	for row := range 9 {
		f, g := linesOf(speeds)
		want := textsOf(f, "at")
		f.Set("at", row, "180")
		for other := row / 3 * 3; other < row/3*3+3; other++ {
			want[other] = "180"
		}
		assert.Equal(t, want, textsOf(f, "at"), "row %d", row)
		assert.Equal(t, []int{0, 3, 6}, f.Lines(g))
		f.Set("fed", row, "9")
		assert.Equal(t, 1, strings.Count(strings.Join(textsOf(f, "fed"), " "), "9"), "what is read is that of one row")
	}
	f, g := linesOf(speeds)
	f.Set("at", 0, "120")
	assert.Equal(t, []int{0, 3, 6}, f.Lines(g), "two lines may have one text")
	f.Set("at", 4, "60")
	assert.Equal(t, []string{"120", "120", "120", "60", "60", "60"}, upTo(f, "at", 6))
	plain, _ := linesOf("v=1&read=fed&fed=1,2,3")
	plain.Set("at", 0, "60")
	assert.Equal(t, "", plain.Text("at", 1), "nothing is shared")
}

func TestRepeatIsAddedToItsLine(t *testing.T) {
	for row := range 3 {
		f, g := linesOf(speeds)
		require.Equal(t, 9, f.Rows(fieldOf(t, f, "fed")))
		assert.Equal(t, 3, f.AddRepeat(g, row), "at the line's end")
		assert.Equal(t, []int{0, 4, 7}, f.Lines(g))
		assert.Equal(t, []string{"60", "60", "60", "60", "120", "120", "120", "", "", ""}, textsOf(f, "at"))
		assert.Equal(t, []string{"1", "2", "3", "", "4", "5", "6", "", "", ""}, textsOf(f, "fed"))
		assert.Equal(t, "yes", f.Text("aside", 6), "what is left out stays left out")
		assert.Equal(t, "", f.Text("aside", 5))
	}
	f, g := linesOf(speeds)
	assert.Equal(t, 9, f.AddRepeat(g, 8), "of the last one")
	assert.Equal(t, []int{0, 3, 6}, f.Lines(g))
	assert.Equal(t, "", f.Text("at", 9), "it has no text to share yet")
	f.Set("at", 9, "180")
	assert.Equal(t, []string{"120", "180", "180", "180", "180"}, textsOf(f, "at")[5:])

	for f.Rows(fieldOf(t, f, "fed")) < g.Most {
		f.AddRepeat(g, 0)
	}
	full := f.Fragment()
	assert.Equal(t, 2, f.AddRepeat(g, 2), "there is no room")
	assert.Equal(t, full, f.Fragment())
	assert.Equal(t, g.Most, f.Rows(fieldOf(t, f, "fed")))
}

func fieldOf(t *testing.T, f *form.Form, key string) sheet.Field {
	t.Helper()
	field, ok := f.Field(key)
	require.True(t, ok, key)
	return field
}

func TestLineIsAdded(t *testing.T) {
	f, g := linesOf(speeds)
	f.AddLine(g)
	assert.Equal(t, []int{0, 3, 6, 9}, f.Lines(g))
	assert.Equal(t, 9+sheet.Repeats, f.Rows(fieldOf(t, f, "fed")))
	f.Set("at", 9, "240")
	assert.Equal(t, []string{"", "", "", "240", "240", "240"}, textsOf(f, "at")[6:])
	for range sheet.MostRows {
		f.AddLine(g)
	}
	assert.Equal(t, sheet.MostRows, f.Rows(fieldOf(t, f, "fed")))
	lines := f.Lines(g)
	assert.Equal(t, 48, lines[len(lines)-1], "as many rows as there is room for")
	assert.Len(t, lines, 17)
}

func TestRowIsTakenOutOfItsLine(t *testing.T) {
	f, g := linesOf("v=1&trial=speeds&read=fed&at=60,120,60,60&fed=1,2,3,4")
	require.Equal(t, []int{0, 1, 2, 4, 6}, f.Lines(g))
	was := f.Fragment()
	e := f.RemoveRow(g, 1) // the only one at its speed
	assert.Equal(t, []int{0, 1, 3, 5}, f.Lines(g), "its neighbours stay two")
	assert.Equal(t, []string{"60", "60", "60"}, upTo(f, "at", 3))
	f.Set("at", 0, "180")
	assert.Equal(t, []string{"180", "60", "60"}, upTo(f, "at", 3))
	f.Set("at", 0, "60")
	f.UndoRows(e)
	assert.Equal(t, []int{0, 1, 2, 4, 6}, f.Lines(g))
	assert.Equal(t, was, f.Fragment())

	for row, want := range map[int][]int{0: {0, 2, 5}, 2: {0, 2, 5}, 3: {0, 3, 5}, 8: {0, 3, 6}} {
		f, g := linesOf(speeds)
		f.RemoveRow(g, row)
		assert.Equal(t, want, f.Lines(g), "row %d", row)
	}
	f, g = linesOf(speeds)
	for row := 8; row >= 6; row-- {
		f.RemoveRow(g, row)
	}
	assert.Equal(t, []int{0, 3}, f.Lines(g), "a line goes with its last row")
	f, g = linesOf(speeds)
	for range 12 {
		f.RemoveRow(g, 0)
	}
	assert.Equal(t, []int{0}, f.Lines(g), "one row is left")
	assert.Equal(t, 1, f.Rows(fieldOf(t, f, "fed")))
}

func TestPasteLaysLines(t *testing.T) {
	f, g := linesOf("v=1&trial=speeds&read=fed")
	p := f.Paste("at", 0, "60\t1\n60\t2\n120\t3\n120\t4\n180\t5")
	assert.Equal(t, []string{"60", "60", "120", "120", "180"}, upTo(f, "at", 5))
	assert.Equal(t, []int{0, 2, 4, 5, 6}, f.Lines(g), "where the speed is another one")
	f.UndoRows(p)
	assert.Equal(t, []int{0, 3, 6}, f.Lines(g))
	assert.Equal(t, "v=1&trial=speeds&read=fed", f.Fragment())

	f, g = linesOf(speeds)
	f.AddRepeat(g, 0)
	was := f.Fragment()
	p = f.Paste("at", 1, strings.Repeat("75\n", 12))
	assert.Equal(t, []int{0, 1}, f.Lines(g)[:2])
	assert.Equal(t, 13, f.Rows(fieldOf(t, f, "fed")))
	f.UndoRows(p)
	assert.Equal(t, []int{0, 4, 7}, f.Lines(g), "as they were, not as a link has them")
	assert.Equal(t, 10, f.Rows(fieldOf(t, f, "fed")))
	assert.Equal(t, was, f.Fragment())
}

// Whatever is done, lines begin with the first row, one after the other, each with a row; and
// what is taken back is as it was.
func TestLinesLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		choice := func(name string, of ...string) string { return rapid.SampledFrom(of).Draw(t, name) }
		speed := rapid.SampledFrom([]string{"", "60", "60 ", "120", "180", "x"})
		f, g := linesOf(choice("kind", "v=1", "v=1&trial=speeds&read=fed", "v=1&axis=travel&trip=lengths", "v=1&axis=rotary&trip=lengths") +
			choice("column", "&at=", "&want=", "&wantdeg=") + strings.Join(rapid.SliceOfN(speed, 0, 12).Draw(t, "texts"), ",") +
			"&fed=" + strings.Join(rapid.SliceOfN(speed, 0, 12).Draw(t, "fed"), ","))
		fed, _ := f.Field("fed")
		check := func(what string) {
			lines := f.Lines(g)
			_, shares := f.Shared(g)
			require.Equal(t, shares, lines != nil, what)
			require.LessOrEqual(t, f.Rows(fed), g.Most, what)
			if lines == nil {
				return
			}
			require.Zero(t, lines[0], what)
			for i, start := range lines[1:] {
				require.Greater(t, start, lines[i], "%s: %v", what, lines)
			}
			require.Less(t, lines[len(lines)-1], f.Rows(fed), "%s: %v", what, lines)
		}
		check("opened")
		back := func(lines []int, rows int, fragment string) {
			check("taken back")
			require.Equal(t, lines, f.Lines(g))
			require.Equal(t, rows, f.Rows(fed))
			require.Equal(t, fragment, f.Fragment())
		}
		for range rapid.IntRange(1, 12).Draw(t, "steps") {
			lines, rows, fragment := slices.Clone(f.Lines(g)), f.Rows(fed), f.Fragment()
			row := rapid.IntRange(0, rows-1).Draw(t, "row")
			column := choice("of", "at", "want", "wantdeg", "fed", "moved", "aside")
			switch what := choice("what", "set", "beyond", "choose", "row", "line", "repeat", "remove", "paste"); what {
			case "set":
				f.Set(column, row, speed.Draw(t, "text"))
				if column != "at" && column != "want" && column != "wantdeg" {
					require.Equal(t, lines, f.Lines(g))
				}
			case "beyond":
				f.Set(column, rapid.IntRange(-1, g.Most+1).Draw(t, "far"), speed.Draw(t, "text"))
			case "choose":
				key := choice("choice", "axis", "trial", "trip", "read")
				field, _ := f.Field(key)
				f.Set(key, 0, rapid.SampledFrom(options(field)).Draw(t, key).Word)
			case "row":
				f.AddRow(g)
			case "line":
				f.AddLine(g)
			case "repeat":
				require.LessOrEqual(t, f.AddRepeat(g, row), min(rows, g.Most-1))
			case "remove":
				edit := f.RemoveRow(g, row)
				check(what)
				if edit.Group != nil && rapid.Bool().Draw(t, "undo") {
					f.UndoRows(edit)
					back(lines, rows, fragment)
				}
			case "paste":
				edit := f.Paste(column, row, strings.Join(rapid.SliceOfN(speed, 1, 60).Draw(t, "pasted"), "\n"))
				check(what)
				if rapid.Bool().Draw(t, "undo") {
					f.UndoRows(edit)
					back(lines, rows, fragment)
				}
			}
			check("done")
		}
	})
}
