package logbook

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc/word"

	"striderule/calc/link"
)

// asMap is an entry as encoding/json sees it.
func asMap(e Entry) map[string]any {
	m := map[string]any{}
	for _, f := range Fields {
		if _, ok := f.written(&e); !ok {
			continue
		}
		if f.Number() {
			m[f.Key] = *f.number(&e)
		} else {
			m[f.Key] = *f.text(&e)
		}
	}
	for _, p := range link.Split(e.Other) {
		m[p.Key] = strings.Join(p.Cells, ",")
	}
	return m
}

func drawEntries(t *rapid.T) []Entry {
	var all []Entry
	for range rapid.IntRange(0, 6).Draw(t, "entries") {
		all = append(all, anEntry(t))
	}
	return all
}

// Export, clear, import is identity.
func TestFileIsIdentity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		before := NewBook(drawEntries(t)...)
		f := ReadFile(WriteFile(before.All()))
		require.Empty(t, f.Damages)
		require.False(t, f.Foreign || f.Newer)
		require.Equal(t, before.Len(), len(f.Entries))
		after := NewBook(f.Entries...)
		require.Equal(t, before.All(), after.All())
		again := after.Merge(f.Entries)
		require.Empty(t, again.Added)
		require.Equal(t, before.Len(), again.There)
		require.Equal(t, before.All(), after.All())
	})
}

func TestFileAgainstAnotherCodec(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		entries := NewBook(drawEntries(t)...).All()
		var file struct {
			Log     string
			Version int
			Entries []map[string]any
		}
		require.NoError(t, json.Unmarshal([]byte(WriteFile(entries)), &file))
		require.Equal(t, "striderule", file.Log)
		require.Equal(t, Version, file.Version)
		require.Len(t, file.Entries, len(entries))
		maps := []map[string]any{}
		for i, e := range entries {
			require.Equal(t, asMap(e), file.Entries[i])
			maps = append(maps, asMap(e))
		}
		// Written by the other, in another order and with other escapes.
		whole := map[string]any{"log": "striderule", "version": 1, "entries": maps}
		flat, err := json.Marshal(whole)
		require.NoError(t, err)
		pretty, err := json.MarshalIndent(whole, "", "  ")
		require.NoError(t, err)
		for _, text := range []string{string(flat), string(pretty), "\ufeff" + strings.ReplaceAll(string(pretty), "\n", "\r\n")} {
			f := ReadFile(text)
			require.Empty(t, f.Damages)
			if len(entries) > 0 {
				require.Equal(t, entries, f.Entries)
			}
		}
	})
}

func TestCSVAgainstAnotherCodec(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		entries := NewBook(drawEntries(t)...).All()
		r := csv.NewReader(strings.NewReader(strings.TrimPrefix(CSV(entries), "\ufeff")))
		rows, err := r.ReadAll()
		require.NoError(t, err)
		require.Len(t, rows, len(entries)+1)
		for i, e := range entries {
			e = e.inWords()
			for j, f := range Fields {
				want, _ := f.written(&e)
				got := rows[i+1][j]
				if !f.Number() {
					require.Equal(t, without(word.Shown(want)), without(got), "nothing but apostrophes")
				}
				if !f.Number() && got != "" {
					require.NotContains(t, "=+-@", strings.TrimSpace(got)[:1])
				}
			}
		}
	})
}

func without(text string) string { return strings.ReplaceAll(text, "'", "") }

func TestCSV(t *testing.T) {
	e := feed(t, "2026-11-25")
	e.Machine, e.Note, e.Value = `=HYPERLINK("x")`, `say "80", then`, -5.5
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(CSV([]Entry{e}), "\ufeff"))).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, []string{"id", "date", "machine", "axis", "note", "page", "sheet", "output", "label", "unit", "value", "u", "verdict"}, rows[0])
	assert.Equal(t, `'=HYPERLINK("x")`, rows[1][2])
	assert.Equal(t, e.Note, rows[1][4])
	assert.Equal(t, "-5.5", rows[1][10], "a number stays one")
}

// damaged makes a file of three entries and damages it.
func damaged(t *testing.T, how func(string) string) File {
	t.Helper()
	whole := WriteFile(Example()[:3])
	text := how(whole)
	require.False(t, text == whole && !strings.HasSuffix(t.Name(), "/whole"), "nothing was damaged")
	return ReadFile(text)
}

func replace(old, with string) func(string) string {
	return func(s string) string { return strings.Replace(s, old, with, 1) }
}

func inPretty(how func(string) string) func(string) string {
	return func(s string) string {
		var b bytes.Buffer
		_ = json.Indent(&b, []byte(s), "", "  ")
		return how(b.String())
	}
}

func inOneLine(how func(string) string) func(string) string {
	return func(s string) string {
		var b bytes.Buffer
		_ = json.Compact(&b, []byte(s))
		return how(b.String())
	}
}

func TestDamagedFiles(t *testing.T) {
	for _, c := range []struct {
		name string
		how  func(string) string
		left int
		says []string
	}{
		{"whole", func(s string) string { return s }, 3, nil},
		{"cut off within the last entry", func(s string) string { return s[:strings.LastIndex(s, `"verdict"`)] }, 2, []string{"Line 4: the file ends here, in the middle of an entry; it was cut off"}},
		{"cut off within a text", func(s string) string { return s[:strings.LastIndex(s, `re"`)] }, 2, []string{"Line 4: the file ends here, in the middle of an entry; it was cut off"}},
		{"cut off between entries", func(s string) string { return s[:strings.LastIndex(s, ",\n{")] }, 2, []string{"Line 3: the file ends here, before the end of the log"}},
		{"end missing", replace("\n]}\n", ""), 3, []string{"Line 4: the file ends here, before the end"}},
		{"a quotation mark missing", replace(`"Plover"`, `"Plover`), 2, []string{"Line 3: a comma or } is missing after “machine”"}},
		{"a quotation mark missing at the end of the line", replace(`change"},`, `change},`), 2, []string{"Line 2: the closing quotation mark of a text is missing"}},
		{"a colon missing", replace(`"machine":"Plover"`, `"machine""Plover"`), 2, []string{"Line 3: a colon is missing after “machine”"}},
		{"a comma missing within", replace(`"Plover",`, `"Plover"`), 2, []string{"Line 3: a comma or } is missing after “machine”"}},
		{"a comma missing between", replace("},\n{", "}\n{"), 3, []string{"Line 3: a comma is missing"}},
		{"a brace missing", replace("},\n{", ",\n{"), 2, []string{"Line 3: a quotation mark is missing"}},
		{"too many commas", replace("},\n{", "},,\n{"), 3, nil},
		{"rubbish between", replace("},\n{", "} what {is} this\n,{"), 3, []string{"Line 2: a comma is missing"}},
		{"no entry", replace("},\n{", "},\n5,\"x\",\n{"), 3, []string{"Line 3: there should be an entry in { } here", "Line 3: there should be an entry in { } here"}},
		{"a number as text", replace(`"value":88`, `"value":"88"`), 2, []string{"Line 3: a comma or } is missing"}},
		{"a wrong type", replace(`"machine":"Plover"`, `"machine":7`), 2, []string{"Line 3: entry left out – “machine” must be text in quotes"}},
		{"a text for a number", replace(`"u":0.`, `"u":"x","y":0.`), 2, []string{"Line 3: entry left out – “u” must be a number"}},
		{"too large", replace(`"u":0.`, `"u":1e999,"y":0.`), 2, []string{"Line 3: entry left out – “u” is too large a number"}},
		{"a bad date", replace("2026-10-10T", "10.10.26 "), 2, []string{"Line 3: entry left out – its date is “10.10.26 10:05”"}},
		{"a bad word", replace(`"Plover"`, `Plover`), 2, []string{"Line 3: a value is missing, or isn't text in quotes"}},
		{"a bad escape", replace(`"Plover"`, `"Plo\ver"`), 2, []string{"Line 3: unknown backslash escape"}},
		{"too long", replace(`"Plover"`, `"`+strings.Repeat("é", 5000)+`"`), 2, []string{"Line 3: entry left out – longer than"}},
		{"nothing said", replace(`"Plover"`, `null`), 3, nil},
		{"unknown keys", replace(`"machine":"Plover"`, `"machine":"Plover","photo":"x.png","tries":3,"good":true`), 3, nil},
		{"unknown list", replace(`"machine":"Plover"`, `"machine":"Plover","photos":[{"id":"x"},[1,2],{}]`), 3, []string{"Line 3: “photos” isn't a known key and was left out"}},
		{"unknown in the head", replace(`"version":1,`, `"version":1,"from":{"a":[]},`), 3, nil},
		{"no version", replace(`"version":1`, `"version":"x"`), 3, []string{"Line 1: the version isn't a number"}},
		{"head gone", func(s string) string { return s[strings.Index(s, "\n")+1:] }, 3, []string{"Line 1: the start of the file is missing"}},
		{"head broken", replace(`"version":1`, `"version":`), 3, []string{"Line 1: a value is missing"}},
		{"head broken before the list", replace(`"entries":[`, `"entries":`), 3, []string{"Line 2: a [ is missing"}},
		{"head key broken", replace(`"version":1`, `version:1`), 3, []string{"Line 1: a quotation mark is missing"}},
		{"head colon gone", replace(`"version":1`, `"version"1`), 3, []string{"Line 1: a colon is missing"}},
		{"two in one", func(s string) string { return s + "{}" }, 3, []string{"Line 6: there is text after the end of the log"}},
		{"nested too deeply", replace(`"machine":"Plover"`, `"machine":"Plover","x":`+strings.Repeat("[", 99)+strings.Repeat("]", 99)), 2, []string{"Line 3: nested too deeply"}},
		{"list not closed", replace(`"machine":"Plover"`, `"x":[1 2],"machine":"Plover"`), 2, []string{"Line 3: a comma or ] is missing"}},
		{"no id", replace(`"id":"`+Example()[1].ID+`",`, ``), 3, nil},
		{"pretty, an entry broken", inPretty(replace(`"Plover",`, `"Plover`)), 2, []string{"the closing quotation mark of a text is missing"}},
		{"pretty, cut off", inPretty(func(s string) string { return s[:strings.LastIndex(s, `"unit"`)] }), 2, []string{"the file ends here, in the middle of an entry"}},
		{"one line, an entry broken", inOneLine(replace(`"Plover",`, `"Plover`)), 2, []string{"Line 1: a comma or } is missing"}},
		{"one line, a quote escaped by mistake", inOneLine(replace(`change"},`, `change\"},`)), 2, []string{"Line 1: a comma or } is missing"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := damaged(t, c.how)
			assert.False(t, f.Foreign)
			assert.Len(t, f.Entries, c.left)
			require.Len(t, f.Damages, len(c.says), "%v", f.Damages)
			for i, says := range c.says {
				assert.Contains(t, f.Damages[i].String(), says)
			}
			known := map[string]Entry{}
			for _, e := range Example() {
				known[e.Date] = e
			}
			for _, e := range f.Entries {
				assert.Equal(t, known[e.Date].Value, e.Value, "what is left is right")
			}
		})
	}
}

func TestUnknownKeysAreKept(t *testing.T) {
	f := damaged(t, replace(`"machine":"Plover"`, `"machine":"Plover","photo":"x & y.png","tries":3,"log":"x"," odd ":1`))
	require.Len(t, f.Entries, 3)
	assert.Equal(t, "photo=x%20%26%20y.png&tries=3", f.Entries[1].Other)
	again := ReadFile(WriteFile(f.Entries))
	assert.Empty(t, again.Damages)
	assert.Equal(t, f.Entries, again.Entries)
}

func TestNewerFile(t *testing.T) {
	f := damaged(t, replace(`"version":1`, `"version":2`))
	assert.True(t, f.Newer)
	assert.Len(t, f.Entries, 3)
}

func TestForeignFiles(t *testing.T) {
	for _, text := range []string{"", "hello", "{}", "[]", "[1,2]", "\x00\x01", `{"a":1}`, `{"log":"other","entries":[{"id":"a"}]}`, `{"entries":`, `[{"a":1}]`, "date,machine\r\n2026,Heron",
		strings.Replace(WriteFile(Example()), "striderule", "elsewhere", 1)} {
		assert.True(t, ReadFile(text).Foreign, "%.40q", text)
	}
	list := WriteFile(Example())
	list = list[strings.Index(list, "[") : strings.LastIndex(list, "]")+1]
	f := ReadFile(list)
	assert.Len(t, f.Entries, len(Example()), "entries alone, without the log around them")
	assert.Contains(t, f.Damages[0].Says, "the start of the file is missing")
}

func TestEscapes(t *testing.T) {
	for written, want := range map[string]string{
		`a\u0062c`: "abc", `\ud83e\udd86`: "🦆", `\ud83ex`: "\ufffdx", `\ud83e\u0041`: "\ufffdA", `\ud83e\n`: "\ufffd ", `\"\\\/`: `"\/`, `a\tb`: "a b", "\xff": "\ufffd", `\u00E4`: "ä",
	} {
		f := damaged(t, replace("Plover", written))
		require.Empty(t, f.Damages, written)
		assert.Equal(t, strings.TrimSpace(want), f.Entries[1].Machine, written)
	}
}

// What is valid JSON is read as encoding/json reads it; the rest does no harm.
func FuzzReadFile(f *testing.F) {
	whole := WriteFile(Example()[:3])
	for _, s := range []string{"", "{}", whole, whole[:len(whole)/2], "\ufeff" + strings.ReplaceAll(whole, "\n", "\r\n"), strings.ReplaceAll(whole, "},", "}"), strings.Replace(whole, "Plover\"", "Plover", 1),
		`{"log":"striderule","version":2,"entries":[{"date":"2026-11-25","page":"a","sheet":"b","x":{"y":[{"z":1}]}}]}`} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		got := ReadFile(text)
		if got.Foreign {
			require.Empty(t, got.Entries)
		}
		lines := strings.Count(text, "\n") + 1
		for _, d := range got.Damages {
			require.NotEmpty(t, d.Says)
			require.True(t, d.Line >= 1 && d.Line <= lines, "%v", d)
		}
		again := ReadFile(WriteFile(got.Entries))
		require.Empty(t, again.Damages)
		if len(got.Entries) > 0 {
			require.Equal(t, got.Entries, again.Entries)
		}
		var file struct{ Entries []json.RawMessage }
		if len(got.Damages) == 0 && !got.Foreign && json.Unmarshal([]byte(strings.TrimPrefix(text, "\ufeff")), &file) == nil {
			objects := 0
			for _, e := range file.Entries {
				if e[0] == '{' {
					objects++
				}
			}
			require.Len(t, got.Entries, objects, "nothing is dropped without a word")
		}
		for _, e := range got.Entries {
			kept, err := Read(e.Text())
			require.NoError(t, err)
			require.Equal(t, e, kept)
		}
	})
}

// many makes a long log.
func many(n int) []Entry {
	example := Example()
	var all []Entry
	for i := range n {
		e := example[i%len(example)]
		e.ID = "e" + strconv.Itoa(i)
		e.Date = strconv.Itoa(2000+i%25) + e.Date[4:]
		all = append(all, e)
	}
	return all
}

func BenchmarkLog5000Read(b *testing.B) {
	var texts []string
	for _, e := range many(5000) {
		texts = append(texts, e.Text())
	}
	for b.Loop() {
		var all []Entry
		for _, text := range texts {
			e, err := Read(text)
			if err != nil {
				b.Fatal(err)
			}
			all = append(all, e)
		}
		NewBook(all...)
	}
}

func BenchmarkLog5000Chart(b *testing.B) {
	book := NewBook(many(5000)...)
	for b.Loop() {
		Trends(book.Of("Heron", "feed"))
	}
}

func BenchmarkLog5000Export(b *testing.B) {
	book := NewBook(many(5000)...)
	for b.Loop() {
		WriteFile(book.All())
	}
}

func BenchmarkLog5000Import(b *testing.B) {
	text := WriteFile(many(5000))
	for b.Loop() {
		NewBook(ReadFile(text).Entries...)
	}
}
