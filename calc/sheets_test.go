package calc_test

import (
	"bufio"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/word"
)

// TestSheetsSayTheSame holds all that the pages say of some three hundred sheets against
// what they said before, in testdata/pages. To make those files anew, and then read
// what changed in them:
//
//	UPDATE=1 go test ./calc -run 'TestSheetsSayTheSame|TestFieldsStay|TestAddressesAreReadTheSame'
//
// The sheets are those of testdata/links.txt and sheets.txt; of those of drawings.txt
// the drawings are held.
func TestSheetsSayTheSame(t *testing.T) {
	sheets := sheetLines(t)
	eachPage(t, func(t *testing.T, p sheet.Page) {
		require.NotEmpty(t, sheets[p.Slug])
		all := writer{seen: map[string]bool{}, often: map[string]int{}, empty: calc.NewForm(p)}
		var b strings.Builder
		for i, s := range sheets[p.Slug] {
			if i > 0 {
				b.WriteString("\n")
			}
			w := writer{seen: all.seen, often: all.often, empty: all.empty, drawn: s.drawn}
			w.text.WriteString(sheetMark + s.line + "\n")
			fragment, edits, changed := strings.Cut(s.line, " > ")
			f := calc.Load(p, fragment)
			switch {
			case changed:
				w.changes(f, edits)
			case s.drawn:
				w.drawings(f)
			default:
				w.form(f, fragment)
			}
			b.WriteString(w.text.String())
		}
		keptAs(t, "testdata/pages/"+p.Slug+".txt", b.String())
	})
}

// sheetMark begins a sheet in a file of what pages say.
const sheetMark = "#### "

// A sheetLine is a fragment, and behind a > what is typed then.
type sheetLine struct {
	line  string
	drawn bool // its drawings are what it is for
}

// sheetLines are the sheets by page.
func sheetLines(t testing.TB) map[string][]sheetLine {
	all := map[string][]sheetLine{}
	add := func(slug, line string, drawn bool) {
		if !slices.ContainsFunc(all[slug], func(s sheetLine) bool { return s.line == line }) {
			all[slug] = append(all[slug], sheetLine{line, drawn})
		}
	}
	for _, name := range []string{"sheets.txt", "drawings.txt"} {
		file, err := os.Open("testdata/" + name)
		require.NoError(t, err)
		lines := bufio.NewScanner(file)
		for lines.Scan() {
			slug, line, _ := strings.Cut(lines.Text(), " ")
			if slug == "" || slug == "#" {
				continue
			}
			_, ok := calc.PageOf(slug)
			require.True(t, ok, lines.Text())
			add(slug, line, name == "drawings.txt")
		}
		require.NoError(t, lines.Err())
		require.NoError(t, file.Close())
	}
	for slug, l := range links(t) {
		for _, link := range l {
			add(slug, link.fragment, false)
		}
	}
	return all
}

// keptAs holds a text against the file that it was kept in, sheet by sheet; UPDATE
// makes the file anew.
func keptAs(t *testing.T, name, text string) {
	t.Helper()
	if os.Getenv("UPDATE") != "" {
		require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
		return
	}
	kept, err := os.ReadFile(name)
	require.NoError(t, err)
	if string(kept) == text {
		return
	}
	was, is := strings.Split(string(kept), "\n"+sheetMark), strings.Split(text, "\n"+sheetMark)
	if len(was) != len(is) {
		assert.Equal(t, firstLines(was), firstLines(is), name)
	}
	told := 0
	for i := range min(len(was), len(is)) {
		if was[i] != is[i] && told < 3 { // three tell enough, and comparing long texts takes long
			told++
			assert.Equal(t, was[i], is[i], name)
		}
	}
	assert.Fail(t, name+" says something else; UPDATE=1 makes it anew")
}

func firstLines(texts []string) []string {
	first := make([]string, len(texts))
	for i, text := range texts {
		first[i], _, _ = strings.Cut(text, "\n")
	}
	return first
}

// typeInto types edits into a form. One is key=text, key.row=text for a row counted from 1,
// or key= to empty it.
func typeInto(f *form.Form, edits string) {
	for edit := range strings.FieldsSeq(edits) {
		at, text, _ := strings.Cut(edit, "=")
		key, row, _ := strings.Cut(at, ".")
		n, err := strconv.Atoi(row)
		if err != nil {
			n = 1
		}
		f.Set(key, n-1, link.Unescape(text))
	}
}

// changes types into a form that came by a link, and writes what the page says of the
// change.
func (w *writer) changes(f *form.Form, edits string) {
	typeInto(f, edits)
	w.line("fragment: ", f.Fragment())
	w.line("reply: ", f.ReplyFragment())
	w.line("address: ", f.AddressFragment())
	w.line("as received: ", f.AsReceived())
	w.comparison(f.Compare())
	w.answer(f.Report().Answer)
	reply := calc.Load(f.Page, f.ReplyFragment())
	w.line("the reply, opened:")
	w.checks(reply)
	w.comparison(reply.Compare())
}

func (w *writer) comparison(c *form.Comparison) {
	if c == nil {
		w.line("nothing differs")
		return
	}
	if c.Theirs {
		w.line("theirs")
	}
	w.line("from ", headline(c.Before), " to ", headline(c.After))
	for _, d := range c.Differences {
		w.line("  ", d.Key, " ", strconv.Itoa(d.Row), " ", d.Name, ": ", word.Quote(d.Before), " to ", word.Quote(d.After), ", alone ", headline(d.Alone))
	}
}

func headline(a *report.Answer) string {
	if a == nil {
		return "no result"
	}
	return figureText(&a.Figure)
}
