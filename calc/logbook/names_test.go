package logbook

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/report"
)

// before is a file of testdata/before: what was written while entries held labels. These
// files stay as they are, and are read for ever.
func before(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", "before", name))
	require.NoError(t, err)
	return string(text)
}

// entriesBefore are all that the file of a log has.
func entriesBefore(t *testing.T) []Entry {
	t.Helper()
	f := ReadFile(before(t, "log.json"))
	require.Empty(t, f.Damages)
	require.False(t, f.Newer || f.Foreign)
	require.Equal(t, 110, len(f.Entries))
	return f.Entries
}

func TestWhatWasWrittenBeforeStays(t *testing.T) {
	entries := entriesBefore(t)
	assert.Equal(t, before(t, "log.json"), WriteFile(entries), "letter by letter")
	var stored []Entry
	for _, line := range strings.Split(strings.TrimSpace(before(t, "storage.txt")), "\n") {
		id, text, _ := strings.Cut(line, "\t")
		e, err := Read(text)
		require.NoError(t, err)
		assert.Equal(t, id, e.ID)
		assert.Equal(t, text, e.Text(), "letter by letter")
		stored = append(stored, e)
	}
	assert.Equal(t, entries, stored)
	assert.Empty(t, NewBook(stored...).Merge(entries).Added, "an old file adds nothing to an old log")

	slug, fragment, err := ReadSheet(before(t, "sheet.json"))
	require.NoError(t, err)
	assert.Equal(t, "measure", slug)
	page := pageNamed(t, slug)
	assert.Equal(t, calc.Load(page, page.Example).Report().Answer.Value, calc.Load(page, fragment).Report().Answer.Value)
}

func TestWhatWasWrittenBeforeIsShown(t *testing.T) {
	titles := map[string]bool{"": true}
	for _, v := range verdictTitles {
		titles[v[1]] = true
	}
	for _, e := range entriesBefore(t) {
		assert.True(t, titles[e.VerdictTitle()], e.Verdict)
		assert.Contains(t, []string{"Extruder", "Rotary", "X"}, e.AxisName())
		if e.Answered() {
			assert.NotEmpty(t, e.ResultName())
			assert.NotEqual(t, e.Label, e.ResultName(), "of %s the page has a name", e.Output)
		}
	}
	extruder := NewBook(entriesBefore(t)...).Of("Heron", "feed")
	assert.Equal(t, 34, len(extruder))
	assert.Equal(t, "Feed", extruder[0].Axis)
	assert.Equal(t, extruder, NewBook(entriesBefore(t)...).Of("Heron", "Extruder"))
}

// What is saved now stands beside what was saved before: under the same axis, in the same
// trend, by the same names.
func TestOldAndNewEntriesJoin(t *testing.T) {
	// What an edition since then says nothing of any more: the plan finds no test as good as that,
	// and the readings of a rule of 1 mm across a filament are too far apart.
	silent := map[string]bool{
		"v=1&wanted=0.0969&tool=caliper-0.05&longest=60&saw=length:60::2026-11":                                       true,
		"v=1&scale=verified&by=diameter&set=1.75&across=2,2,2.1&tool=rule&tol=20&saw=flow:0.7407282988:0.415:2026-11": true,
	}
	gone := map[string]int{}
	old := entriesBefore(t)
	var both []Entry
	for _, e := range old {
		again, ok := Of(calc.LoadWhole(pageNamed(t, e.Page), e.Sheet), strings.Replace(e.Date, "2026", "2027", 1), e.Machine, e.AxisName(), e.Note)
		require.True(t, ok)
		assert.Empty(t, again.Label)
		assert.Equal(t, AxisKey(e.Axis), again.Axis)
		if silent[e.Sheet] {
			assert.False(t, again.Answered(), e.Sheet)
			gone[AxisKey(e.Axis)+e.ResultName()]++
		} else {
			assert.Equal(t, []string{e.Output, e.Unit, e.ResultName()}, []string{again.Output, again.Unit, again.ResultName()})
		}
		if again.Verdict != "" {
			assert.NotEmpty(t, verdictTitles.Of(again.Verdict), again.Verdict)
		}
		both = append(both, e, again)
	}
	for _, axis := range []string{"feed", "rotary", "X"} {
		alone, joined := Trends(NewBook(old...).Of("Heron", axis)), Trends(NewBook(both...).Of("Heron", axis))
		require.Equal(t, len(alone), len(joined))
		for i := range joined {
			assert.Equal(t, alone[i].Label, joined[i].Label)
			assert.Equal(t, 2*alone[i].Results-gone[axis+alone[i].Label], joined[i].Results)
		}
	}
	assert.Len(t, gone, len(silent))
	assert.Equal(t, NewBook(old...).Axes(""), NewBook(both...).Axes(""))
}

func TestNamesOfAxes(t *testing.T) {
	for name, key := range map[string]string{
		"Extruder": "feed", "extruder": "feed", "Feed": "feed", "feed": "feed",
		"Rotary": "rotary", "Linear": "travel", "Travel": "travel",
		"X": "X", "Extruder 2": "Extruder 2", "": "",
	} {
		assert.Equal(t, key, AxisKey(name), name)
	}
	for key, name := range map[string]string{"feed": "Extruder", "Feed": "Extruder", "travel": "Linear", "rotary": "Rotary", "table": "table", "": ""} {
		assert.Equal(t, name, AxisName(key), key)
	}
	book := NewBook(Entry{ID: "a", Axis: "rotary"}, Entry{ID: "b", Axis: "Puller"}, Entry{ID: "c", Axis: "feed"}, Entry{ID: "d", Axis: "Feed"})
	assert.Equal(t, []string{"feed", "Puller", "rotary"}, book.Axes(""), "by the alphabet of what is shown")
}

// A result's name tells what it is, and of a setting that it was measured: the verdict may
// be to leave another.
func TestNamesOfResults(t *testing.T) {
	for _, c := range []struct {
		e    Entry
		name string
	}{
		{Entry{Page: "measure", Output: "steps", Unit: "steps/mm", Verdict: "leave", Label: "What the readings give"}, "Steps per mm, as measured"},
		{Entry{Page: "measure", Output: "steps", Unit: "steps/°", Verdict: "change"}, "Steps per degree, as measured"},
		{Entry{Page: "swap", Output: "turn", Unit: "mm/rev"}, "Travel per motor turn"},
		{Entry{Page: "tomorrow", Output: "mass", Unit: "g", Label: "Mass, new"}, "Mass, new"},
		{Entry{Page: "measure"}, ""},
	} {
		assert.Equal(t, c.name, c.e.ResultName())
		assert.Equal(t, c.name, c.e.Figure().Label)
	}
}

func TestTitlesOfVerdicts(t *testing.T) {
	for stored, title := range map[string]string{
		"leave": "Leave it", "Leave it": "Leave it", "mistake-slip": "Look for a mistake first – and there is slip",
		"Not with this instrument and wall": "Too coarse to settle it", "As near as it matters": "Close enough", "later-perhaps": "later-perhaps", "": "",
	} {
		assert.Equal(t, title, Entry{Verdict: stored}.VerdictTitle(), stored)
	}
	for _, v := range verdictsOnce {
		assert.NotEmpty(t, verdictTitles.Of(v[1]), v[0])
	}
	for kind := report.Leave; kind <= report.Either; kind++ {
		for _, v := range []report.Verdict{{Kind: kind}, {Kind: kind, Slip: true}, {Kind: kind, After: true}, {Kind: kind, Mistake: true}, {Kind: kind, Mistake: true, Slip: true}, {Kind: kind, Parts: true}, {Kind: kind, Interim: true}, {Kind: kind, Interim: true, Slip: true}} {
			assert.NotEmpty(t, verdictTitles.Of(v.ID()), v.ID())
		}
	}
	assert.Len(t, verdictTitles, 3*5+2+3, "and no others")
	// The log says it as the page does.
	for _, e := range Example() {
		assert.Equal(t, calc.Load(pageNamed(t, e.Page), e.Sheet).Report().Answer.Verdict.Title, e.VerdictTitle())
	}
}

// What an entry stores of a verdict tells check runs and slip.
func TestVerdictsOfPages(t *testing.T) {
	for fragment, id := range map[string]string{
		heron: "change",
		heron + "&restagain=25.0,25.1,25.0,25.1&tol=1": "after-leave",
		heron + "&restagain=28.8,28.7,28.9":            "after-change",
		"v=1&steps=415&trial=speeds&asked=100&read=fed&at=60,60,180,180,360,360&fed=98.42,98.38,98.41,98.39,95.42,95.38&tool=caliper-0.02": "change-slip",
		"v=1&axis=travel&steps=80&asked=100&moved=125.02,124.98,125&tool=caliper-0.05&gears=none":                                          "mistake",
	} {
		e, ok := Of(calc.Load(pageNamed(t, "measure"), fragment), "2026-11-25", "Heron", "", "")
		require.True(t, ok)
		assert.Equal(t, id, e.Verdict, fragment)
	}
}

// A spreadsheet is read by people: it has words where an entry has keys.
func TestCSVIsInWords(t *testing.T) {
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(CSV([]Entry{feed(t, "2026-11-25")}), "\ufeff"))).ReadAll()
	require.NoError(t, err)
	row := map[string]string{}
	for i, key := range rows[0] {
		row[key] = rows[1][i]
	}
	assert.Equal(t, []string{"Extruder", "Steps per mm, as measured", "Change it", "steps"}, []string{row["axis"], row["label"], row["verdict"], row["output"]})
}
