package pages

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// A walk goes through a test, one card at a time, as somebody does at the machine.
type walk struct {
	*browser.Page
	t        *testing.T
	readings []string          // that are typed where one is due, in turn
	checks   []string          // the same of check runs
	entries  map[string]string // that are typed or chosen, by the card that asks for them
	cards    []string          // that showed
	at       func(card string) // is called at each
	most     int               // cards
}

func newWalk(t *testing.T, p *browser.Page) *walk {
	return &walk{Page: p, t: t, entries: map[string]string{}, most: 80}
}

// shown is the card that shows.
func (w *walk) shown() string {
	return browser.Eval[string](w.Page, `document.getElementById("card").dataset.card`)
}

// waitFor waits until another card shows than one.
func (w *walk) waitFor(other string) {
	w.Wait(`document.getElementById("card")?.dataset.card !== ` + strconv.Quote(other))
	w.Settle()
}

// pad types on the page's own pad.
func (w *walk) pad(text string) {
	w.t.Helper()
	for _, key := range text {
		id := string(key)
		if id == "," {
			id = "."
		}
		browser.Eval[bool](w.Page, `(document.getElementById("pad-`+id+`").click(), true)`)
	}
	w.Wait(`document.getElementById("run-entry").value === ` + strconv.Quote(text))
}

// tap taps once the card has been there for a moment: a tap before is one that slipped.
func tap(p *browser.Page, selector string) {
	p.T().Helper()
	browser.Eval[bool](p, `new Promise((done) => setTimeout(() => done(true), 260))`)
	p.Click(strings.ReplaceAll(selector, ".", `\.`))
}

// step does what the card says, and goes on to the next.
func (w *walk) step() (next bool) {
	w.t.Helper()
	card := w.shown()
	w.cards = append(w.cards, card)
	if w.at != nil {
		w.at(card)
	}
	name, _, _ := strings.Cut(strings.TrimPrefix(card, "check-"), "-")
	switch {
	case card == "save":
		return false
	case has(w.Page, "#run-entry"):
		text, ok := w.entries[card]
		if !ok && (name == "read" || name == "up" || name == "down") {
			of := &w.readings
			if strings.HasPrefix(card, "check-") {
				of = &w.checks
			}
			require.NotEmpty(w.t, *of, "no reading for %s: %s", card, w.Address())
			text, *of = (*of)[0], (*of)[1:]
		}
		if text != "" && browser.Eval[string](w.Page, `document.getElementById("run-entry").value`) == "" {
			w.pad(text)
		}
	case has(w.Page, ".run-options"):
		choice, ok := w.entries[card]
		require.True(w.t, ok, "nothing is said for %s", card)
		tap(w.Page, "#option-"+choice)
		w.waitFor(card)
		return true
	case has(w.Page, "#copy-send"): // lines
		tap(w.Page, "#run-next")
		w.Wait(`!document.getElementById("run-next").textContent.includes("sent")`)
	}
	tap(w.Page, "#run-next")
	w.waitFor(card)
	return true
}

// through goes to the end of the test.
func (w *walk) through() {
	w.t.Helper()
	for range w.most {
		if !w.step() {
			return
		}
	}
	require.Fail(w.t, "no end", "%v", w.cards)
}

// Whole tests of each sort lead to their answers, and what was typed stands in the sheet.
func TestRunToTheAnswer(t *testing.T) {
	browser.Alongside(t)
	for _, of := range []struct {
		name, sheet string
		readings    string
		entries     map[string]string
		set         string // what is to be set; empty where nothing is
	}{
		{
			"from nothing", "", "28.7 28.9 28.6 | 25.1 25.0 24.9",
			map[string]string{"ask-axis": "feed", "ask-steps": "538.0", "ask-tool": "caliper-0.05"},
			"564.3 steps/mm",
		},
		{"fed lengths", "v=1&steps=420&asked=100&read=fed&speed=60&tool=caliper-0.05", "95.1 95.0 95.2 | 100 100.1 99.9 100", nil, "441.9 steps/mm"},
		{
			"several speeds", "v=1&steps=420&trial=speeds&read=fed&asked=50&tool=caliper-0.05&at=60,120,180,60,120,180,60,120,180",
			"47.5 47.55 47.5 47.45 47.5 47.5 47.5 47.5 47.5", nil, "442",
		},
		{"one length", "v=1&axis=travel&steps=80&asked=100&speed=600&tool=caliper-0.02", "98.02 98 98.04 | 100 100.02 99.98 100", nil, "81.62 steps/mm"},
		{
			"several lengths", "v=1&axis=travel&steps=80&trip=lengths&speed=600&tool=caliper-0.02",
			"20.1 60.1 100.1 20.12 60.1 100.08", map[string]string{"choose-1": "20", "choose-2": "60", "choose-3": "100", "choose-4": "20", "choose-5": "60", "choose-6": "100"}, "",
		},
		{"both sides", "v=1&axis=travel&steps=80&trip=sides&speed=600&tool=caliper-0.02&target=10,100,10,100", "10.04 9.96 102.04 101.96 10.04 9.96 102.04 101.96", nil, "78.2"},
		{"rotary", "v=1&axis=rotary&stepsdeg=26.6667&askeddeg=3600", "3480 3481 3480 | 3600 3601 3600 3600", map[string]string{"ask-tooldeg": "gauge-0.1"}, "27.5"},
	} {
		t.Run(of.name, func(t *testing.T) {
			p := browser.NewSite(t).NewPage(t)
			p.Open("/run/#" + of.sheet)
			w := newWalk(t, p)
			first, checks, _ := strings.Cut(of.readings, "|")
			w.readings, w.checks, w.entries = strings.Fields(first), strings.Fields(checks), of.entries
			set := ""
			w.at = func(card string) {
				if card == "set" {
					set = p.Text("#card-says")
				}
			}
			w.through()
			assert.Contains(t, set, of.set, "%v", w.cards)
			// The sheet of Calibrate has all of it.
			p.Click("#to-sheet")
			p.Wait(`location.pathname.endsWith("/measure/")`)
			p.Settle()
			assert.NotEmpty(t, p.Text("#verdict"))
		})
	}
}

// A page that is lost at any card goes on there, with all that was typed: loaded anew, or opened from
// the start page in another tab.
func TestRunGoesOnAfterTheTabIsLost(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/run/#v=1&steps=538.0&asked=80&speed=900&mark=105&tool=caliper-0.05")
	w := newWalk(t, p)
	w.readings, w.checks = strings.Fields("28.7 28.9 28.6"), strings.Fields("25.1 25.0 24.9")
	n := 0
	w.at = func(card string) {
		address := p.Address()
		p.Reload()
		assert.Equal(t, card, w.shown(), "after a reload")
		if key := strings.TrimPrefix(card, "check-"); key == "read-2" {
			w.pad("2")
			p.Reload()
			assert.Equal(t, "2", browser.Eval[string](p, `document.getElementById("run-entry").value`), "half a reading")
			browser.Eval[bool](p, `(document.getElementById("pad-erase").click(), true)`)
			p.Wait(`document.getElementById("run-entry").value === ""`)
			address = p.Address()
		}
		if n++; n%4 != 0 {
			return
		}
		other := p.Beside() // as the battery was empty: only the device knows
		other.Open("/run/")
		other.Click("#run-again")
		other.Wait(`document.getElementById("card").dataset.card === ` + strconv.Quote(card))
		assert.Equal(t, address, other.Address())
	}
	w.through()
	assert.Contains(t, w.cards, "check-after-3")
	assert.Contains(t, p.Address(), "rest=28.7,28.9,28.6&tool=caliper-0.05&restagain=25.1,25.0,24.9")
}

// The countdown goes by the clock: through a reload, and when the device slept.
func TestRunCountsByTheClock(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/run/#v=1&steps=538.0&asked=80&speed=60&mark=105&card=move-1")
	require.Equal(t, "I've sent it", p.Text("#run-next"))
	address := p.Address()
	tap(p, "#run-next")
	p.Wait(`document.getElementById("run-count")`)
	seconds := func() int {
		m, s, _ := strings.Cut(p.Text("#run-count"), ":")
		minutes, err := strconv.Atoi(m)
		require.NoError(t, err)
		rest, err := strconv.Atoi(s)
		require.NoError(t, err)
		return 60*minutes + rest
	}
	first := seconds()
	assert.InDelta(t, 83, first, 3, "80 s and a moment to settle")
	p.Reload()
	p.Wait(`document.getElementById("run-count")`)
	assert.LessOrEqual(t, seconds(), first)
	assert.Greater(t, seconds(), first-30)
	assert.Equal(t, address, p.Address(), "no address carries the clock")
	// The device slept.
	browser.Eval[bool](p, `((now) => { Date.now = () => now() + 120000; return true; })(Date.now.bind(Date))`)
	p.Wait(`document.querySelector("p.run-count")?.textContent === "Over"`)
	assert.Equal(t, "Next", p.Text("#run-next"))
	tap(p, "#run-next")
	p.Wait(`document.getElementById("card").dataset.card === "read-1"`)
	p.Back()
	p.Wait(`document.getElementById("card").dataset.card === "move-1"`)
	p.Settle()
	assert.Contains(t, p.Text("#card"), "You've sent these lines", "the move is over: its count is not taken up again")
	assert.Equal(t, "Next", p.Text("#run-next"))
}

// The phone's Back is the card's Back, and loses nothing; the sheet leads back to the card.
func TestRunGoesBackAndKeepsAll(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/run/#v=1&steps=538.0&asked=80&speed=900&mark=105&tool=caliper-0.05&card=mark-1")
	w := newWalk(t, p)
	w.readings = strings.Fields("28.7 28.9")
	for w.shown() != "read-2" {
		w.step()
	}
	w.pad("28.9")
	for _, card := range []string{"move-2", "mark-2", "after-1", "read-1", "move-1"} {
		before := w.shown()
		p.Back()
		w.waitFor(before)
		require.Equal(t, card, w.shown())
		assert.Contains(t, p.Address(), "rest=28.7,28.9", card)
	}
	p.Forward()
	w.waitFor("move-1")
	assert.Equal(t, "read-1", w.shown())
	assert.Equal(t, "28.7", browser.Eval[string](p, `document.getElementById("run-entry").value`))
	p.Click("#to-sheet")
	p.Wait(`location.pathname.endsWith("/measure/")`)
	p.Settle()
	assert.Equal(t, "28.7", p.Field("rest"))
	p.FillNth("rest", 1, "28.8")
	p.Settle()
	p.Wait(`location.hash.includes("28.8")`)
	p.Wait(`document.getElementById("run-it").href.includes("28.8")`)
	p.Click("#run-it")
	p.Wait(`document.getElementById("card")?.dataset.card === "read-1"`)
	assert.Contains(t, p.Address(), "rest=28.7,28.8")
	// Another sheet is another test: going back to it does not mix them.
	p.Show("/run/#v=1&axis=travel&steps=80&asked=100&speed=600&card=read-1")
	p.Wait(`document.getElementById("card").dataset.card === "read-1" && location.hash.includes("travel")`)
	w.pad("98.5")
	p.Back()
	p.Wait(`location.hash.includes("28.8")`)
	p.Settle()
	assert.NotContains(t, p.Address(), "98.5")
}

// An unlikely reading is asked about at once, and taken when it is meant; what is no number is not.
func TestRunDoubtsAReading(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/run/#v=1&steps=538.0&asked=80&speed=60&mark=105&rest=28.7,28.9&card=read-3")
	w := newWalk(t, p)
	assert.Contains(t, p.Text("#card"), "About 25 mm if all is right; 28.9 last time.")
	tap(p, "#run-next")
	p.Settle()
	assert.Contains(t, p.Text("#run-problem"), "Remaining: type what you read")
	w.pad("287")
	tap(p, "#run-next")
	p.Wait(`document.getElementById("run-doubt")`)
	assert.Equal(t, "287 mm? It would have moved -182 mm, of 80 mm commanded.", p.Text("#run-doubt"))
	assert.Equal(t, "Yes, 287", p.Text("#run-yes"))
	assert.Equal(t, "It's 28.7", p.Text("#run-next"))
	tap(p, "#run-next")
	w.waitFor("read-3")
	assert.Equal(t, "after-3", w.shown())
	assert.Contains(t, p.Address(), "rest=28.7,28.9,28.7")
	tap(p, "#run-redo")
	w.waitFor("after-3")
	assert.NotContains(t, p.Address(), "28.9,28.7", "a run that is made again has no reading")
	p.Open("/run/#v=1&steps=538.0&asked=80&speed=60&mark=105&rest=28.7,28.9&card=read-3")
	w.pad("40")
	tap(p, "#run-next")
	p.Wait(`document.getElementById("run-doubt")`)
	tap(p, "#run-next")
	w.waitFor("read-3")
	assert.Contains(t, p.Address(), "rest=28.7,28.9,40", "what is meant is taken")
	tap(p, "#run-aside")
	p.Wait(`location.hash.includes("aside=,,yes")`)
	assert.Equal(t, "Count this run", p.Text("#run-aside"))
	p.Open("/run/#v=1&steps=538.0&asked=80&speed=60&mark=105&card=read-1")
	w.pad("2.8.7")
	tap(p, "#run-next")
	p.Settle()
	assert.Contains(t, p.Text("#run-problem"), "2.8.7")
	assert.Equal(t, "read-1", w.shown())
}

// What else may have happened has a button, and says what to look at.
func TestRunWhereNothingMoved(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	for trouble, of := range map[string][2]string{"still": {"driver", "move-1"}, "back": {"direction", "mark-1"}, "gone": {"farther out", "ask-mark"}} {
		p.Open("/run/#v=1&steps=538.0&asked=80&speed=60&mark=105&card=read-1")
		p.Click("#trouble-" + trouble)
		p.Wait(`document.getElementById("card").dataset.card === "` + trouble + `-1"`)
		p.Settle()
		assert.Contains(t, p.Text("#card"), of[0])
		tap(p, "#run-next")
		p.Wait(`document.getElementById("card").dataset.card === "` + of[1] + `"`)
	}
}

// The setting goes to the machine, the sheet into the log; without a machine it is saved by a name.
func TestRunSetsTheMachine(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, keptHeron)
	p.Click(`.machine-do > a[href*="/run/"]`)
	p.Wait(`document.getElementById("card")`)
	w := newWalk(t, p)
	w.entries["ask-speed"] = "900"
	w.readings, w.checks = strings.Fields("28.7 28.9 28.6"), strings.Fields("25.1 25.0 24.9")
	assert.Contains(t, p.Text(".run-top"), "Heron extruder")
	w.through()
	assert.Contains(t, keptMachines(p)["k3x9"], "steps=564.3", "%v", w.cards)
	assert.False(t, has(p, "#run-name"), "the machine has a name")
	tap(p, "#run-next")
	p.Wait(`document.getElementById("run-saved")`)
	p.Open("/run/")
	assert.False(t, has(p, "#run-again"), "the test is over")
	assert.True(t, has(p, "#run-machine-k3x9"))
	p.Open("/log/")
	assert.Equal(t, 1, browser.Eval[int](p, `document.querySelectorAll(".log > li").length`), "a test stands in the log once")

	p.Open("/run/#v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6&card=save")
	tap(p, "#run-next")
	p.Settle()
	assert.Contains(t, p.Text("#run-problem"), "please enter a name")
	p.Fill("run-name", "Plover")
	tap(p, "#run-next")
	p.Wait(`document.getElementById("run-saved")`)
	p.Open("/log/")
	assert.Contains(t, p.Text(".log"), "Plover")
}

// A setting that the machine does not have any more asks first.
func TestRunAsksWhichSetting(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, keptHeron)
	p.Open("/run/#v=1&steps=500&asked=80&mark=105&rest=28.7,28.9,28.6&id=k3x9&machine=Heron&card=after-3")
	p.Wait(`document.getElementById("setting-sheet")`)
	p.Click("#setting-sheet")
	p.Wait(`!document.getElementById("setting-sheet")`)
	assert.Contains(t, p.Text("#card-says"), "Change it")
}

// The line of a stranger's link is shown, and not offered.
func TestRunOffersNoStrangersLine(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/run/#v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6&line=M302%20E%7Bvalue%7D&card=set")
	assert.NotContains(t, p.Text("#card"), "M302")
	assert.Contains(t, p.Text("#card"), "M92 E564.3", "the page's own")
	for _, card := range []string{"slack", "move-1"} {
		p.Open("/run/#v=1&steps=538.0&asked=80&mark=105&line=M302%20E%7Bvalue%7D&begin=M500&card=" + card)
		assert.NotContains(t, browser.Eval[string](p, `document.querySelector("#card .code code").textContent`), "M5")
	}
}

// Keys go through it: of the pad, of a keyboard, and the one that goes on.
func TestRunByKeyboard(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/run/#v=1&steps=538.0&asked=80&speed=60&mark=105&card=read-1")
	w := newWalk(t, p)
	assert.Equal(t, "none", browser.Eval[string](p, `document.getElementById("run-entry").inputMode`), "the system's keyboard stays away")
	p.Focus("run-entry", 0)
	p.Press("28,7")
	p.Press("\r")
	w.waitFor("read-1")
	assert.Equal(t, "after-1", w.shown())
	assert.Contains(t, p.Address(), "rest=28.7")
	assert.Equal(t, "card-says", browser.Eval[string](p, active), "the card is read out")
	p.Open("/run/#v=1&steps=538.0&asked=80&speed=60&mark=105&card=read-1")
	p.Click("#run-keyboard")
	p.Wait(`document.getElementById("run-entry").inputMode === "decimal"`)
	assert.False(t, has(p, ".pad"))
	p.Click("#run-keyboard")
	p.Wait(`document.querySelector(".pad")`)
	w.pad("28.71")
	browser.Eval[bool](p, `(document.getElementById("pad-erase").click(), true)`)
	p.Wait(`document.getElementById("run-entry").value === "28.7"`)
}

// runCards are a card of each sort.
func runCards() map[string]string {
	const feed, travel = "v=1&steps=538.0&asked=80&speed=60&mark=105&tool=caliper-0.05&rest=28.7,28.9,28.6", "v=1&axis=travel&steps=80&asked=100&speed=600&tool=caliper-0.02&moved=98.02,98,98.04"
	cards := map[string]string{"begin": ""}
	for _, card := range strings.Fields("ask-axis ask-steps ask-asked ask-mark ask-speed ask-tool ready-1 ready-2 ready-3 ready-4 care slack mark-4 move-4 read-4 after-3 still-4 back-4 gone-4 result set check-mark-1 check-move-1 check-read-1 save") {
		cards[card] = feed + "&card=" + card
	}
	for _, card := range strings.Fields("ready-1 care zero-4 move-4 read-4 return-4 after-3 still-4") {
		cards["travel "+card] = travel + "&card=" + card
	}
	for _, card := range strings.Fields("choose-1 to-up-1 up-1 to-down-1 down-1") {
		cards["sides "+card] = "v=1&axis=travel&steps=80&trip=sides&speed=600&target=10&card=" + card
	}
	return cards
}

// Cards fill the screen and no more: nothing is scrolled to, and nothing to tap is below 56 px high.
func TestRunCardsFitTheScreen(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	for _, size := range [][2]int64{{360, 740}, {360, 640}, {320, 640}, {740, 360}} {
		p.Viewport(size[0], size[1])
		for name, sheet := range runCards() {
			p.Show("/run/#" + sheet)
			if name == "begin" {
				p.Wait(`document.getElementById("card")`)
			} else {
				_, card, _ := strings.Cut(sheet, "card=")
				p.Wait(`document.getElementById("card")?.dataset.card === ` + strconv.Quote(card))
			}
			p.Settle()
			where := fmt.Sprint(name, " at ", size)
			p.NoSidewaysScrolling()
			below := browser.Eval[[]string](p, `[...document.querySelectorAll("#card button, #card a, #run-entry")].filter((e) => e.getClientRects().length && (e.getBoundingClientRect().bottom > innerHeight + 1 || e.getBoundingClientRect().top < 0)).map((e) => e.id || e.textContent)`)
			assert.Empty(t, below, "%s: is scrolled to", where)
			covered := browser.Eval[[]string](p, `(() => {
				const bar = document.querySelector(".run-do").getBoundingClientRect();
				return [...document.querySelectorAll(".run-card :is(button, a, input)")].filter((e) => e.getClientRects().length).filter((e) => { const b = e.getBoundingClientRect(); return b.bottom > bar.top + 1 && b.top < bar.bottom && b.right > bar.left + 1 && b.left < bar.right - 1; }).map((e) => e.id);
			})()`)
			assert.Empty(t, covered, "%s: lies below the buttons", where)
			small := browser.Eval[[]string](p, `[...document.querySelectorAll("#card button, #card a")].filter((e) => e.getClientRects().length && (e.getBoundingClientRect().height < 55.9 || e.getBoundingClientRect().width < 55.9)).map((e) => (e.id || e.textContent) + " " + e.getBoundingClientRect().width + " x " + e.getBoundingClientRect().height)`)
			assert.Empty(t, small, "%s: is small", where)
			if has(p, "#run-entry") {
				assert.GreaterOrEqual(t, browser.Eval[float64](p, `parseFloat(getComputedStyle(document.getElementById("run-entry")).fontSize)`), 32.0, where)
			}
		}
	}
}

// Every card is one for all: by the rules that a program can check, and at 400 %.
func TestRunCardsAreAccessible(t *testing.T) {
	browser.Alongside(t)
	rules := axeRules(t)
	p := browser.NewSite(t).NewPage(t)
	p.Viewport(360, 740)
	for name, sheet := range runCards() {
		p.Show("/run/#" + sheet)
		p.Settle()
		axeFinds(t, p, rules, name)
	}
	p.Viewport(320, 256) // 1280 x 1024 at 400 %
	for name, sheet := range runCards() {
		p.Show("/run/#" + sheet)
		p.Settle()
		p.NoSidewaysScrolling()
		require.True(t, has(p, "#card-says"), name)
	}
}

// The screen stays awake while a test is at the machine, and is given back; where it can't, the first
// of its cards says so. A sign comes at the end of a move, where it was switched on.
func TestRunKeepsTheScreenAwake(t *testing.T) {
	browser.Alongside(t)
	const sheet = "/run/#v=1&steps=538.0&asked=80&speed=60&mark=105&tool=caliper-0.05&rest=28.7,28.9,28.6&card="
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Before(`
		window.locks = 0; window.signs = 0;
		Object.defineProperty(navigator, "wakeLock", { value: { request: async () => { locks++; const l = new EventTarget(); l.release = async () => { locks--; l.dispatchEvent(new Event("release")); }; return l; } } });
		Object.defineProperty(navigator, "vibrate", { value: () => { signs++; return true; } });
	`)
	p.Open(sheet + "ready-1")
	assert.Zero(t, browser.Eval[int](p, `locks`))
	p.Show(sheet + "move-4")
	p.Wait(`document.getElementById("card").dataset.card === "move-4" && locks === 1`)
	assert.NotContains(t, p.Text("#card"), "go dark")
	assert.Equal(t, "Signal at the end: off", p.Text("#run-sign"))
	tap(p, "#run-sign")
	p.Wait(`document.getElementById("run-sign").textContent.endsWith("on")`)
	tap(p, "#run-next")
	p.Wait(`document.getElementById("run-count")`)
	assert.Zero(t, browser.Eval[int](p, `signs`))
	browser.Eval[bool](p, `((now) => { Date.now = () => now() + 120000; return true; })(Date.now.bind(Date))`)
	p.Wait(`signs === 1`)
	tap(p, "#run-next")
	p.Wait(`document.getElementById("card").dataset.card === "read-4"`)
	assert.Equal(t, 1, browser.Eval[int](p, `locks`), "it is asked for once")
	p.Show(sheet + "result")
	p.Wait(`document.getElementById("card").dataset.card === "result" && locks === 0`)

	p = s.NewPage(t)
	p.Before(`Object.defineProperty(navigator, "wakeLock", { value: undefined });`)
	p.Open(sheet + "slack")
	p.Wait(`document.getElementById("card").textContent.includes("it may go dark during a move")`)
}

// Nobody needs a finger on the screen: every card is reached and left by Tab and Enter.
func TestRunWithoutATap(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/run/#v=1&steps=538.0&asked=80&speed=900&mark=105&rest=28.7,28.9&card=ready-1")
	w := newWalk(t, p)
	for _, card := range strings.Fields("ready-1 ready-2 ready-3 ready-4 care slack mark-3 move-3 read-3 after-3") {
		require.Equal(t, card, w.shown())
		if card == "read-3" {
			require.Equal(t, "run-entry", browser.Eval[string](p, active), "the field has the focus")
			p.Press("28.6")
		}
		for range 2 {
			for n := 0; browser.Eval[string](p, active) != "run-next"; n++ {
				require.Less(t, n, 40, "Tab does not come to the main button of %s", card)
				p.Press("\t")
			}
			if card != "slack" && card != "move-3" || !strings.Contains(p.Text("#run-next"), "sent") {
				break
			}
			browser.Eval[bool](p, `new Promise((done) => setTimeout(() => done(true), 260))`)
			p.Press("\r")
			p.Wait(`!document.getElementById("run-next").textContent.includes("sent")`)
		}
		browser.Eval[bool](p, `new Promise((done) => setTimeout(() => done(true), 260))`)
		p.Press("\r")
		w.waitFor(card)
	}
	assert.Equal(t, "result", w.shown())
}

// A test that is being made is gone on with from the start page.
func TestRunIsOnTheStartPage(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/")
	assert.False(t, has(p, "#go-on-run"))
	p.Open("/run/#v=1&steps=538.0&asked=80&speed=900&mark=105&card=mark-1")
	tap(p, "#run-next")
	p.Wait(`document.getElementById("card").dataset.card === "move-1"`)
	p.Open("/")
	p.Click("#go-on-run")
	p.Wait(`document.getElementById("card")?.dataset.card === "move-1"`)
	assert.Contains(t, p.Address(), "steps=538.0")
}

// A second tap that slipped does nothing: the card has only just come.
func TestRunTakesNoTapTwice(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/run/#v=1&steps=538.0&asked=80&speed=60&mark=105&tool=caliper-0.05&card=ready-1")
	for _, want := range []string{"ready-2", "ready-3"} {
		browser.Eval[bool](p, `new Promise((done) => setTimeout(() => {
			const card = document.getElementById("card"), before = card.dataset.card;
			const tap = () => document.getElementById("run-next").click();
			tap();
			setTimeout(tap, 60);
			new MutationObserver((_, its) => {
				if (document.getElementById("card").dataset.card === before) return;
				its.disconnect();
				tap(); // as soon as the next card shows
				setTimeout(tap, 60);
				setTimeout(() => done(true), 400);
			}).observe(document.body, { subtree: true, childList: true, attributes: true });
		}, 260))`)
		assert.Equal(t, want, browser.Eval[string](p, `document.getElementById("card").dataset.card`))
	}
}

// A test that was gone on with is one like any other: Back changes the card, and nothing is lost.
func TestRunThatWasTakenUpGoesBackAndForward(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/run/#v=1&steps=538&asked=80&speed=60&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05&card=read-3")
	tap(p, "#run-next")
	p.Wait(`document.getElementById("card").dataset.card === "after-3"`)
	p.Open("/run/")
	p.Click("#run-again")
	w := newWalk(t, p)
	p.Wait(`document.getElementById("card").dataset.card === "after-3"`)
	for range 2 {
		w.step()
	}
	for range 2 {
		before := w.shown()
		p.Back()
		w.waitFor(before)
	}
	tap(p, "#run-aside")
	p.Wait(`location.hash.includes("aside=,,yes")`)
	p.Forward()
	w.waitFor("after-3")
	assert.Contains(t, p.Address(), "aside=,,yes")
}

// Who makes a run again sends its lines again: the card does not take them for sent.
func TestRunThatIsMadeAgainIsSentAgain(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/run/#v=1&steps=538.0&asked=80&speed=900&mark=105&card=mark-1")
	w := newWalk(t, p)
	w.readings = strings.Fields("28.7")
	for w.shown() != "after-1" {
		w.step()
	}
	tap(p, "#run-redo")
	w.waitFor("after-1")
	tap(p, "#run-next")
	w.waitFor("mark-1")
	require.Equal(t, "move-1", w.shown())
	assert.Equal(t, "I've sent it", p.Text("#run-next"))
	w.step()
	tap(p, "#trouble-still")
	w.waitFor("read-1")
	tap(p, "#run-next")
	w.waitFor("still-1")
	require.Equal(t, "move-1", w.shown())
	assert.Equal(t, "I've sent it", p.Text("#run-next"))
}

// What is not in the log is not said to be.
func TestRunWithNothingToSaveSaysSo(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/run/#card=save")
	p.Fill("run-name", "Heron")
	tap(p, "#run-next")
	p.Wait(`document.getElementById("run-problem").textContent`)
	assert.Equal(t, "Not saved.", p.Text("#run-problem"))
	assert.False(t, has(p, "#run-saved"))
}
