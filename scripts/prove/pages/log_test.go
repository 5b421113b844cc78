package pages

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"striderule/calc/logbook"
	"striderule/scripts/prove/browser"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// logKey begins the keys of the log in the storage of a site at Mount.
const logKey = "striderule:/tools/cal:log:"

// fillLog puts entries into the storage by script.
func fillLog(p *browser.Page, entries []logbook.Entry) {
	p.T().Helper()
	var b strings.Builder
	for _, e := range entries {
		b.WriteString("localStorage.setItem(" + strconv.Quote(logKey+e.ID) + "," + strconv.Quote(e.Text()) + ");")
	}
	browser.Eval[bool](p, "(() => {"+b.String()+" return true; })()")
}

// inStorage returns what the storage holds of the log.
func inStorage(p *browser.Page) map[string]string {
	p.T().Helper()
	return browser.Eval[map[string]string](p, `Object.fromEntries(Object.entries(localStorage).filter(([key]) => key.startsWith("`+logKey+`")))`)
}

// saveTexts catches what is saved as a file, in window.saved.
const saveTexts = `(() => {
	window.saved = [];
	const make = URL.createObjectURL.bind(URL);
	URL.createObjectURL = (blob) => { blob.text().then((text) => saved.push(text)); return make(blob); };
	HTMLAnchorElement.prototype.click = new Proxy(HTMLAnchorElement.prototype.click, {
		apply(of, link, rest) { if (!link.download) return Reflect.apply(of, link, rest); window.savedAs = link.download; },
	});
})()`

// choose gives a file to the log, as after its file dialog.
func choose(p *browser.Page, name, text string) {
	p.T().Helper()
	give(p, "#import", name, text)
	p.Wait(`document.getElementById("import-report")`)
	p.Settle()
}

// give has a button ask for a file, and gives it one.
func give(p *browser.Page, button, name, text string) {
	p.T().Helper()
	browser.Eval[bool](p, `(() => { HTMLInputElement.prototype.click = function () { if (this.type !== "file") HTMLElement.prototype.click.call(this); }; return true; })()`)
	press(p, button)
	p.Wait(`document.getElementById("chosen")`)
	browser.Eval[bool](p, `(() => {
		const field = document.getElementById("chosen"), list = new DataTransfer();
		list.items.add(new File([`+strconv.Quote(text)+`], `+strconv.Quote(name)+`));
		field.files = list.files;
		field.dispatchEvent(new Event("change"));
		return true;
	})()`)
	p.Settle()
}

// press clicks by script: what stays in view may lie over the place.
func press(p *browser.Page, selector string) {
	p.T().Helper()
	p.Wait("document.querySelector(" + strconv.Quote(selector) + ")")
	browser.Eval[bool](p, "(document.querySelector("+strconv.Quote(selector)+").click(), true)")
	p.Settle()
}

func listed(p *browser.Page) int {
	return browser.Eval[int](p, `document.querySelectorAll("#log-list > li").length`)
}

func has(p *browser.Page, selector string) bool {
	return browser.Eval[bool](p, "Boolean(document.querySelector("+strconv.Quote(selector)+"))")
}

func TestKeepOpenAndCompare(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/log/")
	assert.Equal(t, "Nothing saved yet.", p.Text("#log-empty"))
	p.Open("/measure/")
	assert.False(t, has(p, "#keep"), "there is nothing to keep")
	p.Open("/measure/#" + heron + "&tool=caliper-0.05")
	press(p, "#keep")
	assert.Equal(t, "keep-machine", browser.Eval[string](p, `document.activeElement.id`))
	press(p, "#keep-do")
	assert.Contains(t, p.Text("#keep-machine-problem"), "Machine: please enter a name")
	p.Fill("keep-machine", `<img src=x onerror="document.title='bad'"> & "Heron"`)
	p.Fill("keep-axis", "Extruder")
	p.Press(kb.Tab)
	p.Press("new extruder")
	browser.Eval[bool](p, `(() => { const f = document.getElementById("keep-date"); f.value = "2026-05-02T10:20"; f.dispatchEvent(new Event("input", {bubbles: true})); return true; })()`)
	p.Settle()
	p.Focus("keep-note", 0)
	p.Press(kb.Enter)
	p.Wait(`document.querySelector("#kept a")`)
	assert.Equal(t, "Saved. Open the log.", p.Text("#kept"))
	require.Len(t, inStorage(p), 1)
	for key, text := range inStorage(p) {
		e, err := logbook.Read(text)
		require.NoError(t, err)
		assert.Equal(t, logKey+e.ID, key)
		assert.Equal(t, "2026-05-02T10:20", e.Date)
		assert.Equal(t, "new extruder", e.Note)
		assert.Equal(t, []string{"feed", "steps", "change", ""}, []string{e.Axis, e.Output, e.Verdict, e.Label}, "keys, and no words")
	}
	// The same again adds nothing; another one has machine and axis ready.
	press(p, "#keep")
	assert.Equal(t, `<img src=x onerror="document.title='bad'"> & "Heron"`, p.Field("keep-machine"))
	assert.Equal(t, "Extruder", p.Field("keep-axis"))
	press(p, "#keep-cancel")
	assert.Equal(t, "keep", browser.Eval[string](p, `document.activeElement.id`))
	p.FillNth("rest", 0, "28.5")
	assert.Empty(t, p.Text("#kept"), "the entries are others now")
	press(p, "#keep")
	press(p, "#keep-do")
	press(p, "#kept a")
	p.Wait(`document.querySelectorAll("#log-list > li").length === 2`)
	assert.Contains(t, p.Text("#log-list"), `<img src=x onerror="document.title='bad'"> & "Heron" · Extruder`)
	assert.False(t, has(p, "#log-list img"))
	assert.Contains(t, p.Text("#log-list"), "564.3 ± 2.8")
	assert.Contains(t, p.Text("#log-list"), "Change it")

	for i := range 2 {
		press(p, "#log-list > li:nth-child("+strconv.Itoa(i+1)+") input")
	}
	press(p, "#compare")
	text := p.Text("#comparison")
	assert.Greater(t, browser.Eval[float64](p, `document.querySelector("#comparison table").getBoundingClientRect().width`), 280.0, "there is something to see")
	assert.Contains(t, text, "2026-05-02 10:20")
	assert.Contains(t, text, "Remaining (runs)28.7, 28.9, 28.628.5, 28.9, 28.6")
	assert.NotContains(t, text, "Commanded length")
	press(p, "#comparison-end")
	assert.False(t, has(p, "#comparison"))

	press(p, "#log-list > li:last-child a.log-open")
	p.Wait(`document.getElementById("check")`)
	assert.Contains(t, p.Text("#check"), "Same result")
	assert.Equal(t, "28.7", p.Field("rest"))
}

func TestLogOfTheExample(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/log/")
	press(p, "#example-show")
	assert.Contains(t, p.Text("#log-example"), "None of it is stored")
	assert.Empty(t, inStorage(p))
	assert.Equal(t, 7, listed(p))
	assert.Contains(t, p.Text("#log-trends"), "Rising by")
	assert.Equal(t, 7, browser.Eval[int](p, `document.querySelectorAll("#chart-trend-1 .mark").length`))
	assert.False(t, has(p, ".log-delete"))
	p.Choose("log-machine", "All machines")
	p.Choose("log-axis", "All axes")
	assert.Equal(t, 12, listed(p))
	assert.True(t, has(p, "#log-trend-hint"))
	p.Choose("log-machine", "Plover")
	assert.Equal(t, 5, listed(p))
	assert.Contains(t, p.Text("#log-trends"), "No clear trend")
	press(p, "#example-end")
	assert.Equal(t, "Nothing saved yet.", p.Text("#log-empty"))
}

// Before the program is there, nothing is said about what was saved.
func TestLogBeforeTheStart(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	release := holdProgram(t, s)
	p := s.NewPage(t)
	p.Load("/log/")
	p.Wait(`document.querySelector("main .ask")`)
	assert.Equal(t, "Your log appears here once the page has loaded.", p.Text("main .ask"))
	assert.Contains(t, p.Text("main"), "“Save to log” on a calculator's page saves the sheet here")
	release()
	p.WaitReady()
	assert.Equal(t, "Nothing saved yet.", p.Text("#log-empty"))
}

// entriesBefore are what older versions stored, with labels where there are keys now.
func entriesBefore(t *testing.T) []logbook.Entry {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "..", "calc", "logbook", "testdata", "before", "storage.txt"))
	require.NoError(t, err)
	var entries []logbook.Entry
	for _, line := range strings.Split(strings.TrimSpace(string(text)), "\n") {
		id, item, _ := strings.Cut(line, "\t")
		e, err := logbook.Read(item)
		require.NoError(t, err)
		require.Equal(t, id, e.ID)
		entries = append(entries, e)
	}
	return entries
}

// What older versions stored is shown in the words of this one, joins what is saved now,
// and stays as it is.
func TestLogWrittenBefore(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/log/")
	fillLog(p, entriesBefore(t))
	before := inStorage(p)
	p.Open("/measure/#" + heron)
	press(p, "#keep")
	assert.Equal(t, "Extruder", p.Field("keep-axis"))
	p.Fill("keep-machine", "Heron")
	browser.Eval[bool](p, `(() => { const f = document.getElementById("keep-date"); f.value = "2027-05-02T10:20"; f.dispatchEvent(new Event("input", {bubbles: true})); return true; })()`)
	p.Settle()
	press(p, "#keep-do")
	press(p, "#kept a")
	p.Wait(`document.getElementById("log-list")`)
	p.Choose("log-machine", "Heron")
	p.Choose("log-axis", "Extruder")
	assert.Equal(t, 35, listed(p), "34 old ones and a new one")
	list := p.Text("#log-list")
	for _, says := range []string{"Heron · Extruder", "Steps per mm, as measured", "Done: the change worked"} {
		assert.Contains(t, list, says)
	}
	for _, gone := range []string{"Heron · Feed", "New setting", "Not with this instrument"} {
		assert.NotContains(t, list, gone)
	}
	assert.Contains(t, p.Text("#log-trends"), "Steps per mm over time")
	press(p, ".log-delete") // the newest
	assert.Equal(t, before, inStorage(p))
}

func TestDeleteAndUndo(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/log/")
	fillLog(p, logbook.Example())
	browser.Eval[bool](p, `(localStorage.setItem("striderule:/other:log:x", "another site's"), localStorage.setItem("theirs", "1"), true)`)
	p.Reload()
	before := inStorage(p)
	assert.Equal(t, 12, listed(p))
	first := p.Text("#log-list > li")
	press(p, "#log-list > li .log-delete")
	assert.Equal(t, 11, listed(p))
	assert.Len(t, inStorage(p), 11)
	assert.Equal(t, "undo", browser.Eval[string](p, `document.activeElement.id`))
	p.Press(kb.Enter)
	assert.Equal(t, before, inStorage(p))
	assert.Equal(t, first, p.Text("#log-list > li"))
	p.Choose("log-machine", "Plover")
	press(p, "#delete-listed")
	assert.Len(t, inStorage(p), 7)
	assert.Equal(t, 7, listed(p), "no machine of that name is left to be listed")
	press(p, "#undo")
	assert.Equal(t, before, inStorage(p))
	p.Reload()
	press(p, "#delete-listed")
	assert.True(t, has(p, "#log-empty"))
	assert.Equal(t, "another site's", browser.Eval[string](p, `localStorage.getItem("striderule:/other:log:x")`))
	assert.Equal(t, "1", browser.Eval[string](p, `localStorage.getItem("theirs")`))
	press(p, "#undo")
	assert.Equal(t, before, inStorage(p))
}

func TestExportClearImport(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Before(saveTexts)
	p.Open("/log/")
	fillLog(p, logbook.Example())
	p.Reload()
	before := inStorage(p)
	press(p, "#export")
	p.Wait(`saved.length === 1`)
	assert.Regexp(t, `^striderule-log-20\d\d-\d\d-\d\d\.json$`, browser.Eval[string](p, `savedAs`))
	file := browser.Eval[string](p, `saved[0]`)
	press(p, "#export-csv")
	p.Wait(`saved.length === 2`)
	assert.Contains(t, browser.Eval[string](p, `saved[1]`), "Heron,Extruder,First test with the new extruder.")

	browser.Eval[bool](p, `(localStorage.clear(), true)`)
	p.Reload()
	assert.True(t, has(p, "#log-empty"))
	choose(p, "log.json", file)
	assert.Contains(t, p.Text("#import-report"), "12 entries were imported. 0 were already here.")
	assert.Equal(t, "import-report", browser.Eval[string](p, `document.activeElement.id`))
	assert.Equal(t, before, inStorage(p))
	assert.Equal(t, 12, listed(p))
	choose(p, "log.json", file)
	assert.Contains(t, p.Text("#import-report"), "0 entries were imported. 12 were already here.")
	assert.Equal(t, before, inStorage(p))
	choose(p, "log.json", strings.Replace(file, "look worn", "look fine", 1))
	assert.Contains(t, p.Text("#import-report"), "1 entry was imported. 11 were already here.")
	assert.Contains(t, p.Text("#import-report"), "1 entry shares its ID with a different entry here")
	assert.Len(t, inStorage(p), 13)

	damaged := strings.Replace(file[:strings.LastIndex(file, `"verdict"`)], `"machine":"Plover"`, `"machine":Plover`, 1)
	browser.Eval[bool](p, `(localStorage.clear(), true)`)
	p.Reload()
	choose(p, "<b>damaged</b>.json", damaged)
	text := p.Text("#import-report")
	assert.Contains(t, text, "Imported from <b>damaged</b>.json")
	assert.Contains(t, text, "10 entries were imported")
	assert.Contains(t, text, "Line 3: a value is missing")
	assert.Contains(t, text, "Line 13: the file ends here, in the middle of an entry; it was cut off")
	assert.Equal(t, 10, listed(p))
	choose(p, "holiday.json", `{"a":1}`)
	assert.Contains(t, p.Text("#import-report"), "This isn't a log file")
	press(p, "#import-end")
	assert.False(t, has(p, "#import-report"))
}

func TestStorageIsFull(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Before(saveTexts + `; Storage.prototype.setItem = new Proxy(Storage.prototype.setItem, { apply(of, store, rest) {
		if (store.length >= 3) throw new DOMException("no room", "QuotaExceededError");
		return Reflect.apply(of, store, rest);
	} })`)
	p.Open("/log/")
	fillLog(p, logbook.Example()[:2])
	p.Reload()
	choose(p, "log.json", logbook.WriteFile(logbook.Example()))
	assert.Contains(t, p.Text("#import-report"), "9 entries weren't saved. The browser's storage for this site is full. The file still has all of it.")
	assert.Contains(t, p.Text("#import-report"), "1 entry was imported. 2 were already here.")
	assert.Equal(t, 3, listed(p))
	assert.Len(t, inStorage(p), 3)

	p.Open("/measure/#" + heron)
	press(p, "#keep")
	p.Fill("keep-machine", "Heron")
	press(p, "#keep-do")
	assert.Contains(t, p.Text("#keep-refused"), "Not saved. The browser's storage for this site is full.")
	assert.Equal(t, "Heron", p.Field("keep-machine"), "nothing that was typed is lost")
	press(p, "#keep-file")
	p.Wait(`saved.length === 1`)
	f := logbook.ReadFile(browser.Eval[string](p, `saved[0]`))
	require.Len(t, f.Entries, 1)
	assert.Equal(t, "Heron", f.Entries[0].Machine)
}

func TestStorageIsBlocked(t *testing.T) {
	browser.Alongside(t)
	for name, script := range map[string]string{
		"asking throws": `Object.defineProperty(window, "localStorage", { get() { throw new DOMException("denied", "SecurityError"); } });`,
		"there is none": `Object.defineProperty(window, "localStorage", { get() { return null; } });`,
	} {
		t.Run(name, func(t *testing.T) {
			s := browser.NewSite(t)
			s.Trimmed(t, "asks for the storage itself, and ends without")
			p := s.NewPage(t)
			p.Before(script + saveTexts)
			p.Open("/log/")
			assert.Contains(t, p.Text("#log-refused"), "This browser doesn't let the site store anything")
			press(p, "#example-show")
			assert.Equal(t, 7, listed(p))
			press(p, "#example-end")
			p.Open("/measure/#" + heron)
			assert.InDelta(t, 564.3357, p.Value("out-steps"), 1e-3)
			press(p, "#keep")
			p.Fill("keep-machine", "Heron")
			press(p, "#keep-do")
			assert.Contains(t, p.Text("#keep-refused"), "Not saved. This browser doesn't let the site store anything")
			press(p, "#keep-file")
			p.Wait(`saved.length === 1`)
		})
	}
}

func TestBrokenAndNewerItems(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Before(saveTexts)
	p.Open("/log/")
	fillLog(p, logbook.Example()[:2])
	browser.Eval[bool](p, `(localStorage.setItem("`+logKey+`bad", "log=1&id=bad&date=yesterday <b>"), localStorage.setItem("`+logKey+`lines", "two\nlines"), localStorage.setItem("`+logKey+`new", "log=2&id=new&what=ever"), true)`)
	before := inStorage(p)
	p.Reload()
	assert.Equal(t, 2, listed(p), "the rest is there")
	text := p.Text("#log-troubles")
	assert.Contains(t, text, "3 entries can't be read")
	assert.Contains(t, text, "bad: its date is “yesterday <b>”")
	assert.Contains(t, text, "new: saved by a newer version of this site")
	press(p, "#save-unread")
	p.Wait(`saved.length === 1`)
	assert.Contains(t, browser.Eval[string](p, `saved[0]`), "lines\ttwo\nlines\n")
	assert.Contains(t, browser.Eval[string](p, `saved[0]`), "new\tlog=2&id=new&what=ever\n")
	press(p, "#delete-unread")
	assert.NotContains(t, inStorage(p), logKey+"bad")
	assert.Contains(t, inStorage(p), logKey+"new", "what is newer stays")
	assert.Contains(t, p.Text("#log-troubles"), "1 entry can't be read")
	press(p, "#undo")
	assert.Equal(t, before, inStorage(p))
}

func TestLogFollowsOtherTabs(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/log/")
	fillLog(p, logbook.Example()[:3])
	browser.Eval[bool](p, `(dispatchEvent(new StorageEvent("storage", { key: "`+logKey+`x" })), true)`)
	p.Wait(`document.querySelectorAll("#log-list > li").length === 3`)
	browser.Eval[bool](p, `(localStorage.clear(), dispatchEvent(new StorageEvent("storage", { key: null })), true)`)
	p.Wait(`document.getElementById("log-empty")`)
}

func TestLogOffline(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#" + heron)
	p.WaitOffline()
	s.Stop()
	press(p, "#keep")
	p.Fill("keep-machine", "Heron")
	press(p, "#keep-do")
	press(p, "#kept a")
	p.Wait(`document.querySelectorAll("#log-list > li").length === 1`)
	p.Reload()
	assert.Equal(t, 1, listed(p))
}

func TestLogByKeyboard(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/log/")
	fillLog(p, logbook.Example()[:2])
	p.Reload()
	first := logbook.Example()[0].ID
	// Before the way through the page, which goes on in some browsers' own bars.
	p.Focus("tick-"+first, 0)
	p.Press(" ")
	assert.True(t, has(p, "#untick"))
	p.Press(" ")
	assert.False(t, has(p, "#untick"))
	reached := map[string]bool{}
	browser.Eval[bool](p, `(document.getElementById("title").focus(), true)`)
	for range 30 {
		p.Press(kb.Tab)
		id := browser.Eval[string](p, `document.activeElement.id || document.activeElement.className`)
		reached[id] = true
		small := browser.Eval[bool](p, `(() => { const e = document.activeElement, b = (e.closest("label") || e).getBoundingClientRect(); return e !== document.body && e.closest("main") && (b.height < 43.5 || b.width < 43.5); })() || false`)
		assert.False(t, small, "%s is less than 44 px", id)
	}
	for _, id := range []string{"export", "export-csv", "import", "example-show", "log-machine", "log-axis", "delete-listed", "tick-" + first, "open-" + first, "delete-" + first} {
		assert.True(t, reached[id], "%s is not reached: %v", id, reached)
	}
}

func TestLogOnANarrowScreen(t *testing.T) {
	browser.Alongside(t)
	long := logbook.Example()
	for i := range long {
		long[i].Machine = strings.Repeat("Heronplover", 5)
		long[i].Note = strings.Repeat("w", 200)
	}
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/log/")
	fillLog(p, long)
	for _, width := range []int64{320, 360} {
		p.Viewport(width, browser.Height)
		p.Open("/log/")
		p.Choose("log-axis", "Extruder")
		for i := range 2 {
			press(p, "#log-list > li:nth-child("+strconv.Itoa(i+1)+") input")
		}
		press(p, "#compare")
		assert.True(t, has(p, "#chart-trend-1"))
		assert.LessOrEqual(t, browser.Eval[int64](p, `document.documentElement.scrollWidth`), width)
		p.Open("/measure/#" + heron)
		press(p, "#keep")
		assert.LessOrEqual(t, browser.Eval[int64](p, `Math.ceil(document.getElementById("keep-date").getBoundingClientRect().right)`), width-16)
		assert.LessOrEqual(t, browser.Eval[int64](p, `document.documentElement.scrollWidth`), width)
	}
}

// manyEntries stores n entries by script, quicker than one by one.
func manyEntries(p *browser.Page, n int) {
	p.T().Helper()
	fillLog(p, logbook.Example())
	browser.Eval[bool](p, `(() => {
		const texts = Object.entries(localStorage).filter(([key]) => key.startsWith("`+logKey+`")).map(([, text]) => text);
		localStorage.clear();
		for (let i = 0; i < `+strconv.Itoa(n)+`; i++) {
			const text = texts[i % texts.length].replace(/id=[^&]*/, "id=e" + i).replace(/date=\d{4}/, "date=" + (2001 + i % 25));
			localStorage.setItem("`+logKey+`e" + i, text);
		}
		return true;
	})()`)
}

// longTasks notes how long the page did not answer, in window.longest (ms).
const longTasks = `window.longest = 0; new PerformanceObserver((list) => { for (const e of list.getEntries()) window.longest = Math.max(window.longest, e.duration); }).observe({ type: "longtask", buffered: true });`

func TestLogOf5000(t *testing.T) {
	browser.Alongside(t)
	const n = 5000
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Before(saveTexts + ";" + longTasks)
	p.Open("/log/")
	manyEntries(p, n)
	p.Reload()
	assert.Equal(t, 50, listed(p), "not all at once")
	timed := func(name, act string) {
		took := browser.Eval[float64](p, `(async () => {
			await new Promise((r) => setTimeout(r, 100));
			window.longest = 0;
			const began = performance.now();
			`+act+`
			await new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r)));
			return performance.now() - began;
		})()`)
		p.Settle()
		t.Logf("%s of %d entries: %.0f ms, longest task %.0f ms", name, n, took, browser.Eval[float64](p, `window.longest`))
	}
	t.Logf("list of %d entries: longest task of the start %.0f ms, of that the browser's own reading %.0f ms", n,
		browser.Eval[float64](p, `window.longest`), browser.Eval[float64](p, `(() => { const began = performance.now(); striderule.keptTexts("`+logKey+`"); return performance.now() - began; })()`))
	timed("show more", `document.getElementById("more").click();`)
	assert.Equal(t, 100, listed(p))
	choosing := func(id, value string) string {
		return `(() => { const f = document.getElementById("` + id + `"); f.value = "` + value + `"; f.dispatchEvent(new Event("change", { bubbles: true })); })();`
	}
	timed("choose a machine", choosing("log-machine", "Heron"))
	timed("chart", choosing("log-axis", "Extruder"))
	assert.True(t, has(p, "#chart-trend-1"))
	timed("export", `document.getElementById("export").click();`)
	p.Wait(`saved.length === 1`)
	f := logbook.ReadFile(browser.Eval[string](p, `saved[0]`))
	assert.Len(t, f.Entries, n)
	assert.Empty(t, f.Damages)
	browser.Eval[bool](p, `(localStorage.clear(), true)`)
	p.Reload()
	browser.Eval[bool](p, `(window.longest = 0, true)`)
	choose(p, "log.json", logbook.WriteFile(f.Entries))
	assert.Contains(t, p.Text("#import-report"), "5000 entries were imported")
	t.Logf("import of %d entries: longest task %.0f ms", n, browser.Eval[float64](p, `window.longest`))
	assert.Len(t, inStorage(p), n)
}

// TestPicturesOfTheLog is part of TestPictures for a page with entries of its own.
func TestPicturesOfTheLog(t *testing.T) {
	browser.Alongside(t)
	dir := os.Getenv("PICTURES")
	if dir == "" {
		t.Skip("PICTURES names no folder for them")
	}
	s := browser.NewSite(t)
	for _, screen := range []struct {
		name          string
		width, height int64
		dark          bool
	}{{"phone", browser.Width, browser.Height, false}, {"phone-dark", browser.Width, browser.Height, true}, {"desk", 1280, 900, false}} {
		p := s.NewPage(t)
		p.Viewport(screen.width, screen.height)
		p.Open("/log/")
		p.Screenshot(filepath.Join(dir, "log-empty-"+screen.name+".png"), screen.dark, true)
		fillLog(p, logbook.Example())
		p.Reload()
		p.Choose("log-axis", "Extruder")
		press(p, "#log-list > li:nth-child(1) input")
		press(p, "#log-list > li:nth-child(6) input")
		press(p, "#compare")
		p.Screenshot(filepath.Join(dir, "log-"+screen.name+".png"), screen.dark, true)
		p.Open("/measure/#" + heron)
		press(p, "#keep")
		p.Screenshot(filepath.Join(dir, "log-keep-"+screen.name+".png"), screen.dark, false)
	}
}
