package logbook

import (
	"encoding/csv"
	"encoding/json"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/sheet"
)

const tidewater = "v=1&steps=538.0&asked=80&mark=105&tool=caliper-0.05&rest=28.7,28.9,28.6"

func formOf(t require.TestingT, slug, fragment string) *form.Form {
	page, ok := calc.PageOf(slug)
	require.True(t, ok, slug)
	return calc.Load(page, fragment)
}

func TestWriteSheet(t *testing.T) {
	text := WriteSheet(formOf(t, "measure", tidewater))
	assert.Equal(t, `{"sheet":"striderule","version":1,"page":"measure","entries":{
"v":"1",
"saw":"steps:564.3356643:2.84:2026-12:8e3q3rm",
"steps":"538.0",
`, text[:strings.Index(text, `"asked"`)])
	assert.Contains(t, text, `"rest":["28.7","28.9","28.6"],`)
	var file map[string]any
	require.NoError(t, json.Unmarshal([]byte(text), &file))
	assert.InDelta(t, 564.33566, file["value"], 1e-5)
	assert.Equal(t, "steps", file["output"])
	assert.Equal(t, "steps/mm", file["unit"])
	known := map[string]bool{}
	for _, f := range SheetFields() {
		known[f.Key] = true
	}
	for key := range file {
		assert.True(t, known[key], "%s is documented", key)
	}
	assert.Len(t, file, len(SheetFields()), "this one has all of them")
	assert.Empty(t, WriteSheet(formOf(t, "measure", "")), "nothing is typed")
}

// A sheet that went through a file is the sheet that it was, the sender's result
// included, on every page; and encoding/json reads the same from it.
func TestSheetFileIsIdentity(t *testing.T) {
	texts := rapid.OneOf(rapid.SampledFrom([]string{"80", "80,5 mm", "5/16 in", "=1+1", `"`, `\`, "ä\u00a0", "", "x,y", "a&b=c", "%2C", "\u2028"}), rapid.String())
	rapid.Check(t, func(t *rapid.T) {
		page := rapid.SampledFrom(calc.Pages).Draw(t, "page")
		form := calc.Load(page, rapid.SampledFrom([]string{"", page.Example, "v=1&other=2&flag&empty="}).Draw(t, "link"))
		for range rapid.IntRange(0, 6).Draw(t, "edits") {
			f := rapid.SampledFrom(form.Fields()).Draw(t, "field")
			form.Set(f.Key, rapid.IntRange(0, 4).Draw(t, "row"), texts.Draw(t, "text"))
		}
		text := WriteSheet(form)
		if form.ShareFragment() == "" {
			require.Empty(t, text)
			return
		}
		slug, fragment, err := ReadSheet(text)
		require.NoError(t, err, text)
		require.Equal(t, page.Slug, slug)
		require.Equal(t, form.ShareFragment(), fragment)
		var file struct {
			Page    string
			Entries map[string]any
		}
		require.NoError(t, json.Unmarshal([]byte(text), &file), text)
		require.Equal(t, page.Slug, file.Page)
		for _, p := range link.Split(fragment) {
			var want any = strings.Join(p.Cells, "")
			if len(p.Cells) == 0 {
				want = nil
			} else if len(p.Cells) > 1 {
				var list []any
				for _, c := range p.Cells {
					list = append(list, c)
				}
				want = list
			}
			require.Equal(t, want, file.Entries[p.Key], p.Key)
		}
	})
}

func TestReadSheetByHand(t *testing.T) {
	for text, want := range map[string]string{
		`{"sheet":"striderule","page":"measure","entries":{"v":"1","steps":538.0,"rest":[28.7,null,"28,9"]}}`:         "v=1&steps=538.0&rest=28.7,,28%2C9",
		"\ufeff {\r\n\"page\":\"plan\",\"entries\":{},\"sheet\":\"striderule\"}\r\n":                                  "",
		`{"sheet":"striderule","page":"measure","entries":{"done":["dry"],"x":true,"flag":null},"extra":{"deep":[]}}`: "done=dry&x=true&flag",
		`{"sheet":"striderule","version":3,"page":"measure","entries":{"v":"1","steps":"8"}}`:                         "v=3&steps=8",
		// Entries that say themselves that they are newer are never made older.
		`{"sheet":"striderule","version":1,"page":"measure","entries":{"v":"2","steps":"8"}}`: "v=2&steps=8",
		`{"sheet":"striderule","page":"measure","entries":{"v":"2","steps":"8"}}`:             "v=2&steps=8",
		// Escapes of all sorts.
		`{"sheet":"striderule","page":"parts","entries":{"name":"H\u00e9\ud83d\ude00\/\n"}}`: "name=H%C3%A9%F0%9F%98%80/%20",
	} {
		_, fragment, err := ReadSheet(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, fragment, text)
	}
}

func TestReadSheetRefuses(t *testing.T) {
	good := WriteSheet(formOf(t, "measure", tidewater))
	for _, c := range []struct{ name, text, says string }{
		{"empty", "", "It isn't a sheet of this site"},
		{"a text", "hello", "It isn't a sheet of this site"},
		{"a picture", "\x89PNG\r\n\x1a\n", "It isn't a sheet of this site"},
		{"other JSON", `{"name":"x"}`, "It isn't a sheet of this site"},
		{"of another site", strings.Replace(good, "striderule", "elsewhere", 1), "It isn't a sheet of this site"},
		{"a list", "[" + good + "]", "It isn't a sheet of this site"},
		{"cut off", good[:len(good)/2], "It's damaged in line"},
		{"a quote lost", strings.Replace(good, `"80"`, `"80`, 1), "It's damaged in line 5: the closing quotation mark of a text is missing"},
		{"an escape that is none", strings.Replace(good, `"80"`, `"\x0038"`, 1), "line 5: unknown backslash escape"},
		{"a text that a line ends", strings.Replace(good, `"80"`, "\"\\/80\n\"", 1), "line 5: the closing quotation mark of a text is missing"},
		{"a half escape", strings.Replace(good, `"80"`, `"\u00"`, 1), "line 5: unknown backslash escape"},
		{"more behind it", good + "{}", "there is text after the end of the sheet"},
		{"of a page to come", strings.Replace(good, `"measure"`, `"weigh"`, 1), "a page that this version of the site doesn't have: “weigh”"},
		{"a path for a page", strings.Replace(good, `"measure"`, `"../measure"`, 1), "doesn't have: “../measure”"},
		{"no entries", `{"sheet":"striderule","page":"measure"}`, "“entries” is missing from it, or isn't an object"},
		{"entries within entries", `{"sheet":"striderule","page":"measure","entries":{"steps":{"a":"b"}}}`, "In line 1, “steps” must be text in quotes"},
		{"too long", strings.Repeat(" ", MostSheet) + good, "longer than a sheet can be"},
		{"a log", WriteFile(Example()), ErrLog.Error()},
		{"half a log", WriteFile(Example())[:900], ErrLog.Error()},
		{"a long log", WriteFile(many(1000)), ErrLog.Error()},
	} {
		t.Run(c.name, func(t *testing.T) {
			slug, fragment, err := ReadSheet(c.text)
			require.ErrorContains(t, err, c.says)
			assert.Empty(t, slug+fragment)
		})
	}
	assert.True(t, ReadFile(good).Foreign, "and a sheet is no log")
}

// Any text is read or refused; what is read is a page's, opens, and stays what it
// is when it goes through a file again.
func FuzzReadSheet(f *testing.F) {
	for _, p := range calc.Pages {
		f.Add(WriteSheet(calc.Load(p, p.Example)))
	}
	for _, s := range []string{"", "{}", `{"sheet":"striderule","page":"measure","entries":{"steps":[[]],"":"x","a":["",null,1]}}`, WriteFile(Example()[:1])} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		slug, fragment, err := ReadSheet(text)
		if err != nil {
			require.NotEmpty(t, err.Error())
			require.Empty(t, slug+fragment)
			return
		}
		form := formOf(t, slug, fragment)
		if again := WriteSheet(form); again != "" && len(again) <= MostSheet {
			s, fr, err := ReadSheet(again)
			require.NoError(t, err)
			require.Equal(t, slug, s)
			require.Equal(t, form.ShareFragment(), fr)
		}
	})
}

func TestRowsCSV(t *testing.T) {
	for _, c := range []struct {
		name, slug, fragment string
		want                 [][]string
	}{
		{"runs", "measure", tidewater, [][]string{{"Remaining (mm)", "Leave out"}, {"28.7", ""}, {"28.9", ""}, {"28.6", ""}}},
		{"the point, whatever was typed", "measure", "v=1&rest=28%2C7,1.5in,-3,%3D1", [][]string{{"Remaining (mm)", "Leave out"}, {"28.7", ""}, {"1.5in", ""}, {"-3", ""}, {"'=1", ""}}},
		{"a gap stays, what is empty at the end goes", "measure", "v=1&rest=1,,3&aside=,,yes", [][]string{{"Remaining (mm)", "Leave out"}, {"1", ""}, {"", ""}, {"3", "yes"}}},
		{"names that look like formulas", "convert", "v=1&name=-1%2B2,%40x", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			form := formOf(t, c.slug, c.fragment)
			text := RowsCSV(form, form.Groups()[0])
			require.True(t, strings.HasPrefix(text, "\ufeff"))
			require.Equal(t, strings.Count(text, "\n"), strings.Count(text, "\r\n"))
			got, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(text, "\ufeff"))).ReadAll()
			require.NoError(t, err)
			if c.slug == "convert" { // it has more columns than this is about
				assert.Equal(t, []string{"Name", "'-1+2", "'@x"}, []string{got[0][0], got[1][0], got[2][0]})
				assert.Equal(t, "linear", got[1][1], "what is chosen by default is told")
				return
			}
			assert.Equal(t, c.want, got)
		})
	}
	empty := formOf(t, "measure", "v=1&steps=538")
	assert.Empty(t, RowsCSV(empty, empty.Groups()[0]))
}

// A spreadsheet's column goes out and comes in again as it was.
func TestRowsCSVGoesBackByPaste(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var cells []string
		for range rapid.IntRange(1, sheet.MostRows).Draw(t, "rows") {
			cells = append(cells, strconv.Itoa(rapid.IntRange(1, 300).Draw(t, "tenths"))+".5")
		}
		form := formOf(t, "measure", "v=1&rest="+strings.Join(cells, ","))
		text := strings.TrimPrefix(RowsCSV(form, form.Groups()[0]), "\ufeff")
		back := formOf(t, "measure", "v=1")
		back.Paste("rest", 0, strings.ReplaceAll(text, ",", "\t"))
		require.Equal(t, form.Fragment(), back.Fragment())
	})
}
