package logbook

import (
	"hash/fnv"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/link"
)

func TestTimeOfDay(t *testing.T) {
	midnight, ok := days("2026-11-25")
	require.True(t, ok)
	for text, hours := range map[string]float64{"2026-11-25T06:30": 6.5, "2026-11-25T00:00": 0, "2026-11-25T23:45": 23.75} {
		got, ok := days(text)
		require.True(t, ok, text)
		assert.InDelta(t, midnight+hours/24, got, 1e-9, text)
	}
	for _, none := range []string{"2026-01-32", "2024-02-30", "2026-04-31"} {
		assert.False(t, IsDate(none), none)
	}
}

// Entries of one moment stand in the same order, whichever was added first.
func TestSameMomentSameOrder(t *testing.T) {
	a, b := feed(t, "2026-11-25"), feed(t, "2026-11-25")
	a.ID, b.ID = "a", "b"
	for _, book := range []*Book{NewBook(a, b), NewBook(b, a)} {
		assert.Equal(t, "a", book.All()[0].ID)
		assert.Equal(t, "b", book.All()[1].ID)
	}
}

func TestNamesAreInAlphabeticalOrder(t *testing.T) {
	var entries []Entry
	for date, machine := range map[string]string{"2026-11-25": "Plover", "2026-11-24": "Avocet", "2026-11-23": "Heron"} {
		e := feed(t, date)
		e.ID, e.Machine, e.Axis = "", machine, "axis of "+machine
		entries = append(entries, e)
	}
	book := NewBook(entries...)
	assert.Equal(t, []string{"Avocet", "Heron", "Plover"}, book.Machines())
	assert.Equal(t, []string{"axis of Avocet", "axis of Heron", "axis of Plover"}, book.Axes(""))
}

func TestLastOfAPage(t *testing.T) {
	newer, older := feed(t, "2026-11-25"), feed(t, "2026-11-24")
	newer.ID, older.ID, older.Page = "n", "o", "plan"
	last, ok := NewBook(newer, older).Last("plan")
	require.True(t, ok)
	assert.Equal(t, "o", last.ID, "of this page, not the newest of all")
}

// An ID tells of what is in an entry, by FNV-1a, so that the same entry gets the same
// ID in every version.
func TestIDsOfTheirOwn(t *testing.T) {
	a := feed(t, "2026-11-25")
	a.ID = ""
	b := a
	b.Note = "  another one "
	merged := NewBook().Merge([]Entry{a, b})
	assert.Zero(t, merged.Beside)
	require.Len(t, merged.Added, 2)
	assert.Equal(t, "another one", merged.Added[1].Note, "spaces around a text go")
	hash := fnv.New64a()
	hash.Write([]byte(a.Text()))
	assert.Equal(t, strconv.FormatUint(hash.Sum64(), 36), merged.Added[0].ID)
}

// Entries of two pages have nothing to hold against each other, but are both there.
func TestCompareTwoPages(t *testing.T) {
	a, b := feed(t, "2026-11-24"), feed(t, "2026-11-25")
	b.Page = "plan"
	c := Compare(b, a)
	assert.Equal(t, a, c.Before)
	assert.Equal(t, b, c.After)
	assert.False(t, c.SamePage)
	assert.Empty(t, c.Differences)
}

// A text that is just as long as may be is read; one byte more is not. So it is with
// an ID, and with a sheet that is kept.
func TestLongestEntry(t *testing.T) {
	good := "log=1&id=a1&date=2026-11-25&page=measure&sheet=v%3D1&note="
	_, err := Read(good + strings.Repeat("x", MostEntry-len(good)))
	assert.NoError(t, err)
	_, err = Read(good + strings.Repeat("x", MostEntry-len(good)+1))
	assert.ErrorContains(t, err, "longer than")
	id := strings.Repeat("a", mostID)
	_, err = Read(strings.Replace(good, "id=a1", "id="+id, 1) + "x")
	assert.NoError(t, err)
	_, err = Read(strings.Replace(good, "id=a1", "id=a"+id, 1) + "x")
	assert.ErrorContains(t, err, "its ID is")
}

// An entry of a file may need another ID, for which there must be room.
func TestLongestEntryOfAFile(t *testing.T) {
	e := Example()[0]
	for most, want := range map[int]int{MostEntry - mostID: 1, MostEntry - mostID + 1: 0} {
		e.Note = ""
		e.Note = strings.Repeat("x", most-len(e.Text())-len("&note="))
		require.Len(t, e.Text(), most)
		assert.Len(t, ReadFile(WriteFile([]Entry{e})).Entries, want, "%d bytes", most)
	}
}

func TestLongestSheet(t *testing.T) {
	kept := func(more int) bool {
		form := calc.NewForm(pageNamed(t, "measure"))
		row := 0
		for length := len(form.ShareFragment()); length < link.MostLink+more; length = len(form.ShareFragment()) {
			form.Set("rest", row, strings.Repeat("x", min(100, max(1, link.MostLink+more-length-3))))
			row++
		}
		e := entryOf(form)
		require.Len(t, e.Sheet, link.MostLink+more)
		_, ok := Of(form, "2026-11-25", "Heron", "Extruder", "")
		return ok
	}
	assert.True(t, kept(0))
	assert.False(t, kept(1))
}

// Of two pieces with one key the first one counts, whether it is known or not; the
// version is kept apart from the rest.
func TestFirstOfTwoCounts(t *testing.T) {
	const good = "log=1&id=a1&date=2026-11-25&page=measure&sheet=v%3D1"
	e, err := Read(good + "&photo=a&photo=b&sound=c&log=7&id=b2&=x")
	require.NoError(t, err)
	assert.Equal(t, "a1", e.ID)
	assert.Equal(t, "photo=a&sound=c", e.Other)
	e, err = Read(good + "&label=x&unit=mm&u=3&verdict=y")
	require.NoError(t, err)
	assert.Empty(t, e.Label+e.Unit+e.Verdict, "of no result there is nothing to say")
	assert.Zero(t, e.U)
	assert.NotContains(t, e.Text(), "&u=")
	e.Output, e.U = "steps", 1
	assert.Contains(t, e.Text(), "&u=1")
}

// A version that is none is told of, and the file is read as of this one.
func TestFileOfNoVersion(t *testing.T) {
	for _, version := range []string{`"x"`, "0", "-1"} {
		file := damaged(t, replace(`"version":1`, `"version":`+version))
		assert.Len(t, file.Entries, 3, version)
		assert.False(t, file.Newer)
		require.Len(t, file.Damages, 1, version)
		assert.Equal(t, "Line 1: the version isn't a number; read as version 1", file.Damages[0].String())
	}
	spread := damaged(t, replace(`{"log":"striderule","version":1,`, " {\n \"log\" : \"striderule\" \n , \n \"version\" : 1 ,\n"))
	assert.Len(t, spread.Entries, 3)
	assert.Empty(t, spread.Damages)
}

// What stands behind the entries may be damaged: they are kept.
func TestFileWithAMemberThatDoesNotEnd(t *testing.T) {
	file := damaged(t, replace("\n]}\n", "\n] \"more\":1}\n"))
	assert.Len(t, file.Entries, 3)
	require.Len(t, file.Damages, 1)
	assert.Contains(t, file.Damages[0].Says, "a comma or the end of the log is missing")
}

// A message repeats 60 letters of what was in a file, not more.
func TestQuotesAreShort(t *testing.T) {
	sixty := strings.Repeat("ä", 60)
	assert.Equal(t, "“"+sixty+"”", quote(sixty))
	assert.Equal(t, "“"+sixty+"…”", quote(sixty+"b"))
}

// A result without an uncertainty is shown with six digits.
func TestFigureWithoutUncertainty(t *testing.T) {
	e := feed(t, "2026-11-25")
	e.U = 0
	assert.Equal(t, "564.336 steps/mm", e.Figure().String())
}

// Nesting has an end, for lists and for objects, so that no file takes the program down.
func TestFileNestedToTheLimit(t *testing.T) {
	nested := func(open, inner, end string, depth int) File {
		return damaged(t, replace(`"machine":"Plover"`, `"machine":"Plover","photo":`+strings.Repeat(open, depth)+inner+strings.Repeat(end, depth)))
	}
	for _, c := range []struct{ open, inner, end string }{{"[", "", "]"}, {`{"a":`, "{}", "}"}} {
		depth := deepest - len(c.inner)/2 // the innermost object is one more
		for _, d := range nested(c.open, c.inner, c.end, depth).Damages {
			assert.NotContains(t, d.Says, "too deeply", c.open)
		}
		for _, more := range []int{1, 50, 100_000} {
			file := nested(c.open, c.inner, c.end, depth+more)
			assert.Len(t, file.Entries, 2, c.open)
			require.NotEmpty(t, file.Damages)
			assert.Contains(t, file.Damages[0].Says, "nested too deeply", c.open)
		}
	}
}
