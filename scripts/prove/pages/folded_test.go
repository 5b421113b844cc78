package pages

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/scripts/prove/browser"
)

// arrived waits until the focus is on what a jump leads to, in sight and in an open fold.
func arrived(p *browser.Page, id string) {
	p.T().Helper()
	p.Wait(fmt.Sprintf(`document.activeElement.id === %q`, id))
	p.Settle()
	assert.True(p.T(), browser.Eval[bool](p, `(() => {
		const e = document.activeElement, box = e.getBoundingClientRect();
		return e.checkVisibility() && !e.closest("details:not([open])") && box.bottom > 0 && box.top < innerHeight;
	})()`), "%s is in sight", id)
}

// jumps lists where the jumps of a selector lead, each with the fold that it names.
func jumps(p *browser.Page, selector string) [][2]string {
	p.T().Helper()
	return browser.Eval[[][2]string](p, `[...document.querySelectorAll("`+selector+`")].map((a) => [a.dataset.jump, a.dataset.in || ""])`)
}

// As a person goes: each word of the line of what is assumed opens the fold that it stands for,
// at the field behind the word; a problem, what is asked for, and the bar do it too.
func TestFieldsInFoldsAreReached(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	words := 0
	for _, page := range calc.Pages {
		path := "/" + page.Slug + "/#" + page.Example
		p.Open(path)
		for n, to := range jumps(p, ".assumed a") {
			if n > 0 {
				p.Open(path)
			}
			assert.Equal(t, "set-up", to[1], path)
			assert.False(t, browser.Eval[bool](p, `document.getElementById("`+to[0]+`") !== null`), "%s: %s is folded", path, to[0])
			assert.False(t, browser.Eval[bool](p, `document.getElementById("set-up").checkVisibility()`), "the line stands for it")
			p.Click(fmt.Sprintf(`.assumed a[data-jump="%s"]`, to[0]))
			arrived(p, to[0])
			assert.True(t, browser.Eval[bool](p, `document.getElementById("set-up").open`))
			words++
		}
	}
	assert.Greater(t, words, 10)
	asked := 0
	for path, steps := range map[string]map[string]string{
		"/measure/#v=1&steps=538.0&asked=80&mark=105&rest=28.7&retract=8Omm&as=turn": {".problems a": "f-retract"},
		"/measure/#" + heron:                               {"#part-conventions .ask a": "f-angle"},
		"/measure/#v=1&tool=own&asked=80":                  {".bar a": "f-steps"},
		"/convert/#v=1&name=A,B&steps=80,8O&angle=1.8,1.8": {".problems a": "f-steps-2"},
		"/rate/#v=1&steps=80,80&work=8O,50":                {".problems a": "f-work-1"},
	} {
		for way, field := range steps {
			p.Open(path)
			fold, _, inPart := strings.Cut(way, " ")
			if inPart && strings.HasPrefix(fold, "#part-") { // which is folded itself
				if browser.Eval[bool](p, `document.querySelector("`+fold+`").matches("details")`) {
					p.Click(fold + " > summary")
				}
			}
			require.NotEmpty(t, jumps(p, way), path)
			to := jumps(p, way)[0]
			assert.Equal(t, field, to[0], path)
			if to[1] != "" {
				assert.False(t, has(p, "#"+field), "%s: %s is folded", path, field)
				asked++
			}
			// By script: what keeps the answer in view may lie over it.
			browser.Eval[bool](p, `(document.querySelector("`+way+`").click(), true)`)
			arrived(p, field)
		}
	}
	assert.GreaterOrEqual(t, asked, 4, "of folded fields")
}

// The part that the person is to set something by leads to the field that checks it.
func TestMainActLeadsToTheCheck(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/#" + heron + "&tool=caliper-0.05")
	to := jumps(p, "#part-apply .main-act a")
	require.Len(t, to, 1)
	assert.False(t, has(p, "#"+to[0][0]))
	p.Click("#part-apply .main-act a")
	arrived(p, to[0][0])
	assert.True(t, browser.Eval[bool](p, `document.activeElement.matches("#more input")`))
}

// A fold that was opened before the program was there stays open, with what was typed in it; what
// was typed in one that was closed again is not lost.
func TestFoldOpenedBeforeStart(t *testing.T) {
	browser.Alongside(t)
	for name, path := range map[string]string{"an empty page": "/measure/", "a link": "/measure/#" + heron} {
		t.Run(name, func(t *testing.T) {
			s := browser.NewSite(t)
			release := holdProgram(t, s)
			p := s.NewPage(t)
			p.Load(path)
			p.Wait(`typeof Go === "function" && document.getElementById("f-retract")`)
			p.Click(".assumed a")
			p.Wait(`document.getElementById("set-up").open`)
			p.Click("#more > summary")
			p.Fill("tol", "0,7")
			p.Fill("retract", "0,8")
			browser.Eval[bool](p, `(document.activeElement.setSelectionRange(1, 2), true)`)
			assert.Empty(t, browser.Eval[string](p, `document.documentElement.dataset.app || ""`), "the program was to be held back")
			release()
			p.WaitReady()
			p.Settle()
			assert.True(t, browser.Eval[bool](p, `document.getElementById("set-up").open && document.getElementById("more").open`))
			assert.Equal(t, "0,8", browser.Eval[string](p, `document.getElementById("f-retract").value`))
			assert.Equal(t, "0,7", browser.Eval[string](p, `document.getElementById("f-tol").value`))
			assert.Equal(t, "f-retract", browser.Eval[string](p, active), "the focus stays")
			assert.Equal(t, []int{1, 2}, browser.Eval[[]int](p, `[document.activeElement.selectionStart, document.activeElement.selectionEnd]`))
			p.Wait(`location.hash.includes("tol=0.7") && location.hash.includes("retract=0.8")`)
		})
	}
	t.Run("and closed again", func(t *testing.T) {
		s := browser.NewSite(t)
		release := holdProgram(t, s)
		p := s.NewPage(t)
		p.Load("/measure/#" + heron)
		p.Wait(`typeof Go === "function"`)
		p.Click("#more > summary")
		p.Fill("retract", "0,8")
		p.Click("#more > summary")
		require.False(t, browser.Eval[bool](p, `document.getElementById("more").open`))
		release()
		p.WaitReady()
		p.Settle()
		assert.Equal(t, "0,8", p.Field("retract"))
		p.Wait(`location.hash.includes("retract=0.8")`)
	})
}

// A link may have a field of the generated page in a fold, or not use it: what is typed there before
// the start is kept all the same, and the page says so.
func TestTypedWhereTheLinkHasNone(t *testing.T) {
	browser.Alongside(t)
	cases := []struct{ path, id, key, in, says string }{
		{"/measure/#v=1&trial=speeds&read=fed&at=60,60,120&fed=99,98.9,98", "f-mark", "", "", "Mark at: “105” is kept. It isn't used with the choices of this link."},
		{"/measure/#v=1&trial=speeds&read=fed&at=60,60,120&fed=99,98.9,98", "f-rest-2", "", "", "Remaining: “105” is kept. It isn't used with the choices of this link."},
		{"/convert/#v=1&name=X,Y&steps=,160", "f-steps-1", "steps=105,160", "row-axis-1", ""},
		{"/parts/#v=1&name=X,Y&angle=,1.8", "f-angle-1", "angle=105,1.8", "row-axis-1", ""},
		{"/rate/#v=1&name=X,Y&steps=,160", "f-steps-1", "steps=105,160", "row-axis-1", ""},
	}
	if !full() {
		cases = cases[1:3]
	}
	for _, c := range cases {
		t.Run(c.path+" "+c.id, func(t *testing.T) {
			s := browser.NewSite(t)
			release := holdProgram(t, s)
			p := s.NewPage(t)
			p.Load(c.path)
			p.Wait(`typeof Go === "function" && document.getElementById("` + c.id + `")`)
			browser.Eval[bool](p, `(document.getElementById("`+c.id+`").focus(), document.execCommand("insertText", false, "105"))`)
			assert.Empty(t, browser.Eval[string](p, `document.documentElement.dataset.app || ""`), "the program was to be held back")
			release()
			p.WaitReady()
			if c.says != "" {
				p.Wait(`document.getElementById("said").textContent`)
				assert.Equal(t, c.says, p.Text("#said"))
				return
			}
			p.Wait(`document.getElementById("` + c.in + `").open`)
			p.Wait(`document.activeElement.id === "` + c.id + `"`)
			assert.Equal(t, "105", browser.Eval[string](p, `document.activeElement.value`))
			p.Wait(`decodeURIComponent(location.hash).includes("` + c.key + `")`)
		})
	}
}

// What is typed in a fold stays when that is closed, and is there when it is opened again.
func TestFoldKeepsWhatIsTyped(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/#" + heron)
	p.Click("#more > summary")
	p.Fill("retract", "0,8")
	p.Fill("line", "M92 E{value}")
	p.Click("#more > summary")
	p.Wait(`!document.getElementById("f-retract")`)
	assert.Contains(t, p.Text("#more > summary"), "0,8", "what it holds")
	p.Wait(`location.hash.includes("retract=0.8")`)
	p.Click("#more > summary")
	p.Wait(`document.getElementById("f-retract")?.value === "0,8" && document.getElementById("f-line").value === "M92 E{value}"`)
	// A choice and a tick as well.
	p.Choose("trial", "speeds")
	browser.Eval[bool](p, `((document.getElementById("set-up").open = false), true)`)
	p.Wait(`!document.getElementById("f-trial-speeds")`)
	assert.Contains(t, strings.ToLower(p.Text(".assumed")), "speed")
	p.Click(".assumed a[data-jump=f-trial]")
	arrived(p, "f-trial")
	assert.True(t, browser.Eval[bool](p, `document.getElementById("f-trial-speeds").checked`))
}

// Who looks for a word with the browser finds it in a closed fold too.
func TestFindLooksIntoFolds(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/#" + heron)
	const made = `Boolean(document.querySelector("#part-touches li"))`
	require.False(t, browser.Eval[bool](p, made), "what nobody opened is not made")
	browser.Eval[bool](p, `document.dispatchEvent(new KeyboardEvent("keydown", { key: "f", ctrlKey: true, bubbles: true }))`)
	p.Wait(made)
	p.Wait(`document.documentElement.dataset.started === "yes"`)
	assert.False(t, browser.Eval[bool](p, `document.getElementById("part-touches").open`))
	assert.NotEqual(t, "none", browser.Eval[string](p, `getComputedStyle(document.getElementById("part-touches"), "::details-content").display`), "browsers look into what they lay out")
}
