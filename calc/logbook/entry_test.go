package logbook

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/sheet"
	"striderule/calc/word"
)

const heron = "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05"

func pageNamed(t testing.TB, slug string) sheet.Page {
	t.Helper()
	p, ok := calc.PageOf(slug)
	require.True(t, ok)
	return p
}

// feed is Heron's sheet, kept.
func feed(t testing.TB, date string) Entry {
	t.Helper()
	e, ok := Of(calc.Load(pageNamed(t, "measure"), heron), date, "Heron", "Extruder", "new extruder")
	require.True(t, ok)
	return NewBook(e).All()[0]
}

var names = rapid.OneOf(
	rapid.SampledFrom([]string{"Heron", "Plover", "", "a&b=c#d", "<b>x</b>", "100 %", `"\`, "=1+1", "Größe", "x, y", "🦆", "line\nbreak", "\x00\xff", "{\"id\":1}"}),
	rapid.String())

// anEntry draws an entry as Read and ReadFile return them.
func anEntry(t *rapid.T) Entry {
	e := Entry{
		ID:      rapid.StringMatching(`[a-z0-9-]{1,12}`).Draw(t, "id"),
		Date:    rapid.SampledFrom([]string{"2026-11-25", "2026-11-25T10:03", "2024-02-29T23:59", "0000-01-01"}).Draw(t, "date"),
		Machine: names.Draw(t, "machine"), Axis: names.Draw(t, "axis"), Note: names.Draw(t, "note"),
		Page:  rapid.StringMatching(`[a-z]{1,12}`).Draw(t, "page"),
		Sheet: "v=1&" + names.Draw(t, "sheet"),
	}
	if rapid.Bool().Draw(t, "answered") {
		e.Output = rapid.StringMatching(`[a-z]{1,8}`).Draw(t, "output")
		e.Label, e.Unit, e.Verdict = names.Draw(t, "label"), names.Draw(t, "unit"), names.Draw(t, "verdict")
		e.Value = rapid.Float64().Draw(t, "value")
		e.U = math.Abs(rapid.Float64().Draw(t, "u"))
	}
	if rapid.Bool().Draw(t, "newer") {
		e.Other = link.Join([]link.Piece{{Key: "photo", Cells: []string{word.OneLine(names.Draw(t, "other"))}}})
	}
	return e.tidy()
}

func TestTextIsIdentity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anEntry(t)
		got, err := Read(e.Text())
		require.NoError(t, err)
		require.Equal(t, e, got)
	})
}

func TestOf(t *testing.T) {
	e := feed(t, "2026-11-25T10:03")
	assert.Equal(t, "steps", e.Output)
	assert.InDelta(t, 564.33566, e.Value, 1e-5)
	assert.Equal(t, "change", e.Verdict)
	assert.Equal(t, "feed", e.Axis)
	assert.Empty(t, e.Label)
	assert.Equal(t, "564.3 ± 2.8 steps/mm", e.Figure().String())
	check, _ := calc.Load(pageNamed(t, "measure"), e.Sheet).Check()
	assert.Equal(t, form.Same, check, "opening it checks itself")

	_, ok := Of(calc.NewForm(pageNamed(t, "measure")), "2026-11-25", "Heron", "Extruder", "")
	assert.False(t, ok, "nothing typed")
	half, ok := Of(calc.Load(pageNamed(t, "measure"), "v=1&steps=538"), "2026-11-25", "Heron", "Extruder", "")
	require.True(t, ok)
	assert.False(t, half.Answered())
	long := calc.NewForm(pageNamed(t, "measure"))
	for row := range 40 {
		long.Set("rest", row, strings.Repeat("28.70000", 20))
	}
	_, ok = Of(long, "2026-11-25", "Heron", "Extruder", "")
	assert.False(t, ok, "more than a link can carry")
}

func TestReadSaysWhatIsDamaged(t *testing.T) {
	const good = "log=1&id=a1&date=2026-11-25&page=measure&sheet=v%3D1&output=steps&value=80"
	e, err := Read(good)
	require.NoError(t, err)
	assert.Equal(t, 80.0, e.Value)
	for text, says := range map[string]string{
		"":                        "not an entry of the log",
		"hello":                   "not an entry of the log",
		"log=x":                   "not an entry of the log",
		"log=0&id=a":              "not an entry of the log",
		"log=1":                   "its ID is",
		"log=1&id=A!":             "small letters, digits and hyphens",
		"log=1&id=a1":             "no date",
		"log=1&id=a1&date=yester": "a date looks like 2026-11-25",
		"log=1&id=a1&date=2026-11-25&page=../evil&sheet=v": "its page is “../evil”",
		"log=1&id=a1&date=2026-11-25&page=measure":         "no sheet",
		good + "x":                                       "“80x”, which isn't a number",
		strings.Replace(good, "80", "1e999", 1):          "“1e999”, which isn't a number",
		strings.Replace(good, "80", "nan", 1):            "isn't a valid number",
		good + "&u=-1":                                   "isn't a valid number",
		strings.Replace(good, "&output=steps", "", 1):    "both a value and an output",
		good + "&note=" + strings.Repeat("x", MostEntry): "longer than",
	} {
		_, err := Read(text)
		require.ErrorContains(t, err, says, "%.80s", text)
	}
	_, err = Read("log=2&id=a1&date=in+some+new+form")
	require.ErrorIs(t, err, ErrNewer)
	twice, err := Read(good + "&machine=Heron&machine=Plover&=x")
	require.NoError(t, err)
	assert.Equal(t, "Heron", twice.Machine)
	newer, err := Read(good + "&photo=a,b")
	require.NoError(t, err)
	assert.Contains(t, newer.Text(), "&photo=a%2Cb", "what is not known is kept")
}

func TestDates(t *testing.T) {
	for day := time.Date(1890, 1, 1, 0, 0, 0, 0, time.UTC); day.Year() < 2110; day = day.AddDate(0, 0, 1) {
		got, ok := days(day.Format("2006-01-02"))
		require.True(t, ok, day)
		require.Equal(t, float64(day.Unix()/86400), got, day)
	}
	noon, ok := days("2026-11-25T12:00")
	require.True(t, ok)
	midnight, _ := days("2026-11-25")
	assert.Equal(t, midnight+0.5, noon)
	for _, year := range []int{0, 1, 400, 9999} {
		got, ok := days(fmt.Sprintf("%04d-03-01", year))
		require.True(t, ok)
		assert.Equal(t, float64(time.Date(year, 3, 1, 0, 0, 0, 0, time.UTC).Unix()/86400), got, year)
	}
	before, ok := days("0000-01-01")
	assert.True(t, ok)
	assert.Equal(t, -719528.0, before)
	for _, bad := range []string{"", "2026-11-31", "2026-02-29", "1900-02-29", "2026-13-01", "2026-00-01", "2026-1-1", "2026-11-00", "2026-11-25 10:03",
		"2026-11-25T24:00", "2026-11-25T10:60", "2026-11-25T10:3", "2026/11/25", "20x6-11-25", "2026-11-25T1x:03", "+026-11-25", "2026-11-25T10.03"} {
		assert.False(t, IsDate(bad), bad)
	}
	assert.True(t, IsDate("2000-02-29"))
}

// Whatever text is stored under a key of the log: it is an entry that comes
// back the same, or it is told apart.
func FuzzRead(f *testing.F) {
	for _, e := range Example() {
		f.Add(e.Text())
	}
	for _, s := range []string{"", "log=2", "log=1&id=a&date=2026-11-25&page=a&sheet=b&output=c&value=-0&u=1e-300&x=%zz", "log=1&&=&log", "log=1&id=a&date=2026-11-25&page=a&sheet=%20&q= , &%20q=1"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		e, err := Read(text)
		if err != nil {
			require.NotEmpty(t, err.Error())
			require.Equal(t, Entry{}, e)
			return
		}
		again, err := Read(e.Text())
		require.NoError(t, err)
		require.Equal(t, e, again)
		require.True(t, IsDate(e.Date))
		b := NewBook(e)
		require.Equal(t, []Entry{e}, b.All())
		require.Len(t, b.Of(e.Machine, e.Axis), 1)
		for _, trend := range Trends(b.All()) {
			require.NotEmpty(t, trend.Says)
		}
		require.Empty(t, Compare(e, e).Differences)
	})
}

func TestAxisFor(t *testing.T) {
	page, _ := calc.PageOf("measure")
	convert, _ := calc.PageOf("convert")
	extruder, x := Entry{Axis: "feed"}, Entry{Axis: "X"}
	for _, last := range []Entry{{}, extruder, x} {
		assert.Equal(t, "Extruder", AxisFor(calc.NewForm(page), last))
		assert.Equal(t, "Rotary", AxisFor(calc.Load(page, "v=1&axis=rotary"), last))
	}
	assert.Equal(t, "X", AxisFor(calc.Load(page, "v=1&axis=travel"), x))
	assert.Empty(t, AxisFor(calc.Load(page, "v=1&axis=travel"), extruder), "X would stand in the extruder's trend")
	assert.Equal(t, "Extruder", AxisFor(calc.NewForm(convert), extruder))
}
