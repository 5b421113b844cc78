package calculator

import (
	"html"
	"slices"
	"strings"
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/app/frame"
	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/logbook"
)

// Heron's sheet, but for the length that was commanded.
const unasked = "v=1&steps=538.0&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05"

// A bench is a calculator in go-app's own test engine, with a clock that is set by hand.
type bench struct {
	*calculator
	t      *testing.T
	engine app.TestEngine
	clock  int
	timers []timer
}

type timer struct {
	due int
	do  func()
}

func newBench(t *testing.T, slug, fragment string) *bench {
	t.Helper()
	page, ok := calc.PageOf(slug)
	require.True(t, ok)
	b := &bench{calculator: &calculator{page: page}, t: t, engine: app.NewTestEngine()}
	require.NoError(t, b.engine.Load(b.calculator))
	b.engine.ConsumeAll()
	b.host = "https://club.example"
	b.settling.later = func(milliseconds int, do func()) { b.timers = append(b.timers, timer{b.clock + milliseconds, do}) }
	b.does(func(app.Context) { b.load(fragment) })
	return b
}

// Where there is no browser, go-app calls these in the place of OnMount.
func (c *calculator) OnPreRender(ctx app.Context) { c.OnMount(ctx) }

func (v *quickView) OnPreRender(ctx app.Context) { v.OnMount(ctx) }

// does something as go-app does it for an event: it renders the calculator afterwards,
// unless that is prevented.
func (b *bench) does(what func(ctx app.Context)) {
	b.ctx.Dispatch(what)
	b.engine.ConsumeAll()
}

// types a text into a field.
func (b *bench) types(key string, row int, text string) {
	b.does(func(ctx app.Context) {
		b.editByKey(ctx, func(f *form.Form) { f.Set(key, row, text) })
	})
}

// waits lets time pass, and what is due happen.
func (b *bench) waits(milliseconds int) {
	b.clock += milliseconds
	slices.SortStableFunc(b.timers, func(a, b timer) int { return a.due - b.due })
	for len(b.timers) > 0 && b.timers[0].due <= b.clock {
		next := b.timers[0]
		b.timers = b.timers[1:]
		next.do()
		b.engine.ConsumeAll()
	}
}

// page is the page as it stands.
func (b *bench) page() string { return html.UnescapeString(app.HTMLString(b.calculator)) }

// shows and hides hold what the page has in it; a page is too long to be printed.
func (b *bench) shows(text string) {
	b.t.Helper()
	assert.True(b.t, strings.Contains(b.page(), text), "the page does not show %s", text)
}

func (b *bench) hides(text string) {
	b.t.Helper()
	assert.False(b.t, strings.Contains(b.page(), text), "the page shows %s", text)
}

// A key has the answer shown, and nothing else; the rest of the report, the address, and
// what screen readers are told follow when typing pauses, each by itself.
func TestAKeyAndWhatFollows(t *testing.T) {
	b := newBench(t, "measure", unasked)
	b.hides("564.3")
	turns := b.turns

	b.types("asked", 0, "80")
	b.shows(`id="out-steps"`)
	b.shows("564.3")
	b.shows(`aria-busy`)
	b.hides("part-why")
	assert.Equal(t, turns, b.turns, "the calculator itself is not rendered")
	assert.True(t, b.settling.unwritten)

	b.waits(reportAfter)
	b.shows("part-why")
	b.hides(`aria-busy`)
	assert.Equal(t, turns+1, b.turns)
	assert.NotContains(t, b.address, "asked=80")

	b.waits(addressAfter - reportAfter)
	assert.Contains(t, b.address, "asked=80")
	assert.False(t, b.settling.unwritten)
	assert.Equal(t, turns+1, b.turns, "nothing of that shows")
	assert.Empty(t, b.settling.said)

	b.waits(restAfter - addressAfter)
	assert.Contains(t, b.settling.said, "Change it")
	b.shows(b.settling.said[:20])
	assert.Empty(t, b.timers)
}

// Only what is to be in the controller is large, in the bar, said first and there to copy.
func TestOnlyWhatIsToBeSetIsLarge(t *testing.T) {
	const told = `class="answer`
	for rest, want := range map[string]struct{ copied, label, not string }{
		"24.7,25.3,24.6": {"538", "For now, keep steps per mm at", "536.8"},                       // not to be told yet
		"24.9,25,25.05":  {"538", "Keep steps per mm at", "537.8"},                                // right as it is
		"66.2,66.4,66.1": {"1076", "If the machine is right, set steps per mm to", "1110.232158"}, // twice, and a little
		"28.7,28.9,28.6": {"564.3356643", "Change it", "copy=\"538"},
	} {
		b := newBench(t, "measure", "v=1&steps=538.0&asked=80&mark=105&tool=caliper-0.05&rest="+rest)
		b.waits(restAfter)
		page := b.page()
		answer := page[strings.Index(page, told):]
		assert.Contains(t, answer, `data-copy="`+want.copied, rest)
		large := answer[strings.Index(answer, `class="headline`):]
		assert.Contains(t, large[:strings.Index(large, "</p>")], `value="`+want.copied, rest)
		bar := page[strings.Index(page, `class="bar"`):]
		assert.Contains(t, bar[:strings.Index(bar, "</a>")], want.label, rest)
		assert.NotContains(t, page, `data-copy="`+want.not, rest)
		assert.Contains(t, b.summary(), want.label, rest)
	}
}

// A number that is not the sender's is not in the bar.
func TestBarOfALinkThatDiffers(t *testing.T) {
	b := newBench(t, "measure", strings.Replace(received(), "rest=28.7", "rest=18.7", 1))
	b.shows("≠ Differs from the link: see why")
	b.types("rest", 0, "28.7")
	b.waits(restAfter)
	b.hides("≠ Differs from the link: see why")
	b.shows(`<span class="bar-label">→ Change it</span>`)
}

// While keys come one after the other, only the answer keeps up with them.
func TestKeysInARow(t *testing.T) {
	b := newBench(t, "measure", unasked)
	turns := b.turns
	for i := range 10 {
		b.types("asked", 0, "80"[:1+i%2])
		b.waits(reportAfter - 1)
	}
	assert.Equal(t, turns, b.turns)
	b.shows("564.3")
	assert.True(t, b.settling.isBehind())
	b.waits(restAfter)
	assert.Equal(t, turns+2, b.turns, "the report, and what is said")
	assert.False(t, b.settling.isBehind())
	assert.Contains(t, b.address, "asked=80")
}

// What is left before the address has followed is written then.
func TestLeavingWritesTheAddress(t *testing.T) {
	b := newBench(t, "measure", unasked)
	b.types("asked", 0, "80")
	b.leave()
	assert.Contains(t, b.address, "asked=80")
	b.types("asked", 0, "81")
	fragment, late := b.overtaken()
	assert.True(t, late)
	assert.Contains(t, fragment, "asked=81")
	_, late = b.overtaken()
	assert.False(t, late, "once")
}

// received is the link to Heron's sheet as its sender had it.
func received() string {
	page, _ := calc.PageOf("measure")
	return calc.Load(page, unasked+"&asked=80").ShareFragment()
}

// A received sheet that was changed: it is said, and every way out has the same link, which
// carries what it was.
func TestReceiveChangeReply(t *testing.T) {
	b := newBench(t, "measure", received())
	b.shows("Same result as when this sheet was sent")
	b.types("rest", 1, "28.2")
	b.hides(`id="compared"`)
	b.waits(restAfter)
	shown := b.page()
	b.shows(`id="compared"`)
	b.shows("1 entry changed since this sheet was sent or saved")
	reply := b.shareURL(b.form.ReplyFragment())
	assert.Contains(t, reply, "was-rest=28.7,28.9,28.6")
	url, long := b.link()
	assert.False(t, long)
	assert.Equal(t, reply, url)
	assert.Equal(t, 2, strings.Count(shown, `data-copy="`+strings.ReplaceAll(reply, "&", "&amp;")+`"`)+strings.Count(shown, `data-copy="`+reply+`"`), "the button for the link, and that for the reply")

	b.does(func(app.Context) { b.toggleCode() })
	assert.Equal(t, reply, b.code.URL)
	b.does(func(app.Context) { b.folds.Reset([]string{"across"}) })
	b.shows(`id="code-picture"`)
	b.shows(hideCode)
	b.types("rest", 1, "28.3")
	b.waits(restAfter)
	b.hides(`id="code-picture"`)
}

// A sheet out of the own log was sent by nobody.
func TestOwnLogEntry(t *testing.T) {
	page, _ := calc.PageOf("measure")
	e, ok := logbook.Of(calc.Load(page, unasked+"&asked=80"), "2026-11-30T10:00", "Heron", "", "")
	require.True(t, ok)
	b := newBench(t, "measure", e.Sheet)
	b.shows("Same result as when this sheet was sent or saved.")
	b.types("rest", 1, "28.2")
	b.waits(restAfter)
	b.shows("1 entry changed since this sheet was sent or saved")
	b.shows("was 28.9\u00a0mm")
	for _, word := range []string{"you received", "sender", "reply link"} {
		b.hides(word)
	}
}

// Another sheet on the same page begins with nothing of the one before.
func TestAnotherSheetOnThePage(t *testing.T) {
	b := newBench(t, "measure", received())
	b.types("rest", 1, "28.2")
	b.waits(restAfter)
	b.does(func(app.Context) { b.toggleCode() })
	b.does(func(app.Context) { b.load("v=1&steps=80&axis=travel&asked=100&moved=99.1") })
	b.hides(`id="compared"`)
	b.hides(`id="code-picture"`)
	b.hides(`aria-busy`)
	b.shows("80.7265")
}

func TestKeepIt(t *testing.T) {
	b := newBench(t, "measure", unasked+"&asked=80")
	b.does(func(app.Context) { b.openKeep() })
	b.shows(`id="keep-form"`)
	b.does(func(ctx app.Context) { b.keepSheet(ctx, app.Event{}) })
	b.shows(noMachine)
	b.keep.machine, b.keep.date = "Heron", "yesterday"
	b.does(func(ctx app.Context) { b.keepSheet(ctx, app.Event{}) })
	b.shows(noDate)
	b.keep.date = "2026-11-25T10:03"
	b.does(func(ctx app.Context) { b.keepSheet(ctx, app.Event{}) })
	b.shows(saved)
	b.hides(`id="keep-form"`)
	b.types("asked", 0, "81")
	b.hides(saved)
}

func TestPasteAndUndo(t *testing.T) {
	b := newBench(t, "measure", unasked+"&asked=80")
	b.pasteInto("f-rest-2", "28.1\n28.2\n28.3\n28.4\n")
	b.engine.ConsumeAll()
	assert.Equal(t, []string{"28.7", "28.1", "28.2", "28.3", "28.4"}, textsOf(b.form, "rest", 5))
	b.shows("Pasted into runs 2 to 5.")
	b.does(func(app.Context) { frame.Press("unpaste") })
	assert.Equal(t, []string{"28.7", "28.9", "28.6", "", ""}, textsOf(b.form, "rest", 5))
	b.pasteInto("f-nosuch-1", "1\n2")
	b.engine.ConsumeAll()
	assert.Equal(t, []string{"28.7", "28.9", "28.6", "", ""}, textsOf(b.form, "rest", 5))
}

func textsOf(f *form.Form, key string, rows int) (texts []string) {
	for row := range rows {
		texts = append(texts, f.Text(key, row))
	}
	return texts
}

// A file opens on the page that it is of, or says why it does not.
// A row that is taken out by mistake comes back.
func TestRemoveAndUndo(t *testing.T) {
	b := newBench(t, "measure", unasked)
	field, _ := b.form.Field("rest")
	remove := func(row int) {
		b.does(func(app.Context) {
			b.editRows(func(f *form.Form) form.RowsEdit { return f.RemoveRow(field.Group, row) })
		})
	}
	remove(1)
	b.shows("Removed run 2.")
	assert.Equal(t, []string{"28.7", "28.6"}, []string{b.form.Text("rest", 0), b.form.Text("rest", 1)})
	b.does(func(app.Context) { frame.Press("unpaste") })
	assert.Equal(t, "28.9", b.form.Text("rest", 1))
	assert.Equal(t, 4, b.form.Rows(field))
	b.hides("Removed run 2.")
	remove(3)
	b.hides("Removed run 4.") // there was nothing in it
}

func TestFileIsTaken(t *testing.T) {
	b := newBench(t, "measure", "")
	for failed, says := range map[string]string{"": "is not a sheet", "TooLarge": "longer than a sheet can be", "NotReadableError": "couldn't read it (NotReadableError)"} {
		b.takeFile("notes.txt", "hello", failed)
		b.engine.ConsumeAll()
		b.shows("notes.txt wasn't opened")
		if failed != "" {
			b.shows(says)
		}
	}
}
