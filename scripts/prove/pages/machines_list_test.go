package pages

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// The form of an axis takes numbers as people write them, and says what is wrong.
func TestMachineIsAdded(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/machines/")
	assert.Contains(t, p.Text("#machines-empty"), "No machine yet.")
	assert.False(t, has(p, "#copy-list"), "there is nothing to hand on")
	p.Click("#add-axis")
	assert.Equal(t, "axis-machine", browser.Eval[string](p, active))
	assert.Equal(t, today(p), p.Field("axis-date"))
	problem := func(says string) {
		t.Helper()
		p.Click("#axis-save")
		assert.Contains(t, p.Text("#axis-problem"), says)
		assert.Empty(t, keptMachines(p))
	}
	problem("Machine: please enter a name.")
	p.Fill("axis-machine", "Plover")
	p.Fill("axis-name", "table")
	problem("Setting: please enter it.")
	for _, wrong := range []string{"8O", "-3", "0", "1e400"} {
		p.Fill("axis-setting", wrong)
		p.Click("#axis-save")
		assert.NotEmpty(t, p.Text("#axis-problem"), wrong)
		assert.Empty(t, keptMachines(p), wrong)
	}
	p.Fill("axis-setting", "88,9")
	put(p, "axis-date", "") // browsers take a date's keys in the order of their language
	problem("In use since: enter a day")
	put(p, "axis-date", "2026-06-01")
	p.Choose("axis-kind", "rotary")
	p.Click("#axis-save")
	p.Wait(`!document.getElementById("axis-form")`)
	kept := keptMachines(p)
	require.Len(t, kept, 1)
	for id, text := range kept {
		assert.Equal(t, "order=1&v=1&axis=rotary&stepsdeg=88.9&machine=Plover&axisname=table&id="+id+"&set=2026-06-01", text)
		assert.Equal(t, "edit-"+id, browser.Eval[string](p, active))
		assert.Contains(t, p.Text("#axis-"+id), "88.9 steps/°, since 2026-06-01")
	}
	assert.Equal(t, "Plover table is saved.", p.Text("#machines-said"))

	p.Click("#add-axis")
	assert.Equal(t, "", p.Field("axis-machine"), "nothing is left of the one before")
	assert.Equal(t, "feed", p.Field("axis-kind"))
	assert.False(t, has(p, "#axis-problem"))
	p.Fill("axis-machine", "Heron")
	p.Choose("axis-as", "turn")
	p.Fill("axis-setting", "5.9 mm")
	p.Click("#axis-save")
	p.Wait(`!document.getElementById("axis-form")`)
	assert.Equal(t, []string{"Plover table", "Heron"}, axesShown(p))
	p.Reload()
	assert.Equal(t, []string{"Plover table", "Heron"}, axesShown(p))
	assert.NotContains(t, p.Text("#machines"), "mm mm", "one unit is enough")
}

func TestMachineIsEdited(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, keptHeron, keptPlover)
	p.Click("#edit-p7")
	assert.Equal(t, []string{"Plover", "X", "travel", "steps", "88.9", "2026-06-01"}, []string{p.Field("axis-machine"), p.Field("axis-name"), p.Field("axis-kind"), p.Field("axis-as"), p.Field("axis-setting"), p.Field("axis-date")})
	p.Fill("axis-setting", "90,1")
	p.Click("#axis-cancel")
	assert.Equal(t, "edit-p7", browser.Eval[string](p, active))
	assert.Equal(t, keptPlover, keptMachines(p)["p7"])
	p.Click("#edit-p7")
	assert.Equal(t, "88.9", p.Field("axis-setting"), "what was cancelled is gone")
	p.Fill("axis-setting", "90,1")
	put(p, "axis-date", "2026-11-30")
	p.Click("#axis-save")
	p.Wait(`!document.getElementById("axis-form")`)
	assert.Equal(t, strings.NewReplacer("88.9", "90.1", "2026-06-01", "2026-11-30").Replace(keptPlover), keptMachines(p)["p7"], "what the form does not ask for stays")
	assert.Contains(t, p.Text("#axis-p7"), "90.1 steps/mm, since 2026-11-30")
	assert.Equal(t, keptHeron, keptMachines(p)["k3x9"])

	// Another form than the one that was open has its own entries.
	p.Click("#edit-p7")
	p.Click("#edit-k3x9")
	assert.Equal(t, []string{"Heron", "feed", "538.0"}, []string{p.Field("axis-machine"), p.Field("axis-kind"), p.Field("axis-setting")})

	// What is done in the list meanwhile is no other tab's work.
	p.Fill("axis-setting", "540")
	p.Click("#down-k3x9")
	assert.Equal(t, "540", p.Field("axis-setting"))
	p.Click("#axis-save")
	p.Wait(`!document.getElementById("axis-form")`)
	assert.Equal(t, strings.NewReplacer("order=1", "order=2", "538.0", "540").Replace(keptHeron), keptMachines(p)["k3x9"])
	p.Click("#edit-k3x9")
	p.Click("#delete-k3x9")
	assert.False(t, has(p, "#axis-form"), "there is nothing to edit")
	assert.Equal(t, []string{"Plover X"}, axesShown(p))
	p.Click("#add-axis")
	p.Click("#axis-cancel")
	assert.Equal(t, "add-axis", browser.Eval[string](p, active))
}

// In the order that a person gives them, and by the keyboard alone.
func TestMachinesByKeyboard(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, keptHeron, keptPlover)
	// reach goes on with Tab to an element, as somebody does who has no mouse.
	reach := func(id string) {
		t.Helper()
		for range 40 {
			if browser.Eval[string](p, active) == id {
				return
			}
			p.Press(kb.Tab)
			small := browser.Eval[bool](p, `(() => { const e = document.activeElement, b = e.getBoundingClientRect(); return e !== document.body && e.closest("main") && (b.height < 43.5 || b.width < 43.5); })() || false`)
			assert.False(t, small, "%s is less than 44 px", browser.Eval[string](p, active))
		}
		require.Equal(t, id, browser.Eval[string](p, active), "it is not reached")
	}
	browser.Eval[bool](p, `(document.getElementById("title").focus(), true)`)
	reach("copy-k3x9")
	p.Press(kb.Enter)
	assert.Equal(t, []string{"Heron extruder", "Plover X", "Heron extruder copy"}, axesShown(p))
	assert.Equal(t, "copy-k3x9", browser.Eval[string](p, active), "the place is kept")
	reach("down-k3x9")
	p.Press(" ")
	assert.Equal(t, []string{"Plover X", "Heron extruder", "Heron extruder copy"}, axesShown(p))
	assert.Equal(t, "axis-k3x9", browser.Eval[string](p, active))
	reach("down-k3x9")
	p.Press(kb.Enter)
	assert.Equal(t, []string{"Plover X", "Heron extruder copy", "Heron extruder"}, axesShown(p))
	assert.True(t, browser.Eval[bool](p, `document.getElementById("down-k3x9").disabled`), "it is the last")
	reach("up-k3x9")
	p.Press(kb.Enter)
	p.Reload()
	assert.Equal(t, []string{"Plover X", "Heron extruder", "Heron extruder copy"}, axesShown(p))

	browser.Eval[bool](p, `(document.getElementById("axis-p7").focus(), true)`)
	before := keptMachines(p)
	reach("delete-p7")
	p.Press(kb.Enter)
	assert.Equal(t, []string{"Heron extruder", "Heron extruder copy"}, axesShown(p))
	assert.Equal(t, "Plover X is deleted.", p.Text("#machines-said"))
	assert.Equal(t, "undo", browser.Eval[string](p, active))
	p.Press(kb.Enter)
	assert.Equal(t, before, keptMachines(p))
	assert.Equal(t, []string{"Plover X", "Heron extruder", "Heron extruder copy"}, axesShown(p), "in its place")
	assert.Equal(t, "Plover X is back.", p.Text("#machines-said"))
	assert.Equal(t, "machines-said", browser.Eval[string](p, active))

	browser.Eval[bool](p, `(document.getElementById("axis-k3x9").focus(), true)`)
	reach("edit-k3x9")
	p.Press(kb.Enter)
	assert.Equal(t, "axis-machine", browser.Eval[string](p, active))
	reach("axis-setting")
	p.Press("539,5" + kb.Enter)
	assert.Contains(t, p.Text("#axis-k3x9"), "539.5 steps/mm")
	assert.Equal(t, "edit-k3x9", browser.Eval[string](p, active))
}

// The rules of axe-core, and narrow screens, in each state of the page.
func TestMachinesAreAccessible(t *testing.T) {
	browser.Alongside(t)
	rules := axeRules(t)
	p := browser.NewSite(t).NewPage(t)
	check := func(state string) {
		t.Helper()
		axeFinds(t, p, rules, state)
		for _, width := range []int64{320, browser.Width} {
			p.Viewport(width, browser.Height)
			p.NoSidewaysScrolling()
		}
	}
	p.Open("/machines/")
	check("empty")
	fillMachines(p, keptHeron, strings.Replace(keptPlover, "Plover", strings.Repeat("Plover", 10), 1))
	p.Reload()
	check("two axes")
	p.Click("#add-axis")
	p.Click("#axis-save")
	check("the form, with a problem")
	p.Click("#axis-cancel")
	p.Click("#labels")
	check("labels")
	p.Click("#delete-k3x9")
	check("deleted")
	p.Open(listLink(p) + ",Godwit")
	check("from a link")
	p.Open("/measure/#" + heron)
	p.Click("#name-machine")
	p.Click("#machine-save")
	check("naming a machine")
	fillMachines(p, strings.Replace(keptHeron, "538.0", "551.2", 1))
	p.Open("/measure/#" + heronsSheet)
	check("which setting")
}

// Who has been here once needs no connection, for the list or for a sheet of it.
func TestMachinesOffline(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/machines/")
	p.WaitOffline()
	s.Stop()
	fillMachines(p, keptHeron)
	p.Reload()
	assert.Equal(t, []string{"Heron extruder"}, axesShown(p))
	p.Click("#axis-k3x9 a.go-on")
	waitForSheet(p, "measure")
	for n, rest := range []string{"28.7", "28.9", "28.6"} {
		p.FillNth("rest", n, rest)
	}
	p.Click("#set-it")
	assert.NotEqual(t, keptHeron, keptMachines(p)["k3x9"])
	p.Open("/machines/")
	p.Open(listLink(p))
	assert.True(t, has(p, "#brought"))
}
