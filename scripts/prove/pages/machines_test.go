package pages

import (
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/link"
	"striderule/scripts/prove/browser"
)

// machineKey begins the keys of the machines in the storage of a site at Mount.
const machineKey = "striderule:/tools/cal:machine:"

// The machines of Tidewater Makers' Hall, as they are kept.
const (
	keptHeron  = "order=1&v=1&steps=538.0&asked=80&mark=105&tool=caliper-0.05&angle=1.8&micro=16&machine=Heron&axisname=extruder&id=k3x9&set=2026-05-02"
	keptPlover = "order=2&v=1&axis=travel&steps=88.9&tool=caliper-0.05&machine=Plover&axisname=X&id=p7&set=2026-06-01"
)

// fillMachines puts axes into the storage by script, under their IDs.
func fillMachines(p *browser.Page, texts ...string) {
	p.T().Helper()
	for _, text := range texts {
		putMachine(p, link.TextOf(link.Split(text), "id"), text)
	}
}

func putMachine(p *browser.Page, id, text string) {
	p.T().Helper()
	browser.Eval[bool](p, `(localStorage.setItem(`+strconv.Quote(machineKey+id)+`, `+strconv.Quote(text)+`), true)`)
}

// keptMachines are the axes in the storage, by their IDs.
func keptMachines(p *browser.Page) map[string]string {
	p.T().Helper()
	return browser.Eval[map[string]string](p, `Object.fromEntries(Object.entries(localStorage).filter(([key]) => key.startsWith("`+machineKey+`")).map(([key, text]) => [key.slice(`+strconv.Itoa(len(machineKey))+`), text]))`)
}

// withMachines opens the machines of somebody who has these.
func withMachines(t *testing.T, texts ...string) *browser.Page {
	t.Helper()
	p := browser.NewSite(t).NewPage(t)
	p.Open("/machines/")
	fillMachines(p, texts...)
	p.Reload()
	return p
}

// axesShown are the headings of the list, from the top.
func axesShown(p *browser.Page) []string {
	p.T().Helper()
	return browser.Eval[[]string](p, `[...document.querySelectorAll("#machines > li > h2")].map((h) => h.textContent)`)
}

// today is the day on the browser's clock.
func today(p *browser.Page) string {
	p.T().Helper()
	return browser.Eval[string](p, `new Date().toLocaleDateString("sv")`)
}

func waitSaid(p *browser.Page, text string) {
	p.T().Helper()
	p.Wait(`document.getElementById("said").textContent.includes(` + strconv.Quote(text) + `)`)
}

// A sheet becomes a machine by its names, and fills in other pages by a tap.
func TestMachineIsSavedFromASheet(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/")
	assert.False(t, has(p, "#name-machine"), "there is no setting yet")
	assert.False(t, has(p, ".to-machines"), "and no machine")
	p.Open("/measure/#" + heron + "&tool=caliper-0.05")
	p.Click("#name-machine")
	assert.Equal(t, "machine-name", browser.Eval[string](p, active))
	p.Click("#machine-save")
	assert.Contains(t, p.Text("#naming"), "Machine: please enter a name.")
	p.Fill("machine-name", " Heron ")
	p.Fill("machine-axis", "extruder")
	p.Press(kb.Enter)
	p.Wait(`!document.getElementById("naming")`)
	kept := keptMachines(p)
	require.Len(t, kept, 1)
	var id string
	for id = range kept {
		assert.NotContains(t, kept[id], "rest", "readings are of one test")
	}
	assert.Equal(t, "machine-"+id, browser.Eval[string](p, active))
	assert.Equal(t, "true", browser.Eval[string](p, `document.activeElement.getAttribute("aria-pressed")`))
	waitSaid(p, "Heron extruder is saved on this device.")
	assert.False(t, has(p, "#name-machine"), "it has one now")
	p.Wait(`location.hash.includes("id=` + id + `")`)

	p.Click(".to-machines")
	p.Wait(`document.getElementById("axis-` + id + `")`)
	assert.Equal(t, []string{"Heron extruder"}, axesShown(p))
	assert.Contains(t, p.Text("#axis-"+id), "538.0 steps/mm, since "+today(p))
	p.Reload()
	assert.Equal(t, []string{"Heron extruder"}, axesShown(p))

	// Of the same name there is one.
	p.Open("/measure/#" + heron)
	p.Click("#name-machine")
	p.Fill("machine-name", "heron")
	p.Fill("machine-axis", "Extruder")
	p.Click("#machine-save")
	assert.Contains(t, p.Text("#naming"), "Heron extruder is here already")
	p.Click("#machine-cancel")
	assert.Equal(t, "name-machine", browser.Eval[string](p, active))
	assert.Equal(t, kept, keptMachines(p))
}

func TestMachineFillsASheet(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, keptHeron, keptPlover)
	p.Open("/measure/")
	p.FillNth("rest", 0, "28.7")
	p.Fill("steps", "99")
	p.Click("#machine-k3x9")
	p.Wait(`document.getElementById("setting-machine")`)
	assert.Equal(t, "99", p.Field("steps"), "the readings may have been made with it: that is asked")
	for field, text := range map[string]string{"asked": "80", "mark": "105", "rest": "28.7"} {
		assert.Equal(t, text, p.Field(field), field)
	}
	assert.Empty(t, answerOf(p))
	waitSaid(p, "Filled in from Heron extruder.")
	assert.Equal(t, "true", browser.Eval[string](p, `document.getElementById("machine-k3x9").getAttribute("aria-pressed")`))
	p.Wait(`location.hash.includes("id=k3x9")`)
	p.Click("#unfill")
	for field, text := range map[string]string{"steps": "99", "asked": "", "mark": "", "rest": "28.7"} {
		assert.Equal(t, text, p.Field(field), field)
	}
	assert.Equal(t, "false", browser.Eval[string](p, `document.getElementById("machine-k3x9").getAttribute("aria-pressed")`))
	assert.False(t, has(p, "#unfill"))
	p.Wait(`!location.hash.includes("id=k3x9")`)

	// After an entry there is nothing left to undo, and another machine takes the place of one.
	p.Click("#machine-k3x9")
	p.Click("#setting-machine")
	assert.Equal(t, "538.0", p.Field("steps"))
	assert.NotEmpty(t, answerOf(p))
	p.Fill("asked", "90")
	assert.False(t, has(p, "#unfill"), "it would take the 90 away")
	p.Click("#machine-p7")
	assert.Equal(t, "88.9", p.Field("steps"))
	p.Unfold()
	assert.Equal(t, "travel", browser.Eval[string](p, `document.querySelector("[name=axis]:checked").value`))

	// Undone is undone: nothing of the machine is left to ask about.
	p.Open("/measure/#" + strings.Replace(heron, "538.0", "540", 1))
	answer := answerOf(p)
	p.Click("#machine-k3x9")
	assert.NotEqual(t, answer, answerOf(p))
	p.Click("#unfill")
	assert.Equal(t, answer, answerOf(p))
	assert.NotContains(t, p.Text("main"), "Which setting did the machine have")

	p.Open("/swap/#v=1&changed=angle&anglenew=0.9")
	p.Click("#machine-k3x9")
	assert.Equal(t, "538.0", p.Field("steps"))
	assert.Equal(t, "1.8", p.Field("angle"))
	assert.Equal(t, "0.9", p.Field("anglenew"))
	p.Click("#unfill")
	assert.Equal(t, "", p.Field("steps"))
	assert.Equal(t, "0.9", p.Field("anglenew"))

	p.Open("/rate/")
	p.Click("#machine-k3x9")
	p.Click("#machine-p7")
	p.Unfold()
	assert.Equal(t, []string{"Heron extruder", "Plover X"}, fields(p, "name")[:2], "a row for each")
	assert.Equal(t, []string{"538.0", "88.9"}, fields(p, "steps")[:2])
}

// Who leaves a test by the menu and comes back by the machine's chip finds it again.
func TestUnfinishedTestIsOffered(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, keptHeron)
	p.Open("/measure/#" + strings.TrimPrefix(keptHeron, "order=1&"))
	assert.False(t, has(p, "#continue"))
	p.FillNth("rest", 0, "28.7")
	p.Wait(`location.hash.includes("rest=28.7")`)
	p.OpenMenu()
	p.Click(`nav a[href$="/log/"]`)
	p.Wait(`document.title.includes("log")`)
	p.Click(".brand")
	p.Wait(`document.getElementById("your-machines")`)
	p.Click("#your-machines a.chip")
	p.Wait(`document.getElementById("continue")`)
	assert.Empty(t, p.Field("rest"))
	p.Click("#continue")
	p.Wait(`location.hash.includes("rest=28.7")`)
	assert.Equal(t, "28.7", p.Field("rest"))
	p.Reload()
	assert.False(t, has(p, "#continue"), "it is this one")
}

// A second tap in the same place, or a second Enter, meets no other machine.
func TestMachineIsNotTakenForItsNeighbour(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, keptHeron, keptPlover)
	p.Open("/measure/")
	const place = `document.getElementById("machine-p7").getBoundingClientRect().left`
	browser.Eval[bool](p, `(document.getElementById("machine-p7").focus(), true)`)
	before := browser.Eval[float64](p, place)
	for range 2 {
		p.Press(kb.Enter)
		assert.Equal(t, "88.9", p.Field("steps"))
		assert.Equal(t, "machine-p7", browser.Eval[string](p, active))
		assert.InDelta(t, before, browser.Eval[float64](p, place), 1)
	}
	p.Press(kb.Tab)
	assert.Equal(t, "unfill", browser.Eval[string](p, active))
	p.Press(kb.Enter)
	assert.Equal(t, "machine-p7", browser.Eval[string](p, active))
}
