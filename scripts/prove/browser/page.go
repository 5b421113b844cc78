package browser

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"
)

// Width and Height are those of a small phone.
const (
	Width  = 360
	Height = 740
)

// Patience is how long a page may take for what a test waits for.
const Patience = time.Minute

// Page is a tab. Its methods fail the test when what they ask for can't be had, and
// skip it where the browser has no way to do it.
type Page struct {
	t    testing.TB
	root string
	log  *watch
	tab  tab
}

// newPage opens a tab. One whose site nobody has seen, at an address that no other site had,
// may be in the browser of a person who has seen other sites.
func newPage(t testing.TB, root string, unseen bool) *Page {
	t.Helper()
	its, err := engineOf(t)
	require.NoError(t, err)
	p := &Page{t: t, root: root, log: newWatch(root)}
	p.tab, err = its.open(p.log, unseen)
	require.NoError(t, err, "opening a tab")
	t.Cleanup(func() {
		p.tab.collect()
		p.log.report(t)
		p.tab.close()
	})
	p.Viewport(Width, Height)
	return p
}

// Beside opens another tab of the same person, who has what the site keeps in both.
// What either of them must not do fails the test.
func (p *Page) Beside() *Page {
	p.t.Helper()
	other, err := p.tab.beside()
	p.Must(err)
	q := &Page{t: p.t, root: p.root, log: p.log, tab: other}
	p.t.Cleanup(func() {
		q.tab.collect()
		q.tab.close()
	})
	q.Viewport(Width, Height)
	return q
}

// Viewport sets the size of the screen, in CSS pixels.
func (p *Page) Viewport(width, height int64) {
	p.t.Helper()
	p.DenseViewport(width, height, 1)
}

// DenseViewport is Viewport for a screen with so many dots to a CSS pixel.
func (p *Page) DenseViewport(width, height int64, scale float64) {
	p.t.Helper()
	p.Must(p.tab.viewport(width, height, scale))
}

// Allow accepts messages that contain the text: the test is about them.
func (p *Page) Allow(text string) { p.log.allow(text) }

// Problems returns what would fail the test so far, less what is allowed.
func (p *Page) Problems() []string {
	p.tab.collect()
	return p.log.problems()
}

// Before runs a script in every document that the page loads, before its own.
func (p *Page) Before(script string) {
	p.t.Helper()
	p.Must(p.tab.before(script))
}

// Open loads a path of the site, such as "/measure/#v=1", and waits until the
// calculator has started.
func (p *Page) Open(path string) {
	p.t.Helper()
	p.Load(path)
	p.WaitReady()
}

// Load loads a path of the site as a new document, and doesn't wait for the calculator.
func (p *Page) Load(path string) {
	p.t.Helper()
	// A mere change of the fragment would keep the document.
	if p.Address() != "about:blank" {
		p.Must(p.tab.navigate("about:blank"))
	}
	p.Must(p.tab.navigate(p.root + strings.TrimPrefix(path, "/")))
}

// Show goes to a path of the site as by a link in the page that shows, which takes a part of
// the time that a new document does; if none shows yet, by Open. The method's page is always
// a new document.
func (p *Page) Show(path string) {
	p.t.Helper()
	target := strconv.Quote(p.root + strings.TrimPrefix(path, "/"))
	shows := Eval[bool](p, `document.documentElement.dataset.app === "ready" && location.href.startsWith(`+strconv.Quote(p.root)+`)`)
	if !shows || strings.HasPrefix(path, "/method/") {
		p.Open(path)
		return
	}
	Eval[bool](p, `(() => {
		const link = document.createElement("a");
		link.href = `+target+`;
		document.body.append(link);
		link.click();
		link.remove();
		return true;
	})()`)
	p.Wait(`location.href === new URL(` + target + `).href || location.href === new URL(` + target + `).href.replace(/#$/, "")`)
	p.Settle()
}

// T is the test that the page belongs to.
func (p *Page) T() testing.TB { return p.t }

// Root is the site's address, ending in a slash.
func (p *Page) Root() string { return p.root }

// In returns the same tab for a test within the one that opened it.
func (p *Page) In(t *testing.T) *Page {
	q := *p
	q.t = t
	return &q
}

// Reload loads the page again, and waits until the calculator has started and the page is
// back in its place (scrollOn in web/start.js): a click would miss what still moves.
func (p *Page) Reload() {
	p.t.Helper()
	scrolled := Eval[bool](p, "scrollY > 0")
	p.Must(p.tab.reload())
	p.WaitReady()
	if scrolled {
		p.Wait(`performance.now() > (performance.getEntriesByName("app-mounted")[0]?.startTime ?? 0) + 900`)
	}
}

// ReloadAtOnce loads the page again, and waits for nothing.
func (p *Page) ReloadAtOnce() { p.t.Helper(); p.Must(p.tab.reload()) }

// ReloadByScript loads the page again as a script of its own does.
func (p *Page) ReloadByScript() {
	p.t.Helper()
	p.Must(leave(p.tab, func() error {
		_, err := p.tab.eval(`(location.reload(), true)`)
		return err
	}))
}

// Depart leaves for an address, and waits for nothing.
func (p *Page) Depart(url string) { p.t.Helper(); p.Must(p.tab.navigate(url)) }

// Back and Forward go through the history, within the page or between pages.
func (p *Page) Back()    { p.t.Helper(); p.travel("history.back()") }
func (p *Page) Forward() { p.t.Helper(); p.travel("history.forward()") }

func (p *Page) travel(script string) {
	p.t.Helper()
	before := p.Address()
	Eval[bool](p, "("+script+", true)")
	p.Wait("location.href !== " + strconv.Quote(before))
	p.WaitReady()
	p.Settle()
}

// WaitReady waits until the calculator has started, and fails at once with its
// sentence when it says that it can't.
func (p *Page) WaitReady() {
	p.t.Helper()
	p.Wait(`document.documentElement.dataset.app`)
	state := Eval[string](p, `document.documentElement.dataset.app`)
	require.Equal(p.t, "ready", state, "the page says: %s", Eval[string](p, `document.getElementById("boot").textContent`))
	p.Wait(`!document.getAnimations().some((a) => a.animationName === "late")`) // parts of a result
}

// WaitFailed waits until the page says that the calculator can't run, and returns what it says.
func (p *Page) WaitFailed() string {
	p.t.Helper()
	p.Wait(`document.documentElement.dataset.app === "failed"`)
	return p.Text("#boot")
}

// WaitOffline waits until the site is kept for use without its server.
func (p *Page) WaitOffline() {
	p.t.Helper()
	Eval[bool](p, `navigator.serviceWorker.ready.then(() => true)`)
	p.Wait(`navigator.serviceWorker.controller`)
}

// Wait waits until the expression, or what its promise resolves to, is truthy.
// It survives navigation.
func (p *Page) Wait(expression string) {
	p.t.Helper()
	p.WaitFor(Patience, expression)
}

// WaitFor is Wait with a limit of its own.
func (p *Page) WaitFor(limit time.Duration, expression string) {
	p.t.Helper()
	look := "Promise.resolve(" + expression + ").then(Boolean)"
	if Name() == "chromium" {
		// The page asks itself, for as long as it is there: to ask it from here takes more of
		// the processor than most pages do. Drivers of others may not answer so late.
		look = `(async () => {
			const end = performance.now() + 1000;
			while (!await (` + expression + `)) {
				if (performance.now() > end) return false;
				await scheduler.postTask(() => {}, { delay: 15 }); // tests count timers
			}
			return true;
		})()`
	}
	var last error
	for end := time.Now().Add(limit); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		var got []byte
		if got, last = p.tab.eval(look); string(got) == "true" {
			return
		}
	}
	require.FailNow(p.t, "waited in vain for "+expression, "last error: %v; problems: %v", last, p.Problems())
}

// Settle waits until what was done shows: go-app renders in frames of its own, and
// what stands below an answer follows when no other key has come.
func (p *Page) Settle() {
	p.t.Helper()
	Eval[bool](p, `(async () => {
		const shown = () => new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r)));
		await new Promise((r) => setTimeout(r, 40));
		await shown();
		while (document.querySelector("[aria-busy=true]")) await shown();
		return true;
	})()`)
}

// Eval returns the value of an expression, or what its promise resolves to. A space at which
// no line ends reads like any other.
func Eval[T any](p *Page, expression string) T {
	p.t.Helper()
	data, err := p.tab.eval(expression)
	require.NoError(p.t, err, expression)
	for _, space := range []string{"\u00a0", `\u00a0`} { // as it is, and as JSON may write it
		data = bytes.ReplaceAll(data, []byte(space), []byte(" "))
	}
	v, err := decode[T](data)
	require.NoError(p.t, err, expression)
	return v
}

// Fill replaces what is in the field of that name, or id, by typing.
func (p *Page) Fill(name, text string) {
	p.t.Helper()
	p.FillNth(name, 0, text)
}

// FillNth is Fill for the nth field of that name, counted from 0.
func (p *Page) FillNth(name string, n int, text string) {
	p.t.Helper()
	p.Focus(name, n)
	if text == "" {
		text = kb.Delete
	}
	p.Press(text)
}

// Focus puts the caret into the nth field of that name, or id, with all its text selected.
func (p *Page) Focus(name string, n int) {
	p.t.Helper()
	p.unfoldFor(fieldFolds, fieldNamed(name, n))
	trouble := Eval[string](p, `(() => {
		const f = `+fieldNamed(name, n)+`;
		if (!f) return "there is none";
		f.focus();
		if (document.activeElement !== f) return "it can't have the focus: hidden, or disabled";
		if (f.select) f.select();
		return "";
	})()`)
	require.Empty(p.t, trouble, "field %q (number %d)", name, n)
}

// Press sends keys to what has the focus: text, or keys of chromedp/kb.
func (p *Page) Press(keys string) {
	p.t.Helper()
	p.Type(keys)
	p.Settle()
}

// Type is Press for those who don't wait for what comes of it.
func (p *Page) Type(keys string) {
	p.t.Helper()
	p.Must(p.tab.keys(keys))
}

// Paste presses Ctrl+V.
func (p *Page) Paste() {
	p.t.Helper()
	p.Must(p.tab.chord("v"))
	p.Settle()
}

// Choose picks a value of the select box or of the radio buttons of that name.
func (p *Page) Choose(name, value string) {
	p.t.Helper()
	p.unfoldFor(fieldFolds, fmt.Sprintf(`document.getElementsByName(%q)[0]`, name))
	found := Eval[bool](p, fmt.Sprintf(`(() => {
		for (const f of document.getElementsByName(%q)) {
			if (f.tagName === "SELECT") {
				if (![...f.options].some((o) => o.value === %[2]q)) return false;
				f.value = %[2]q;
				for (const type of ["input", "change"]) f.dispatchEvent(new Event(type, {bubbles: true}));
				return true;
			}
			if (f.value === %[2]q) { f.click(); return true; }
		}
		return false;
	})()`, name, value))
	require.True(p.t, found, "no choice %q named %q", value, name)
	p.Settle()
}

// Click clicks in the middle of the first element of the selector, as with a finger; on what is
// in the menu, when that has been opened.
func (p *Page) Click(selector string) {
	p.t.Helper()
	if Eval[bool](p, "document.querySelector("+strconv.Quote(selector)+")?.closest('#menu:not([open]) nav') != null") {
		p.OpenMenu()
	}
	p.unfoldFor(allFolds, "document.querySelector("+strconv.Quote(selector)+")")
	p.WaitFor(Patience, "document.querySelector("+strconv.Quote(selector)+")")
	p.Must(p.tab.click(selector, 0))
	p.Settle()
}

// OpenMenu opens the menu of the pages.
func (p *Page) OpenMenu() {
	p.t.Helper()
	p.Must(p.tab.click("#menu > summary", 0))
	p.Wait(`document.getElementById("menu").open`)
}

// Tap is Click for a place that may go away by it: it waits for nothing.
func (p *Page) Tap(selector string) { p.t.Helper(); p.Must(p.tab.click(selector, 0)) }

// Hold is Click by a mouse whose button is held down for a while, as people do.
func (p *Page) Hold(selector string, held time.Duration) {
	p.t.Helper()
	p.Must(p.tab.click(selector, held))
	p.Settle()
}

// Text returns the text of the first element of the selector; of a fold, with what it holds.
func (p *Page) Text(selector string) string {
	p.t.Helper()
	p.unfoldFor(allFolds, "document.querySelector("+strconv.Quote(selector)+")")
	if Eval[bool](p, "document.querySelector("+strconv.Quote(selector)+")?.matches('details:not([open])') ?? false") {
		p.OpenFolds(selector)
	}
	text := Eval[*string](p, "(document.querySelector("+strconv.Quote(selector)+") || {textContent: null}).textContent")
	require.NotNil(p.t, text, "no element %s", selector)
	return *text
}

// Value returns the full value of the figure <data id=...>.
func (p *Page) Value(id string) float64 {
	p.t.Helper()
	p.unfoldFor(allFolds, "document.getElementById("+strconv.Quote(id)+")")
	text := Eval[*string](p, "(document.getElementById("+strconv.Quote(id)+") || {value: null}).value")
	require.NotNil(p.t, text, "no figure %q", id)
	v, err := strconv.ParseFloat(*text, 64)
	require.NoError(p.t, err, "the value of %q", id)
	return v
}

// Field returns what is in the field of that name, or id.
func (p *Page) Field(name string) string {
	p.t.Helper()
	p.unfoldFor(fieldFolds, fieldNamed(name, 0))
	text := Eval[*string](p, `(`+fieldNamed(name, 0)+` || {value: null}).value`)
	require.NotNil(p.t, text, "no field %q", name)
	return *text
}

// Address returns the page's address.
func (p *Page) Address() string {
	p.t.Helper()
	return Eval[string](p, "location.href")
}

// Prefers lets the person prefer something: Prefers("prefers-color-scheme", "dark").
func (p *Page) Prefers(feature, value string) {
	p.t.Helper()
	p.Must(p.tab.prefer(feature, value))
	p.Settle()
}

// Screenshot writes a picture of the page, or of what shows of it.
func (p *Page) Screenshot(file string, dark, full bool) {
	p.t.Helper()
	scheme := "light"
	if dark {
		scheme = "dark"
	}
	p.Prefers("prefers-color-scheme", scheme)
	p.Picture(file, full)
}

// Picture is Screenshot, whatever the person prefers.
func (p *Page) Picture(file string, full bool) {
	p.t.Helper()
	png, err := p.tab.screenshot(full)
	p.Must(err)
	require.NoError(p.t, os.MkdirAll(filepath.Dir(file), 0o755))
	require.NoError(p.t, os.WriteFile(file, png, 0o644))
}

// Must fails the test by an error of the browser, and skips it by what that browser lacks.
func (p *Page) Must(err error) {
	p.t.Helper()
	require.NoError(p.t, p.unlacked(err))
}

// NewPage opens an empty tab of a browser that has never seen the site at root,
// a URL that ends in a slash. Site.NewPage does so for a site of the tests' own.
func NewPage(t testing.TB, root string) *Page {
	t.Helper()
	return newPage(t, root, false)
}

// SaveTo lets the page save files and returns the folder they go to.
func (p *Page) SaveTo() string {
	p.t.Helper()
	dir, err := p.tab.saveTo(p.t.TempDir())
	p.Must(err)
	return dir
}

// Saved waits for a file in the folder of SaveTo and returns what is in it.
func (p *Page) Saved(dir, name string) string {
	p.t.Helper()
	var data []byte
	require.Eventually(p.t, func() (done bool) {
		var err error
		data, err = os.ReadFile(filepath.Join(dir, name))
		return err == nil && len(data) > 0
	}, Patience, 20*time.Millisecond, "no file %s was saved", name)
	return string(data)
}

// NoSidewaysScrolling fails the test if the page is wider than the screen.
func (p *Page) NoSidewaysScrolling() {
	p.t.Helper()
	require.LessOrEqual(p.t, Eval[int](p, `document.documentElement.scrollWidth`), Eval[int](p, `document.documentElement.clientWidth`))
}
