package pages

import (
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

const (
	askersSheet = "v=1&steps=538.0&asked=80&mark=105&tool=caliper-0.05&rest=28.7,28.9,28.6,28.8,28.5,28.7"
	askersLink  = "/measure/#" + askersSheet + "&saw=steps:563.8386:1.47:2026-11"
)

// One asks, another corrects an entry and replies, and the first sees what was
// changed, what that does, and can go back.
func TestThreadByLinks(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	asker := s.NewPage(t)
	asker.Open("/measure/#" + askersSheet)
	asker.Click("#copy-link")
	asker.Wait(`document.getElementById("said").textContent === "Link copied."`)
	link := asker.Clipboard()

	helper := s.NewPage(t)
	helper.Open("/" + strings.TrimPrefix(link, s.URL))
	assert.Contains(t, helper.Text("#check"), "Same result as when this sheet was sent")
	assert.False(t, browser.Eval[bool](helper, `!!document.getElementById("compared")`))
	helper.Fill("asked", "90")
	helper.Wait(`document.getElementById("compared")`)
	assert.Contains(t, helper.Text("#check"), "1 entry changed since this sheet was sent or saved")
	helper.Click("#check a")
	assert.Equal(t, "compared", browser.Eval[string](helper, `document.activeElement.id`))
	assert.Contains(t, helper.Text("#compared table"), "Commanded length")
	assert.Contains(t, helper.Text(".before-after"), "Result before: "+asker.Text(".headline .measured"))
	assert.Contains(t, helper.Text(".before-after"), "after: "+helper.Text(".headline .measured"))
	helper.Click("#reply")
	helper.Wait(`document.getElementById("said").textContent.startsWith("Link copied. It shows")`)
	reply := helper.Clipboard()
	assert.Contains(t, reply, "/#v=1&saw=steps:")
	assert.Contains(t, reply, "&was-asked=80")
	assert.Contains(t, helper.Text(".was"), "was 80 mm", "beside the entry")
	helper.Reload()
	assert.Contains(t, helper.Text("#check"), "1 entry changed", "the page's own address knows it too")
	helper.Click("#as-received")
	helper.Wait(`document.getElementById("f-asked").value === "80" && !document.getElementById("compared")`)
	helper.Back()
	helper.Wait(`document.getElementById("f-asked").value === "90"`)

	asker.Open("/" + strings.TrimPrefix(reply, s.URL))
	assert.Contains(t, asker.Text("#check"), "⇄ Changed by the sender")
	assert.Contains(t, asker.Text("#check"), "The sender changed 1 entry")
	assert.NotContains(t, asker.Text("#check"), "✓")
	assert.Contains(t, asker.Text(".was"), "was 80 mm")
	assert.Contains(t, asker.Text("#compared h2"), "Changed by the sender")
	asker.NoSidewaysScrolling()
	asker.Click("#as-received")
	asker.Wait(`document.getElementById("f-asked").value === "80"`)
	asker.Back() // having had a look
	asker.Wait(`document.getElementById("f-asked").value === "90"`)
	assert.Contains(t, asker.Text("#compared h2"), "Changed by the sender", "still")
	assert.Contains(t, asker.Text("#check"), "Changed by the sender")
	assert.Contains(t, browser.Eval[string](asker, `document.getElementById("copy-link").dataset.copy`), "&was-asked=80", "whichever link is copied")
}

// Before the calculator is there, the page shows what the link holds and what
// its sender saw.
func TestLinkIsReadableAtOnce(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	gate := make(chan struct{})
	s.Intercept(answer(isProgram, func(w http.ResponseWriter, _ *http.Request) { serveHalf(t, w, gate) }))
	p := s.NewPage(t)
	p.Load(askersLink)
	p.Wait(`!document.getElementById("check").hidden`)
	assert.Contains(t, shownText(p, "#check"), "The sender saw 563.8 ± 1.5 steps/mm. Checking…")
	assert.Equal(t, "80", p.Field("asked"))
	assert.Equal(t, "538.0", p.Field("steps"))
	assert.Equal(t, "caliper-0.05", browser.Eval[string](p, `document.getElementById("f-tool").value`))
	assert.Contains(t, p.Text("#check .also"), "Remaining: 28.7, 28.9, 28.6, 28.8, 28.5, 28.7", "more than there are fields")
	p.Fill("mark", "106") // while it loads
	close(gate)
	p.WaitReady()
	assert.Equal(t, "106", p.Field("mark"), "what was typed meanwhile stays")
	assert.Equal(t, 6, browser.Eval[int](p, `document.querySelectorAll("input[name=rest]").length`))
	p.Wait(`document.getElementById("compared")`)
	assert.Contains(t, p.Text("#check"), "1 entry changed since", "nothing else of the page counts as typed")
}

// shownText is an element's text less what is hidden in it.
func shownText(p *browser.Page, selector string) string {
	return browser.Eval[string](p, `document.querySelector("`+selector+`").innerText`)
}

func TestLinkIsReadableWithoutTheCalculator(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	s.Intercept(answer(isProgram, notFound))
	p := s.NewPage(t)
	p.Allow("404")
	p.Allow("could not be loaded")
	p.Allow("offline use is off")
	p.Load(askersLink + "&trip=sides&nozzle=%3Cimg%20src=x%20onerror=alert(1)%3E")
	p.WaitFailed()
	assert.Contains(t, shownText(p, "#check"), "The sender saw 563.8 ± 1.5 steps/mm. Not checked: the calculator isn't running.")
	assert.Contains(t, p.Text("#check .also"), "nozzle: <img src=x onerror=alert(1)>", "text, whatever it is")
	assert.Zero(t, browser.Eval[int](p, `document.querySelectorAll("main img").length`))
}

// What is no number is never shown as a result.
func TestOddClaimsShowNothing(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	s.Intercept(answer(isProgram, notFound))
	for _, saw := range []string{"steps:5б4", "steps:NaN", "steps:1e999", "steps:", "steps:" + strings.Repeat("9", 400), "<b>:x", "%"} {
		p := s.NewPage(t)
		p.Allow("404")
		p.Allow("could not be loaded")
		p.Allow("offline use is off")
		p.Load("/measure/#v=1&asked=80&saw=" + saw)
		require.NotEmpty(t, p.WaitFailed())
		assert.NotContains(t, p.Text("#check"), "The sender saw", saw)
		assert.Equal(t, "80", p.Field("asked"))
	}
}

// A sentence with a link that a forum has mangled in it is enough.
func TestPastedSentenceWithAMangledLink(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/")
	p.Fill("pasted", "I got this one (see https://elsewhere.example/club/measure/#"+strings.ReplaceAll(askersSheet, "&", "&amp;")+"), is it right?")
	p.Click("#open")
	p.Wait(`document.getElementById("f-asked")?.value === "80"`)
	assert.Contains(t, p.Text("#problems"), "The link was damaged on the way and has been repaired")
	assert.InDelta(t, 538*80/76.3, p.Value("out-steps"), 1e-6)
}

// A link made before the ± was worked out as today is no reason to doubt its sender.
func TestLinkOfAnEarlierEdition(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	link := strings.Replace(askersLink, "563.8386", "564.0891219", 1)
	p.Open(link)
	assert.Contains(t, p.Text("#check"), "Same value; the ± has been worked out differently since 2026-12.")
	assert.False(t, browser.Eval[bool](p, `document.getElementById("check").classList.contains("differs")`))
	p.Open(strings.Replace(link, "564.0891219", "546.8386", 1))
	assert.Contains(t, p.Text("#check"), "Differs: the link said 546.8 ± 1.5 steps/mm; these entries give 564.1")
	assert.True(t, browser.Eval[bool](p, `document.getElementById("check").classList.contains("differs")`))
}

// A link that was damaged in the address bar: its first sight is not taken for typing, its mark is
// found, and what differs leads to the reason.
func TestDamagedAddresses(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	saw, sheet := "saw=steps:564.0891219:1.47:2026-11", strings.TrimPrefix(askersSheet, "v=1&")
	p.Open("/measure/#v=1&" + saw + "&" + strings.Replace(sheet, "28.9", "28.%0A9", 1))
	assert.Contains(t, p.Text("#check"), "Same value", "nobody has typed anything")
	p.Open("/measure/?v=1&" + saw + "&" + sheet)
	assert.Equal(t, "80", p.Field("asked"))
	assert.Contains(t, p.Text("#problems"), "“?” was read as “#”.")
	assert.Contains(t, p.Text("#check"), "Same value")
	assert.Equal(t, "", browser.Eval[string](p, `location.search`))
	p.Open("/measure/#v=1&" + saw + "&" + strings.Replace(sheet, "mark=105", "ma=105", 1))
	assert.Contains(t, p.Text("#check"), "Differs: the link said 564.1 ± 1.5 steps/mm; these entries give no result.")
	p.Click("#check a")
	assert.Equal(t, "problems", browser.Eval[string](p, `document.activeElement.id`))
	assert.Contains(t, p.Text("#problems"), "“ma” in the link isn't a field")
}

// What is pasted on the start page may have lines: a quoted link, or the plain text of a post
// without one.
func TestPastedLinesAndPosts(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	paste := func(text string) {
		p.Open("/")
		p.Fill("pasted", text)
		p.Click("#open")
		p.Wait(`document.getElementById("f-asked")?.value === "80"`)
	}
	paste("> He wrote:\n> https://club.example/measure/#" + strings.Replace(askersSheet, "&mark", "&ma\n> rk", 1) + "\n> Is it right?")
	assert.Equal(t, "105", p.Field("mark"))
	p.Click("#post summary")
	p.Wait(`document.getElementById("post-text")`)
	post, _, _ := strings.Cut(p.Text("#post-text"), "\nSheet to check")
	paste(post)
	assert.Equal(t, "105", p.Field("mark"))
	assert.Equal(t, "caliper-0.05", browser.Eval[string](p, `document.getElementById("f-tool").value`))
	assert.Contains(t, p.Text("#problems"), "This sheet was read from the text of a post.")
	assert.InDelta(t, 538*80/76.3, p.Value("out-steps"), 1e-6)
}

// A remark goes with a reply, as text.
func TestRemarkOfAReply(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open(askersLink)
	p.Fill("mark", "120")
	p.Wait(`document.getElementById("remark")`)
	p.Fill("remark", "Wasn't it 120? <img src=x>")
	p.Wait(`document.getElementById("reply").dataset.copy.includes("remark=")`)
	reply := browser.Eval[string](p, `document.getElementById("reply").dataset.copy`)
	p.Open("/" + strings.TrimPrefix(reply, s.URL))
	assert.Contains(t, p.Text("#told"), "Wasn't it 120? <img src=x>")
	assert.Zero(t, browser.Eval[int](p, `document.querySelectorAll("main img").length`))
	assert.Contains(t, p.Text(".was"), "was 105 mm")
}
