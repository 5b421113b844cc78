package browser

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"striderule/calc/logbook"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// logKey begins the keys of the log in the storage of a site at Mount.
const logKey = "striderule:/tools/cal:log:"

// fillLog puts entries into the storage by script.
func fillLog(p *Page, entries []logbook.Entry) {
	p.t.Helper()
	var b strings.Builder
	for _, e := range entries {
		b.WriteString("localStorage.setItem(" + strconv.Quote(logKey+e.ID) + "," + strconv.Quote(e.Text()) + ");")
	}
	Eval[bool](p, "(() => {"+b.String()+" return true; })()")
}

// inStorage returns what the storage holds of the log.
func inStorage(p *Page) map[string]string {
	p.t.Helper()
	return Eval[map[string]string](p, `Object.fromEntries(Object.entries(localStorage).filter(([key]) => key.startsWith("`+logKey+`")))`)
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
func choose(p *Page, name, text string) {
	p.t.Helper()
	give(p, "#import", name, text)
	p.Wait(`document.getElementById("import-report")`)
	p.Settle()
}

// give has a button ask for a file, and gives it one.
func give(p *Page, button, name, text string) {
	p.t.Helper()
	Eval[bool](p, `(() => { HTMLInputElement.prototype.click = function () { if (this.type !== "file") HTMLElement.prototype.click.call(this); }; return true; })()`)
	press(p, button)
	p.Wait(`document.getElementById("chosen")`)
	Eval[bool](p, `(() => {
		const field = document.getElementById("chosen"), list = new DataTransfer();
		list.items.add(new File([`+strconv.Quote(text)+`], `+strconv.Quote(name)+`));
		field.files = list.files;
		field.dispatchEvent(new Event("change"));
		return true;
	})()`)
	p.Settle()
}

// press clicks by script: what stays in view may lie over the place.
func press(p *Page, selector string) {
	p.t.Helper()
	p.Wait("document.querySelector(" + strconv.Quote(selector) + ")")
	Eval[bool](p, "(document.querySelector("+strconv.Quote(selector)+").click(), true)")
	p.Settle()
}

func listed(p *Page) int { return Eval[int](p, `document.querySelectorAll("#log-list > li").length`) }

func has(p *Page, selector string) bool {
	return Eval[bool](p, "Boolean(document.querySelector("+strconv.Quote(selector)+"))")
}

func TestKeepOpenAndCompare(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	p := s.NewPage(t)
	p.Open("/log/")
	assert.Equal(t, "Nothing is kept yet.", p.Text("#log-empty"))
	p.Open("/measure/")
	assert.False(t, has(p, "#keep"), "there is nothing to keep")
	p.Open("/measure/#" + heron + "&tool=caliper-0.05")
	press(p, "#keep")
	assert.Equal(t, "keep-machine", Eval[string](p, `document.activeElement.id`))
	press(p, "#keep-do")
	assert.Contains(t, p.Text("#keep-machine-problem"), "Machine: no name is given")
	p.Fill("keep-machine", `<img src=x onerror="document.title='bad'"> & "Heron"`)
	p.Fill("keep-axis", "Feed")
	p.Press(kb.Tab)
	p.Press("new feeder")
	Eval[bool](p, `(() => { const f = document.getElementById("keep-date"); f.value = "2026-05-02T10:20"; f.dispatchEvent(new Event("input", {bubbles: true})); return true; })()`)
	p.Settle()
	p.Focus("keep-note", 0)
	p.Press(kb.Enter)
	p.Wait(`document.querySelector("#kept a")`)
	assert.Equal(t, "Kept. Open the log.", p.Text("#kept"))
	require.Len(t, inStorage(p), 1)
	for key, text := range inStorage(p) {
		e, err := logbook.Read(text)
		require.NoError(t, err)
		assert.Equal(t, logKey+e.ID, key)
		assert.Equal(t, "2026-05-02T10:20", e.Date)
		assert.Equal(t, "new feeder", e.Note)
	}
	// The same again adds nothing; another one has machine and axis ready.
	press(p, "#keep")
	assert.Equal(t, `<img src=x onerror="document.title='bad'"> & "Heron"`, p.Field("keep-machine"))
	assert.Equal(t, "Feed", p.Field("keep-axis"))
	press(p, "#keep-cancel")
	assert.Equal(t, "keep", Eval[string](p, `document.activeElement.id`))
	p.FillNth("rest", 0, "28.5")
	assert.Empty(t, p.Text("#kept"), "the entries are others now")
	press(p, "#keep")
	press(p, "#keep-do")
	press(p, "#kept a")
	p.Wait(`document.querySelectorAll("#log-list > li").length === 2`)
	assert.Contains(t, p.Text("#log-list"), `<img src=x onerror="document.title='bad'"> & "Heron" · Feed`)
	assert.False(t, has(p, "#log-list img"))
	assert.Contains(t, p.Text("#log-list"), "564.3 ± 2.6")
	assert.Contains(t, p.Text("#log-list"), "Change it")

	for i := range 2 {
		press(p, "#log-list > li:nth-child("+strconv.Itoa(i+1)+") input")
	}
	press(p, "#compare")
	text := p.Text("#comparison")
	assert.Greater(t, Eval[float64](p, `document.querySelector("#comparison table").getBoundingClientRect().width`), 280.0, "there is something to see")
	assert.Contains(t, text, "2026-05-02 10:20")
	assert.Contains(t, text, "Remaining, run28.7, 28.9, 28.628.5, 28.9, 28.6")
	assert.NotContains(t, text, "Commanded length")
	press(p, "#comparison-end")
	assert.False(t, has(p, "#comparison"))

	press(p, "#log-list > li:last-child a.log-open")
	p.Wait(`document.getElementById("check")`)
	assert.Contains(t, p.Text("#check"), "Same result")
	assert.Equal(t, "28.7", p.Field("rest"))
}

func TestLogOfTheExample(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	p := s.NewPage(t)
	p.Open("/log/")
	press(p, "#example-show")
	assert.Contains(t, p.Text("#log-example"), "Nothing of it is stored")
	assert.Empty(t, inStorage(p))
	assert.Equal(t, 7, listed(p))
	assert.Contains(t, p.Text("#log-trends"), "It rises by")
	assert.Equal(t, 7, Eval[int](p, `document.querySelectorAll("#chart-trend-1 .mark").length`))
	assert.False(t, has(p, ".log-delete"))
	p.Choose("log-machine", "All machines")
	p.Choose("log-axis", "All axes")
	assert.Equal(t, 12, listed(p))
	assert.True(t, has(p, "#log-trend-hint"))
	p.Choose("log-machine", "Plover")
	assert.Equal(t, 5, listed(p))
	assert.Contains(t, p.Text("#log-trends"), "No trend that shows")
	press(p, "#example-end")
	assert.Equal(t, "Nothing is kept yet.", p.Text("#log-empty"))
}

// Before the program is there, nothing is said about what was kept.
func TestLogBeforeTheStart(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	release := holdProgram(t, s)
	p := s.NewPage(t)
	p.Load("/log/")
	p.Wait(`document.querySelector("main .ask")`)
	assert.Equal(t, "What you kept shows here as soon as the page has started.", p.Text("main .ask"))
	assert.Contains(t, p.Text("main"), "Each calculator has a button “Keep in the log”")
	release()
	p.WaitReady()
	assert.Equal(t, "Nothing is kept yet.", p.Text("#log-empty"))
}

func TestDeleteAndUndo(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	p := s.NewPage(t)
	p.Open("/log/")
	fillLog(p, logbook.Example())
	Eval[bool](p, `(localStorage.setItem("striderule:/other:log:x", "another site's"), localStorage.setItem("theirs", "1"), true)`)
	p.Reload()
	before := inStorage(p)
	assert.Equal(t, 12, listed(p))
	first := p.Text("#log-list > li")
	press(p, "#log-list > li .log-delete")
	assert.Equal(t, 11, listed(p))
	assert.Len(t, inStorage(p), 11)
	assert.Equal(t, "undo", Eval[string](p, `document.activeElement.id`))
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
	assert.Equal(t, "another site's", Eval[string](p, `localStorage.getItem("striderule:/other:log:x")`))
	assert.Equal(t, "1", Eval[string](p, `localStorage.getItem("theirs")`))
	press(p, "#undo")
	assert.Equal(t, before, inStorage(p))
}

func TestExportClearImport(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	p := s.NewPage(t)
	p.Before(saveTexts)
	p.Open("/log/")
	fillLog(p, logbook.Example())
	p.Reload()
	before := inStorage(p)
	press(p, "#export")
	p.Wait(`saved.length === 1`)
	assert.Regexp(t, `^striderule-log-20\d\d-\d\d-\d\d\.json$`, Eval[string](p, `savedAs`))
	file := Eval[string](p, `saved[0]`)
	press(p, "#export-csv")
	p.Wait(`saved.length === 2`)
	assert.Contains(t, Eval[string](p, `saved[1]`), "Heron,Feed,First test with the new feeder.")

	Eval[bool](p, `(localStorage.clear(), true)`)
	p.Reload()
	assert.True(t, has(p, "#log-empty"))
	choose(p, "log.json", file)
	assert.Contains(t, p.Text("#import-report"), "12 entries were taken in, 0 were there already.")
	assert.Equal(t, "import-report", Eval[string](p, `document.activeElement.id`))
	assert.Equal(t, before, inStorage(p))
	assert.Equal(t, 12, listed(p))
	choose(p, "log.json", file)
	assert.Contains(t, p.Text("#import-report"), "0 entries were taken in, 12 were there already.")
	assert.Equal(t, before, inStorage(p))
	choose(p, "log.json", strings.Replace(file, "look worn", "look fine", 1))
	assert.Contains(t, p.Text("#import-report"), "1 entry was taken in, 11 were there already.")
	assert.Contains(t, p.Text("#import-report"), "1 entry had the id of another one here")
	assert.Len(t, inStorage(p), 13)

	damaged := strings.Replace(file[:strings.LastIndex(file, `"verdict"`)], `"machine":"Plover"`, `"machine":Plover`, 1)
	Eval[bool](p, `(localStorage.clear(), true)`)
	p.Reload()
	choose(p, "<b>damaged</b>.json", damaged)
	text := p.Text("#import-report")
	assert.Contains(t, text, "Taken in from <b>damaged</b>.json")
	assert.Contains(t, text, "10 entries were taken in")
	assert.Contains(t, text, "Line 3: a value is missing")
	assert.Contains(t, text, "Line 13: the file ends here, within an entry: it was cut off")
	assert.Equal(t, 10, listed(p))
	choose(p, "holiday.json", `{"a":1}`)
	assert.Contains(t, p.Text("#import-report"), "It is no file of this log")
	press(p, "#import-end")
	assert.False(t, has(p, "#import-report"))
}

func TestStorageIsFull(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	p := s.NewPage(t)
	p.Before(saveTexts + `; Storage.prototype.setItem = new Proxy(Storage.prototype.setItem, { apply(of, store, rest) {
		if (store.length >= 3) throw new DOMException("no room", "QuotaExceededError");
		return Reflect.apply(of, store, rest);
	} })`)
	p.Open("/log/")
	fillLog(p, logbook.Example()[:2])
	p.Reload()
	choose(p, "log.json", logbook.WriteFile(logbook.Example()))
	assert.Contains(t, p.Text("#import-report"), "9 entries were not kept. The storage that the browser gives this site is full. The file still has all of it.")
	assert.Contains(t, p.Text("#import-report"), "1 entry was taken in, 2 were there already.")
	assert.Equal(t, 3, listed(p))
	assert.Len(t, inStorage(p), 3)

	p.Open("/measure/#" + heron)
	press(p, "#keep")
	p.Fill("keep-machine", "Heron")
	press(p, "#keep-do")
	assert.Contains(t, p.Text("#keep-refused"), "Not kept. The storage that the browser gives this site is full.")
	assert.Equal(t, "Heron", p.Field("keep-machine"), "nothing that was typed is lost")
	press(p, "#keep-file")
	p.Wait(`saved.length === 1`)
	f := logbook.ReadFile(Eval[string](p, `saved[0]`))
	require.Len(t, f.Entries, 1)
	assert.Equal(t, "Heron", f.Entries[0].Machine)
}

func TestStorageIsBlocked(t *testing.T) {
	alongside(t)
	for name, script := range map[string]string{
		"asking throws": `Object.defineProperty(window, "localStorage", { get() { throw new DOMException("denied", "SecurityError"); } });`,
		"there is none": `Object.defineProperty(window, "localStorage", { get() { return null; } });`,
	} {
		t.Run(name, func(t *testing.T) {
			s := NewSite(t)
			s.Trimmed(t, "asks for the storage itself, and ends without")
			p := s.NewPage(t)
			p.Before(script + saveTexts)
			p.Open("/log/")
			assert.Contains(t, p.Text("#log-refused"), "This browser does not let the site keep anything")
			press(p, "#example-show")
			assert.Equal(t, 7, listed(p))
			press(p, "#example-end")
			p.Open("/measure/#" + heron)
			assert.InDelta(t, 564.3357, p.Value("out-steps"), 1e-3)
			press(p, "#keep")
			p.Fill("keep-machine", "Heron")
			press(p, "#keep-do")
			assert.Contains(t, p.Text("#keep-refused"), "Not kept. This browser does not let the site keep anything")
			press(p, "#keep-file")
			p.Wait(`saved.length === 1`)
		})
	}
}

func TestBrokenAndNewerItems(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	p := s.NewPage(t)
	p.Before(saveTexts)
	p.Open("/log/")
	fillLog(p, logbook.Example()[:2])
	Eval[bool](p, `(localStorage.setItem("`+logKey+`bad", "log=1&id=bad&date=yesterday <b>"), localStorage.setItem("`+logKey+`lines", "two\nlines"), localStorage.setItem("`+logKey+`new", "log=2&id=new&what=ever"), true)`)
	before := inStorage(p)
	p.Reload()
	assert.Equal(t, 2, listed(p), "the rest is there")
	text := p.Text("#log-troubles")
	assert.Contains(t, text, "3 items can't be read")
	assert.Contains(t, text, "bad: its date is “yesterday <b>”")
	assert.Contains(t, text, "new: kept by a newer version of this site")
	press(p, "#save-unread")
	p.Wait(`saved.length === 1`)
	assert.Contains(t, Eval[string](p, `saved[0]`), "lines\ttwo\nlines\n")
	assert.Contains(t, Eval[string](p, `saved[0]`), "new\tlog=2&id=new&what=ever\n")
	press(p, "#delete-unread")
	assert.NotContains(t, inStorage(p), logKey+"bad")
	assert.Contains(t, inStorage(p), logKey+"new", "what is newer stays")
	assert.Contains(t, p.Text("#log-troubles"), "1 item can't be read")
	press(p, "#undo")
	assert.Equal(t, before, inStorage(p))
}

func TestLogFollowsOtherTabs(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	p := s.NewPage(t)
	p.Open("/log/")
	fillLog(p, logbook.Example()[:3])
	Eval[bool](p, `(dispatchEvent(new StorageEvent("storage", { key: "`+logKey+`x" })), true)`)
	p.Wait(`document.querySelectorAll("#log-list > li").length === 3`)
	Eval[bool](p, `(localStorage.clear(), dispatchEvent(new StorageEvent("storage", { key: null })), true)`)
	p.Wait(`document.getElementById("log-empty")`)
}

func TestLogOffline(t *testing.T) {
	alongside(t)
	s := NewSite(t)
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
	alongside(t)
	s := NewSite(t)
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
	Eval[bool](p, `(document.getElementById("title").focus(), true)`)
	for range 30 {
		p.Press(kb.Tab)
		id := Eval[string](p, `document.activeElement.id || document.activeElement.className`)
		reached[id] = true
		small := Eval[bool](p, `(() => { const e = document.activeElement, b = (e.closest("label") || e).getBoundingClientRect(); return e !== document.body && e.closest("main") && (b.height < 43.5 || b.width < 43.5); })() || false`)
		assert.False(t, small, "%s is less than 44 px", id)
	}
	for _, id := range []string{"export", "export-csv", "import", "example-show", "log-machine", "log-axis", "delete-listed", "tick-" + first, "open-" + first, "delete-" + first} {
		assert.True(t, reached[id], "%s is not reached: %v", id, reached)
	}
}

func TestLogOnANarrowScreen(t *testing.T) {
	alongside(t)
	long := logbook.Example()
	for i := range long {
		long[i].Machine = strings.Repeat("Heronplover", 5)
		long[i].Note = strings.Repeat("w", 200)
	}
	s := NewSite(t)
	p := s.NewPage(t)
	p.Open("/log/")
	fillLog(p, long)
	for _, width := range []int64{320, 360} {
		p.Viewport(width, Height)
		p.Open("/log/")
		p.Choose("log-axis", "Feed")
		for i := range 2 {
			press(p, "#log-list > li:nth-child("+strconv.Itoa(i+1)+") input")
		}
		press(p, "#compare")
		assert.True(t, has(p, "#chart-trend-1"))
		assert.LessOrEqual(t, Eval[int64](p, `document.documentElement.scrollWidth`), width)
		p.Open("/measure/#" + heron)
		press(p, "#keep")
		assert.LessOrEqual(t, Eval[int64](p, `Math.ceil(document.getElementById("keep-date").getBoundingClientRect().right)`), width-16)
		assert.LessOrEqual(t, Eval[int64](p, `document.documentElement.scrollWidth`), width)
	}
}

// manyEntries stores n entries by script, quicker than one by one.
func manyEntries(p *Page, n int) {
	p.t.Helper()
	fillLog(p, logbook.Example())
	Eval[bool](p, `(() => {
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
	alongside(t)
	const n = 5000
	s := NewSite(t)
	p := s.NewPage(t)
	p.Before(saveTexts + ";" + longTasks)
	p.Open("/log/")
	manyEntries(p, n)
	p.Reload()
	assert.Equal(t, 50, listed(p), "not all at once")
	timed := func(name, act string) {
		took := Eval[float64](p, `(async () => {
			await new Promise((r) => setTimeout(r, 100));
			window.longest = 0;
			const began = performance.now();
			`+act+`
			await new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r)));
			return performance.now() - began;
		})()`)
		p.Settle()
		t.Logf("%s of %d entries: %.0f ms, longest task %.0f ms", name, n, took, Eval[float64](p, `window.longest`))
	}
	t.Logf("list of %d entries: longest task of the start %.0f ms, of that the browser's own reading %.0f ms", n,
		Eval[float64](p, `window.longest`), Eval[float64](p, `(() => { const began = performance.now(); striderule.keptTexts("`+logKey+`"); return performance.now() - began; })()`))
	timed("show more", `document.getElementById("more").click();`)
	assert.Equal(t, 100, listed(p))
	choosing := func(id, value string) string {
		return `(() => { const f = document.getElementById("` + id + `"); f.value = "` + value + `"; f.dispatchEvent(new Event("change", { bubbles: true })); })();`
	}
	timed("choose a machine", choosing("log-machine", "Heron"))
	timed("chart", choosing("log-axis", "Feed"))
	assert.True(t, has(p, "#chart-trend-1"))
	timed("export", `document.getElementById("export").click();`)
	p.Wait(`saved.length === 1`)
	f := logbook.ReadFile(Eval[string](p, `saved[0]`))
	assert.Len(t, f.Entries, n)
	assert.Empty(t, f.Damages)
	Eval[bool](p, `(localStorage.clear(), true)`)
	p.Reload()
	Eval[bool](p, `(window.longest = 0, true)`)
	choose(p, "log.json", logbook.WriteFile(f.Entries))
	assert.Contains(t, p.Text("#import-report"), "5000 entries were taken in")
	t.Logf("import of %d entries: longest task %.0f ms", n, Eval[float64](p, `window.longest`))
	assert.Len(t, inStorage(p), n)
}

// TestPicturesOfTheLog is part of TestPictures for a page with entries of its own.
func TestPicturesOfTheLog(t *testing.T) {
	alongside(t)
	dir := os.Getenv("PICTURES")
	if dir == "" {
		t.Skip("PICTURES names no folder for them")
	}
	s := NewSite(t)
	for _, screen := range []struct {
		name          string
		width, height int64
		dark          bool
	}{{"phone", Width, Height, false}, {"phone-dark", Width, Height, true}, {"desk", 1280, 900, false}} {
		p := s.NewPage(t)
		p.Viewport(screen.width, screen.height)
		p.Open("/log/")
		p.Screenshot(filepath.Join(dir, "log-empty-"+screen.name+".png"), screen.dark, true)
		fillLog(p, logbook.Example())
		p.Reload()
		p.Choose("log-axis", "Feed")
		press(p, "#log-list > li:nth-child(1) input")
		press(p, "#log-list > li:nth-child(6) input")
		press(p, "#compare")
		p.Screenshot(filepath.Join(dir, "log-"+screen.name+".png"), screen.dark, true)
		p.Open("/measure/#" + heron)
		press(p, "#keep")
		p.Screenshot(filepath.Join(dir, "log-keep-"+screen.name+".png"), screen.dark, false)
	}
}
