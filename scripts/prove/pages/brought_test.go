package pages

import (
	"net/url"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/logbook"
	"striderule/calc/sheet"
	"striderule/scripts/prove/browser"
)

const (
	heating = "M104 S300 E{value}"
	filled  = "M104 S300 E564.3"
)

var strangersSheet = heron + "&line=" + strings.ReplaceAll(url.QueryEscape(heating), "+", "%20")

// offers is what a page's lines offer to copy or to save.
const offersOfLines = `[...document.querySelectorAll(".code [data-copy], .code [data-save]")].map((b) => b.dataset.copy || b.dataset.text)`

func offeredLines(p *browser.Page) []string {
	p.T().Helper()
	return browser.Eval[[]string](p, offersOfLines)
}

// A line for a machine that a link brings is marked, and not offered before somebody has
// accepted it, however the link was opened.
func TestLineOfALinkIsNotOffered(t *testing.T) {
	browser.Alongside(t)
	open := map[string]func(p *browser.Page){
		"by its address": func(p *browser.Page) { p.Open("/measure/#" + strangersSheet) },
		"on an open page": func(p *browser.Page) {
			p.Open("/measure/")
			hash(p, strangersSheet)
		},
		"from the paste field": func(p *browser.Page) {
			p.Open("/")
			p.Fill("pasted", "look: https://elsewhere.example/measure/#"+strangersSheet)
			p.Click("#open")
			waitForSheet(p, "measure")
		},
		"from the log": func(p *browser.Page) {
			p.Open("/log/")
			entries := logbook.Example()[:1]
			entries[0].Page, entries[0].Sheet = "measure", strangersSheet
			fillLog(p, entries)
			p.Reload()
			press(p, "#open-"+entries[0].ID)
			waitForSheet(p, "measure")
		},
		"from a file": func(p *browser.Page) {
			p.Open("/")
			dropFile(p, "sheet.json", sheetFile(p.T().(*testing.T), "measure", strangersSheet))
			waitForSheet(p, "measure")
		},
	}
	for name, open := range open {
		t.Run(name, func(t *testing.T) {
			p := browser.NewSite(t).NewPage(t)
			open(p)
			part := p.Text("#part-apply")
			assert.Contains(t, part, "This line came with the link or file, and somebody else may have written it.")
			assert.Contains(t, part, heating, "to be read as it is")
			assert.Contains(t, part, "Send this (came with the link or file)"+filled)
			assert.Empty(t, offeredLines(p))
		})
	}
}

func TestAcceptingALineOfALink(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#" + strangersSheet)
	press(p, "#accept-line")
	assert.Equal(t, []string{filled, strings.Replace(filled, "564.3", "538", 1)}, offeredLines(p))
	assert.NotContains(t, p.Text("#part-apply"), "somebody else may have written it")
	assert.Equal(t, "copy-line", browser.Eval[string](p, `document.activeElement.id`))
	p.FillNth("rest", 0, "28.5")
	assert.Len(t, offeredLines(p), 2, "other readings, the same line")
	p.Reload()
	assert.Len(t, offeredLines(p), 2, "it stays accepted in this browser")

	p.Open("/measure/#" + strings.Replace(strangersSheet, "S300", "S301", 1))
	assert.Empty(t, offeredLines(p), "that very text was accepted, and no other")
	assert.Contains(t, p.Text("#part-apply"), "came with the link or file")

	q := s.NewPage(t) // somebody else
	q.Open("/measure/#" + strangersSheet)
	assert.Empty(t, offeredLines(q))
}

// What is accepted is what the page shows, whatever it showed before.
func TestAcceptingWhatIsShown(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/#" + strangersSheet)
	hash(p, strings.Replace(strangersSheet, "S300", "S301", 1))
	assert.Contains(t, p.Text("#part-apply"), "S301")
	press(p, "#accept-line")
	assert.Len(t, offeredLines(p), 2)
	hash(p, strangersSheet)
	assert.Empty(t, offeredLines(p))

	p.Focus("line", 0)
	browser.Eval[bool](p, `((f) => { f.setSelectionRange(0, 5); return true; })(document.getElementById("f-line"))`)
	p.Press(kb.Delete)
	p.Press("x")
	assert.Contains(t, p.Text("#part-apply"), "xS300 E{value}")
	press(p, "#accept-line")
	assert.Len(t, offeredLines(p), 2, "changed, then accepted")
	hash(p, strangersSheet)
	assert.Empty(t, offeredLines(p))

	p.Open("/plan/#" + page(t, "plan").Example + "&begin=M302%20P1")
	press(p, "#accept-moves")
	assert.Len(t, offeredLines(p), 2)
	hash(p, page(t, "plan").Example+"&stop=M302%20P1")
	assert.Empty(t, offeredLines(p), "accepted for another place")
}

// An undo in the field brings a stranger's line back as that.
func TestUndoBringsALineBack(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/#" + strangersSheet)
	p.Focus("line", 0)
	p.Press(kb.Delete)
	require.Equal(t, "", p.Field("line"), "it was selected")
	require.True(t, browser.Eval[bool](p, `document.execCommand("undo")`))
	p.Wait(`document.getElementById("f-line").value.startsWith("M104")`)
	p.Settle()
	assert.Empty(t, offeredLines(p))
	p.Reload()
	assert.Empty(t, offeredLines(p))
}

// What was typed here comes back with the page's own address, as it does after a reload.
func TestOwnLineIsOffered(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/#" + heron)
	p.Unfold()
	p.Fill("line", heating)
	assert.Len(t, offeredLines(p), 2)
	p.Wait(`location.hash.includes("&line=M104")`)
	p.Reload()
	assert.Len(t, offeredLines(p), 2)

	// Who changes a stranger's line has not typed it.
	p.Open("/measure/#" + strings.Replace(strangersSheet, "S300", "S301", 1))
	p.Focus("line", 0)
	p.Press(kb.Delete)
	assert.Equal(t, "", p.Field("line"), "it was selected")
	p.Fill("line", "M500 M92 E{value}")
	assert.Len(t, offeredLines(p), 2, "begun anew")
	p.Open("/measure/#" + strings.Replace(strangersSheet, "S300", "S302", 1))
	p.Focus("line", 0)
	browser.Eval[bool](p, `((f) => { f.setSelectionRange(f.value.length, f.value.length); return true; })(document.getElementById("f-line"))`)
	p.Press(" ")
	p.Press("X")
	assert.Empty(t, offeredLines(p))
}

// The page's own suggestions need no accepting.
func TestSuggestedLineIsOffered(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/#" + heron + "&line=M92%20E%7Bvalue%7D")
	assert.Equal(t, []string{"M92 E564.3", "M92 E538"}, offeredLines(p))
	p.Open("/plan/#" + page(t, "plan").Example)
	assert.Len(t, offeredLines(p), 2, "to copy and to save")
}

func page(t *testing.T, slug string) sheet.Page {
	t.Helper()
	p, ok := calc.PageOf(slug)
	require.True(t, ok)
	return p
}

// Moves of a plan go into a file: none of a stranger's gets there unseen.
func TestMovesOfALinkAreNotSaved(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/plan/#" + page(t, "plan").Example + "&begin=M302%20P1&stop=M0%20%3B%20wait%E2%80%A8G1%20Z-20&finish=M500%20%E2%80%AE003S%20401M")
	assert.Contains(t, p.Text("#problems"), "Line after the last move: “M500 ‹U+202E›003S 401M” isn't all printable ASCII")
	assert.False(t, has(p, "#part-moves"), "withheld")

	p.Open("/plan/#" + page(t, "plan").Example + "&begin=M302%20P1&stop=M0%20%3B%20wait%E2%80%A8G1%20Z-20")
	assert.Empty(t, offeredLines(p))
	part := p.Text("#part-moves")
	assert.Contains(t, part, "These lines came with the link or file, and aren't used: the reason is below.")
	assert.Contains(t, part, "M0 ; wait G1 Z-20", "on one line")
	assert.Contains(t, part, "“M0 ; wait G1 Z-20” holds “;”")
	assert.False(t, has(p, "#part-moves .code"), "nothing is made of it")
	assert.False(t, has(p, "#part-moves .brought button"))

	p.Open("/plan/#" + page(t, "plan").Example + "&begin=M302%20P1" + strings.Repeat("%20", 150) + "S1&finish=G1%20Z-20")
	assert.Empty(t, offeredLines(p))
	part = p.Text("#part-moves")
	assert.Contains(t, part, "These lines came with the link or file, and somebody else may have written them.")
	assert.Contains(t, part, "“G1 Z-20” names the axis Z, which this sheet isn't about.")
	press(p, "#accept-moves")
	moves := offeredLines(p)
	require.Len(t, moves, 2)
	assert.Equal(t, moves[0], moves[1])
	// What is saved is on view, line by line.
	assert.Equal(t, moves[0], browser.Eval[string](p, `document.querySelector("#part-moves .code code").textContent`))
	assert.True(t, browser.Eval[bool](p, `((c) => {
		const range = document.createRange(), box = document.querySelector("#part-moves .code").getBoundingClientRect(), text = c.firstChild;
		for (let i = 0; i < text.length; i++) {
			if (text.data[i].trim() === "") continue;
			range.setStart(text, i);
			range.setEnd(text, i + 1);
			const sign = range.getBoundingClientRect();
			if (sign.width === 0 || sign.left < box.left || sign.right > box.right || sign.bottom > box.bottom) return false;
		}
		return c.checkVisibility();
	})(document.querySelector("#part-moves .code code"))`), "each sign of it")
}

// A line of several commands is shown, with why it is not used, and not to be accepted.
func TestLineOfALinkThatIsRefused(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/#" + heron + "&line=M104%20S300%20M92%20E%7Bvalue%7D0")
	part := p.Text("#part-apply")
	assert.Contains(t, part, "This line came with the link or file, and isn't used: the reason is below.")
	assert.Contains(t, part, "holds more than one command: M104, M92.")
	assert.Contains(t, part, "stands beside {value}")
	assert.Empty(t, offeredLines(p))
	assert.NotContains(t, part, "E564.30")
	assert.False(t, has(p, "#part-apply .brought button"))
	p.Focus("line", 0)
	p.Press(kb.Delete)
	p.Fill("line", "M302 P1 M92 E{value}")
	assert.Equal(t, []string{"M302 P1 M92 E564.3", "M302 P1 M92 E538"}, offeredLines(p), "typed here")
	assert.Contains(t, p.Text("#part-apply"), "holds more than one command: M302, M92.")
	p.Reload()
	assert.Len(t, offeredLines(p), 2, "and it stays the person's own")
}

func TestAcceptedLineIsTakenBack(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/#" + strangersSheet)
	press(p, "#accept-line")
	p.Reload()
	assert.Contains(t, p.Text("#part-apply"), "This line came with the link or file. It's accepted on this device.")
	press(p, "#take-back-line")
	assert.Empty(t, offeredLines(p))
	assert.Equal(t, "accept-line", browser.Eval[string](p, `document.activeElement.id`))
	p.Reload()
	assert.Empty(t, offeredLines(p))
	assert.Contains(t, p.Text("#part-apply"), "somebody else may have written it")
}

// A line that is not the one used here is shown beside it.
func TestOwnLineIsShownBesideAStrangers(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#" + strangersSheet)
	assert.NotContains(t, p.Text("#part-apply"), "used on this device")
	p.Focus("line", 0)
	p.Press(kb.Delete)
	p.Fill("line", "M851 E{value}")
	p.Wait(`location.hash.includes("&line=M851")`)
	p.Open("/measure/#" + strangersSheet)
	assert.Contains(t, p.Text("#part-apply"), "The last one used on this deviceM851 E{value}")
	p.Open("/measure/#" + heron + "&line=M851%20E%7Bvalue%7D")
	assert.NotContains(t, p.Text("#part-apply"), "The last one")
	assert.Len(t, offeredLines(p), 2)
}

// A browser that keeps nothing asks again after a reload, and not before.
func TestAcceptingWhereNothingIsKept(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	s.Trimmed(t, "asks for the storage itself, and ends without")
	p := s.NewPage(t)
	p.Before(refusals[everything])
	p.Open("/measure/#" + strangersSheet)
	press(p, "#accept-line")
	assert.Len(t, offeredLines(p), 2)
	p.FillNth("rest", 0, "28.5")
	hash(p, strangersSheet)
	assert.Len(t, offeredLines(p), 2)
	p.Reload()
	assert.Empty(t, offeredLines(p))
}
