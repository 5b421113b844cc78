package pages

import (
	"encoding/csv"
	"encoding/json"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/logbook"
	"striderule/scripts/prove/browser"
)

// dropFile drops a file on the page, as from a file manager.
func dropFile(p *browser.Page, name, text string) {
	p.T().Helper()
	browser.Eval[bool](p, `(() => {
		const list = new DataTransfer();
		list.items.add(new File([`+strconv.Quote(text)+`], `+strconv.Quote(name)+`));
		for (const type of ["dragover", "drop"]) {
			const e = new DragEvent(type, {bubbles: true, cancelable: true, dataTransfer: list});
			if (document.getElementById("main").dispatchEvent(e)) throw new Error("the browser would open it in the page's place");
		}
		return true;
	})()`)
	p.Settle()
}

func sheetFile(t *testing.T, slug, fragment string) string {
	t.Helper()
	page, ok := calc.PageOf(slug)
	require.True(t, ok)
	return logbook.WriteSheet(calc.Load(page, fragment))
}

// A sheet goes out as a file, and opens again wherever it is dropped or chosen,
// with what its sender saw.
func TestSheetFile(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	dir := p.SaveTo()
	p.Open("/measure/#" + heron)
	browser.Eval[bool](p, `(document.getElementById("across").open = true)`)
	press(p, "#save-sheet")
	text := p.Saved(dir, "striderule-measure.json")
	assert.True(t, json.Valid([]byte(text)))
	assert.Equal(t, sheetFile(t, "measure", heron), text, "as it is documented")

	opened := func(where string) {
		t.Helper()
		p.Wait(`location.pathname.endsWith("/measure/") && document.getElementById("out-steps")`)
		p.Settle()
		assert.Equal(t, "28.7", p.Field("rest"), where)
		assert.InDelta(t, 564.33566, p.Value("out-steps"), 1e-4, where)
		assert.Contains(t, p.Text("#check"), "Same result", where)
	}
	p.Open("/")
	give(p, "#open-file", "sheet.json", text)
	opened("chosen on the start page")
	p.Open("/")
	dropFile(p, "sheet.json", text)
	opened("dropped on the start page")
	p.Open("/plan/")
	dropFile(p, "sheet.json", text)
	opened("dropped on another page")
	p.Open("/measure/#v=1&steps=415&asked=100")
	give(p, "#open-file", "sheet.json", text)
	opened("chosen on its own page")
	p.Wait(`document.getElementById("said").textContent`)
	assert.Equal(t, "Opened sheet.json. To get your entries back, press Back in the browser.", p.Text("#said"))
	p.Back()
	assert.Equal(t, "415", p.Field("steps"), "the entries as they were")
}

func TestFilesThatAreNoSheet(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	log := logbook.WriteFile(logbook.Example())
	for _, path := range []string{"/", "/measure/#" + heron} {
		p.Open(path)
		before := p.Address()
		for _, c := range []struct{ name, text, says string }{
			{"photo.jpg", "\xff\xd8\xff", "photo.jpg wasn't opened. It isn't a sheet of this site"},
			{"<b>.json", "{}", `<b>.json wasn't opened. It isn't a sheet of this site`},
			{"half.json", sheetFile(t, "measure", heron)[:150], "half.json wasn't opened. It's damaged in line"},
			{"log.json", log, "log.json wasn't opened. It's a log: import it on the Log page. Open the log"},
		} {
			dropFile(p, c.name, c.text)
			p.Wait(`document.getElementById("file-problem")?.textContent.includes(` + strconv.Quote(c.says) + `)`)
			assert.Equal(t, before, p.Address())
		}
		assert.True(t, has(p, "#file-problem a[href$='/log/']"), "a way to the log")
	}
	p.Open("/log/")
	dropFile(p, "sheet.json", sheetFile(t, "measure", heron))
	assert.Contains(t, p.Text("#import-report"), "This is a single sheet")
	dropFile(p, "log.json", log)
	assert.Contains(t, p.Text("#import-report"), "12 entries were imported")
	p.Open("/method/")
	dropFile(p, "sheet.json", sheetFile(t, "measure", heron))
	p.Wait(`document.getElementById("said").textContent.startsWith("Open files on a calculator page")`)
}

// A file cannot bring in anything but entries.
func TestHostileSheetFile(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/")
	dropFile(p, "x.json", `{"sheet":"striderule","page":"measure","entries":{"v":"1","steps":"<img src=x onerror=alert(1)>","javascript:alert(1)":"x&steps=999#","saw":"steps:564.3"}}`)
	p.Wait(`location.hash.includes("steps")`)
	p.Settle()
	assert.Equal(t, "<img src=x onerror=alert(1)>", p.Field("steps"))
	p.Unfold()
	assert.False(t, has(p, "main img[src='x']"))
	assert.False(t, has(p, "#out-steps"), "no figure from what is no number")
}

func TestRowsForASpreadsheet(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	dir := p.SaveTo()
	p.Open("/measure/#v=1&steps=538.0&asked=80&mark=105")
	p.Unfold()
	assert.True(t, has(p, "#save-sheet"))
	assert.False(t, has(p, "#save-run"), "there is nothing in the rows")
	p.FillNth("rest", 0, "28,7")
	p.FillNth("rest", 1, "28.9 mm")
	browser.Eval[bool](p, `(document.getElementById("across").open = true)`)
	press(p, "#save-run")
	text := p.Saved(dir, "striderule-measure-run.csv")
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(text, "\ufeff"))).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, [][]string{{"Remaining (mm)", "Leave out"}, {"28.7", ""}, {"28.9 mm", ""}}, rows)
}

// Preview pictures are for readers of links: no page fetches them, nor does what
// keeps the site for offline use.
func TestPreviewsAreNotFetched(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/")
	p.WaitOffline()
	assert.NotEmpty(t, s.Asked())
	for _, path := range s.Asked() {
		assert.False(t, strings.HasPrefix(path, "preview/"), path)
	}
}
