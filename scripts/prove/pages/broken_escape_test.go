package pages

import (
	"encoding/json"
	"math/rand/v2"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/link"
	"striderule/calc/logbook"
	"striderule/scripts/prove/browser"
)

// cutLink ends in the middle of an escape.
const cutLink = heron + "&line=M92%20E%7Bvalue%7"

// shownProblems is what the page tells of its sheet.
func shownProblems(p *browser.Page) []string {
	return browser.Eval[[]string](p, `[...document.querySelectorAll("#problems li")].map((e) => e.textContent)`)
}

// problemsOf is what calc tells of the address as the browser has it.
func problemsOf(t *testing.T, p *browser.Page) []string {
	t.Helper()
	slug, fragment, _ := strings.Cut(strings.TrimPrefix(p.Address(), p.Root()), "/#")
	page, ok := calc.PageOf(slug)
	require.True(t, ok, p.Address())
	// A browser that has had too many addresses rewritten leaves some as they are.
	address, err := url.Parse("#" + strings.NewReplacer("#", "%23").Replace(link.Printable(fragment)))
	require.NoError(t, err)
	says := []string{}
	for _, problem := range calc.Load(page, address.EscapedFragment()).Problems() {
		says = append(says, strings.ReplaceAll(problem.Says, "\u00a0", " ")) // as browser.Eval has it
	}
	return says
}

// A broken escape is a problem like any other, on whatever page it is opened.
func TestBrokenEscapeInTheLink(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	for _, path := range []string{"/measure/#%", "/convert/#%zz", "/measure/#100%", "/measure/#" + cutLink, "/plan/#v=1&speed=5%&x=%2"} {
		p.Open(path)
		assert.Equal(t, problemsOf(t, p), shownProblems(p), path)
		assert.NotEmpty(t, shownProblems(p), path)
	}
	for _, path := range []string{"/#%", "/log/#%zz", "/method/#%e"} {
		p.Open(path)
		assert.NotEmpty(t, p.Text("h1"), path)
	}
	p.Open("/measure/#" + cutLink)
	assert.Equal(t, "M92 E{value%7", p.Field("line"))
	p.Reload()
	assert.Equal(t, "M92 E{value%7", p.Field("line"))
	p.Fill("line", "M92 E{value}")
	p.Wait(`location.hash.endsWith("&line=M92%20E%7Bvalue%7D")`)
}

// Nor does one stop a page that is open: pasted into the address, or by Back.
func TestBrokenEscapeOnAnOpenPage(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/#" + heron)
	for _, fragment := range []string{"%", "%zz", cutLink, "v=1&steps=5%"} {
		hash(p, fragment)
		assert.Equal(t, problemsOf(t, p), shownProblems(p), fragment)
		assert.NotEmpty(t, shownProblems(p), fragment)
	}
	p.Back()
	assert.Equal(t, problemsOf(t, p), shownProblems(p))
	hash(p, heron)
	p.Wait(`document.getElementsByName("steps")[0].value === "538.0"`)
}

func TestBrokenEscapeByAClick(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	s.Trimmed(t, "follows no such link, and no page has one")
	p := s.NewPage(t)
	p.Open("/measure/#" + heron)
	browser.Eval[bool](p, `(() => {
		const link = document.createElement("a");
		link.href = "../swap/#v=1&steps=5%";
		document.querySelector("main").append(link);
		link.click();
		return true;
	})()`)
	waitForSheet(p, "swap")
	assert.Equal(t, problemsOf(t, p), shownProblems(p))
}

// hash goes to another fragment, as who pastes a link over the one that shows.
func hash(p *browser.Page, fragment string) {
	p.T().Helper()
	text, err := json.Marshal("#" + fragment)
	require.NoError(p.T(), err)
	browser.Eval[bool](p, `((location.hash = `+string(text)+`), true)`)
	p.Settle()
}

func TestBrokenEscapeFromTheLogAndThePasteField(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/log/")
	entries := logbook.Example()[:2]
	for i, sheet := range []string{"%", "v=1&steps=538&x=%zz"} {
		entries[i].Page, entries[i].Sheet = "measure", sheet
	}
	fillLog(p, entries)
	for i, e := range entries {
		p.Open("/log/")
		press(p, "#open-"+e.ID)
		waitForSheet(p, "measure")
		assert.Equal(t, problemsOf(t, p), shownProblems(p), "entry %d", i)
		assert.NotEmpty(t, shownProblems(p), "entry %d", i)
	}
	for _, fragment := range []string{"%", "v=1&steps=538&x=%zz", cutLink} {
		p.Open("/")
		p.Fill("pasted", "https://elsewhere.example/measure/#"+fragment)
		p.Click("#open")
		waitForSheet(p, "measure")
		assert.NotEmpty(t, shownProblems(p), fragment)
	}
}

// randomFragments are texts of random bytes, half of them with marks of links among them.
func randomFragments(n int) []string {
	random := rand.New(rand.NewPCG(17, 11))
	marks := []string{"%", "%2", "%zz", "%41", "&", "=", ",", "v=1&", "steps=", "rest=", "saw=", "was-asked=", "#", "\u202e"}
	texts := make([]string, n)
	for i := range texts {
		var b strings.Builder
		for range 1 + random.IntN(40) {
			if i%2 == 1 && random.IntN(2) == 0 {
				b.WriteString(marks[random.IntN(len(marks))])
			} else {
				b.WriteRune(rune(random.IntN(256))) // a page can be given no halves of a character
			}
		}
		texts[i] = b.String()
	}
	return texts
}

// Whatever stands behind the #, the page lives, and says what calc says of it. A share of them
// is tried, all in scripts/test full.
func TestRandomFragments(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/convert/")
	const group = 50
	n := 300
	if full() {
		n = 1000
	}
	all, broken := randomFragments(n), 0
	for len(all) > 0 {
		some := all[:group]
		all = all[group:]
		text, err := json.Marshal(some)
		require.NoError(t, err)
		// Each is heard of before the next one comes.
		stopped := browser.Eval[string](p, `(async () => {
			for (const fragment of `+string(text)+`) {
				location.hash = "#" + fragment;
				await new Promise((r) => setTimeout(r));
				if (document.documentElement.dataset.app !== "ready") return fragment;
			}
			return "";
		})()`)
		require.Empty(t, stopped, "the page has stopped")
		p.Settle()
		assert.Equal(t, problemsOf(t, p), shownProblems(p), some[group-1])
		for _, fragment := range some {
			if _, rest, found := strings.Cut(fragment, "%"); found && !isEscape(rest) {
				broken++
			}
		}
	}
	t.Logf("%d of %d fragments began with a broken escape", broken, n)
	assert.Greater(t, broken, n/10)
	p.Show("/measure/#" + heron)
	p.WaitReady() // of a browser that takes no more steps by now: see web/address.js
	assert.NotEmpty(t, answerOf(p))
}

func isEscape(rest string) bool {
	const digits = "0123456789abcdefABCDEF"
	return len(rest) >= 2 && strings.Contains(digits, rest[:1]) && strings.Contains(digits, rest[1:2])
}
