package logbook

import (
	"fmt"
	"hash/fnv"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// aLog has what a log may hold, and escapes, lists and objects that it need not.
const aLog = `{"log":"striderule","version":1,"notes":[{"a":1}],"entries":[
 {"id":"a1","date":"2026-11-25T10:03","machine":"H\u00e9\"r","axis":"feed","page":"measure","sheet":"v=1","output":"steps","value":-5.6e2,"u":2,"unit":"x","more":[1,{"b":true}],"id":"b2"},
 {"id":"c3","date":"2026-11-26","page":"measure","sheet":"v=1","x":"\ud83d\ude00","y":null,"z":false}
]}`

// TestDamagedLogsAreReadTheSame holds against a kept text what is read of a log that is cut
// off anywhere, or has another character in any place. The text is made anew with UPDATE=1.
func TestDamagedLogsAreReadTheSame(t *testing.T) {
	require.Len(t, ReadFile(aLog).Entries, 2)
	var outcomes []string // in the order in which they come
	places := map[string][]int{}
	note := func(outcome string, at int) {
		if places[outcome] == nil {
			outcomes = append(outcomes, outcome)
		}
		places[outcome] = append(places[outcome], at)
	}
	for at := range aLog {
		note("cut off: "+outcomeOf(aLog[:at]), at)
		for _, c := range []string{`"`, `\`, `}`, `,`, "\n"} {
			note(strconv.Quote(c)+": "+outcomeOf(aLog[:at]+c+aLog[at+1:]), at)
		}
	}
	var b strings.Builder
	for _, outcome := range outcomes {
		fmt.Fprintln(&b, outcome, "at", ranges(places[outcome]))
	}
	name := filepath.Join("testdata", "damaged.txt")
	if os.Getenv("UPDATE") != "" {
		require.NoError(t, os.WriteFile(name, []byte(b.String()), 0o644))
	}
	kept, err := os.ReadFile(name)
	require.NoError(t, err)
	was, is := strings.Split(string(kept), "\n"), strings.Split(b.String(), "\n")
	require.Equal(t, len(was), len(is), "kinds of what is read")
	for i := range was {
		require.Equal(t, was[i], is[i])
	}
}

// outcomeOf is what a file says; of its entries it has a sum.
func outcomeOf(text string) string {
	f := ReadFile(text)
	sum := fnv.New32a()
	for _, e := range f.Entries {
		fmt.Fprintln(sum, e.Text())
	}
	said := fmt.Sprintf("%d entries %08x", len(f.Entries), sum.Sum32())
	if f.Foreign {
		said += ", foreign"
	}
	if f.Newer {
		said += ", newer"
	}
	for _, d := range f.Damages {
		said += "; " + d.String()
	}
	return strings.ReplaceAll(said, "\n", "⏎")
}

// ranges writes numbers that rise in few words: 1-3,5.
func ranges(all []int) string {
	var b strings.Builder
	for i := 0; i < len(all); {
		j := i
		for j+1 < len(all) && all[j+1] == all[j]+1 {
			j++
		}
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString(strconv.Itoa(all[i]))
		if j > i {
			b.WriteString("-" + strconv.Itoa(all[j]))
		}
		i = j + 1
	}
	return b.String()
}

// What nests too deep, or ends within an escape, is told in its line.
func TestDamageByHand(t *testing.T) {
	for _, c := range []struct{ text, says string }{
		{`{"log":"striderule","version":1,"entries":[` + "\n" + `{"id":"a","x":` + strings.Repeat("[", 30) + "\n", "Line 2: nested too deeply"},
		{`{"log":"striderule","version":1,"entries":[` + "\n" + `{"id":"a\`, "Line 2: the file ends here, in the middle of an entry; it was cut off"},
		{`{"log":"striderule","version":1,"entries":[` + "\n\n" + `{"id":"a\n` + "\n", "Line 3: the closing quotation mark of a text is missing"},
		{`{"log":"striderule","version":1,"entries":[{"id":"a\u12`, "Line 1: unknown backslash escape"},
		{`{"log":"striderule","version":1,"entries":[{"id":"a","value":+-e}]}`, "Line 1: a value is missing, or isn't text in quotes or a number"},
		{`{"log":"striderule","version":1,"entries":[{"id":"a","machine":{"b":1}}]}`, "Line 1: entry left out – “machine” must be text in quotes"},
		{`{"log":"striderule","version":1,"entries":[{"id":"a","machine":true}]}`, "Line 1: entry left out – “machine” must be text in quotes"},
		{`{"log":"striderule","version":1,"entries":[{"id":"a","note":"a\n`, "Line 1: the file ends here, in the middle of an entry; it was cut off"},
	} {
		f := ReadFile(c.text)
		said := make([]string, len(f.Damages))
		for i, d := range f.Damages {
			said[i] = d.String()
		}
		assert.Contains(t, strings.Join(said, "; "), c.says, c.text)
	}
}

// A sheet's version is told to the page where it is newer than this one, and otherwise not.
func TestSheetOfAVersion(t *testing.T) {
	for version, want := range map[string]string{"0": "v=1&steps=538", "1": "v=1&steps=538", "2": "v=2&steps=538", "x": "v=1&steps=538", "-3": "v=1&steps=538"} {
		_, fragment, err := ReadSheet(`{"sheet":"striderule","version":` + strconv.Quote(version) + `,"page":"measure","v":"1","entries":{"v":"1","steps":"538"}}`)
		if assert.NoError(t, err, version) {
			assert.Equal(t, want, fragment, version)
		}
	}
}

func TestTrendInFigures(t *testing.T) {
	trends := Trends(Example())
	require.NotEmpty(t, trends)
	assert.Contains(t, trends[0].Says, "No clear trend: anything from −76 steps/mm to 88 steps/mm a month would fit, including no change.")
	for _, trend := range trends {
		c := trend.Chart
		assert.Equal(t, shownDigits, c.X.Digits)
		assert.Equal(t, shownDigits, c.Y.Digits)
		assert.NotContains(t, c.Points[0].Label, "T")
	}
}
