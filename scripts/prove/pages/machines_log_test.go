package pages

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/logbook"
	"striderule/scripts/prove/browser"
)

// What was saved under other names is sorted in under a machine's, undone, and opened as that
// machine's from then on.
func TestEntriesAreSortedIn(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, strings.Replace(keptHeron, "538.0", "559.9", 1), keptPlover)
	old := []logbook.Entry{
		{ID: "a1", Date: "2026-03-01", Machine: "Hreon", Axis: "feed", Page: "measure", Sheet: heron, Output: "steps", Unit: "steps/mm", Value: 564.3, U: 2.8},
		{ID: "a2", Date: "2026-03-02", Machine: "Hreon", Axis: "feed", Page: "measure", Sheet: heron, Output: "steps", Unit: "steps/mm", Value: 564.5, U: 2.8},
		{ID: "a3", Date: "2026-03-03", Machine: "Stork", Axis: "Y", Page: "measure", Sheet: heron},
		{ID: "a4", Date: "2026-03-04", Machine: "Plover", Axis: "X", Page: "measure", Sheet: heron + "&id=p7"},
	}
	fillLog(p, old)
	p.Open("/log/")
	before := inStorage(p)
	p.Click("#log-sorting > summary")
	p.Wait(`document.getElementById("sort-a2")`)
	assert.Contains(t, p.Text("#log-sorting"), "2 names in the log aren't machines of yours yet")
	assert.Equal(t, "Heron extruder", browser.Eval[string](p, `document.getElementById("sort-a2").selectedOptions[0].text`), "a name that is nearly the same")
	assert.Contains(t, p.Text("#log-sorting"), "Hreon · Extruder, 2 entries. Is it Heron extruder?")
	assert.Equal(t, "Choose a machine", browser.Eval[string](p, `document.getElementById("sort-a3").selectedOptions[0].text`))

	p.Click("#sort-a3-in")
	assert.Contains(t, p.Text("#log-said"), "Choose the machine of Stork · Y first.")
	assert.Equal(t, "sort-a3", browser.Eval[string](p, active))
	assert.Equal(t, before, inStorage(p))

	p.Click("#sort-a2-in")
	p.Wait(`document.getElementById("log-said").textContent.includes("2 entries are now under Heron extruder.")`)
	assert.Equal(t, "undo", browser.Eval[string](p, active))
	assert.False(t, has(p, "#sort-a2"))
	assert.Equal(t, "Choose a machine", browser.Eval[string](p, `document.getElementById("sort-a3").selectedOptions[0].text`), "what is listed now has moved up")
	assert.Contains(t, p.Text("#entry-a2"), "Heron · Extruder")
	after := inStorage(p)
	assert.Contains(t, after[logKey+"a1"], "machine=Heron")
	assert.Contains(t, after[logKey+"a1"], "id%3Dk3x9")
	assert.Equal(t, before[logKey+"a4"], after[logKey+"a4"])

	p.Click("#undo")
	p.Wait(`document.getElementById("log-said").textContent.includes("2 entries are back under their old names.")`)
	assert.Equal(t, before, inStorage(p))
	p.Click("#sort-a2-in")
	p.Wait(`document.getElementById("entry-a2").textContent.includes("Heron")`)

	// Its sheet is the machine's now: of another setting it asks.
	p.Click("#open-a2")
	p.Wait(`document.getElementById("setting-machine")`)
	assert.Contains(t, p.Text("#setting-machine"), "559.9")
	assert.False(t, has(p, "#verdict"))
}

// What is chosen for a name stays with it, whatever comes and goes above it.
func TestChosenMachineStaysWithItsName(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, keptHeron, keptPlover)
	fillLog(p, []logbook.Entry{
		{ID: "d1", Date: "2026-03-01", Machine: "Stork", Axis: "Y", Page: "measure", Sheet: heron},
		{ID: "d2", Date: "2026-03-02", Machine: "Crane", Axis: "Y", Page: "measure", Sheet: heron},
	})
	p.Open("/log/")
	p.Click("#log-sorting > summary")
	p.Wait(`document.getElementById("sort-d2")`)
	chosen := func(id string) string {
		return browser.Eval[string](p, `document.getElementById("sort-`+id+`").selectedOptions[0].text`)
	}
	p.Choose("sort-d2", "Plover X")
	p.Click("#delete-d2")
	p.Wait(`!document.getElementById("sort-d2")`)
	assert.Equal(t, "Choose a machine", chosen("d1"))
	p.Click("#undo")
	p.Wait(`document.getElementById("sort-d2")`)
	p.Settle()
	assert.Equal(t, "Plover X", chosen("d2"))
	assert.Equal(t, "Choose a machine", chosen("d1"))

	q := p.Beside()
	q.Open("/log/")
	fillLog(q, []logbook.Entry{{ID: "d3", Date: "2026-03-03", Machine: "Newcomer", Axis: "Y", Page: "measure", Sheet: heron}})
	putMachine(q, "a0", "order=0&v=1&axis=travel&steps=80&machine=Avocet&axisname=Z&id=a0&set=2026-06-01")
	p.Wait(`document.getElementById("sort-d3")`)
	p.Settle()
	assert.Equal(t, "Choose a machine", chosen("d3"))
	assert.Equal(t, "Plover X", chosen("d2"), "though another machine stands above it")
	p.Click("#sort-d2-in")
	p.Wait(`document.getElementById("log-said").textContent.includes("1 entry is now under Plover X.")`)
}

// What another tab has changed meanwhile stays.
func TestSortingInLeavesWhatHasChanged(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, keptHeron)
	fillLog(p, []logbook.Entry{
		{ID: "b1", Date: "2026-03-01", Machine: "heron", Axis: "feed", Page: "measure", Sheet: heron},
		{ID: "b2", Date: "2026-03-02", Machine: "heron", Axis: "feed", Page: "measure", Sheet: heron},
	})
	p.Open("/log/")
	p.Click("#log-sorting > summary")
	p.Wait(`document.getElementById("sort-b2")`)
	browser.Eval[bool](p, `(localStorage.setItem("`+logKey+`b1", localStorage.getItem("`+logKey+`b1") + "&note=mine"), true)`)
	changed := inStorage(p)[logKey+"b1"]
	p.Click("#sort-b2-in")
	p.Wait(`document.getElementById("log-said").textContent.includes("1 entry is now under Heron extruder.")`)
	assert.Contains(t, p.Text("#log-said"), "1 entry was changed in another tab and was left alone.")
	assert.Equal(t, changed, inStorage(p)[logKey+"b1"])
}

// A machine's earlier scatter is offered to few runs, counts in when it is taken, and can be undone.
func TestEarlierScatterIsOffered(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, keptHeron, keptPlover)
	const test = "v=1&steps=538.0&asked=80&mark=105&tool=caliper-0.05&machine=Heron&axisname=extruder&id=k3x9&rest="
	fillLog(p, []logbook.Entry{
		{ID: "c1", Date: "2026-03-01", Machine: "Heron", Axis: "feed", Page: "measure", Sheet: test + "28.7,28.9,28.6"},
		{ID: "c2", Date: "2026-03-02", Machine: "Heron", Axis: "feed", Page: "measure", Sheet: test + "28.2,28.5,28.4,28.3"},
		{ID: "c3", Date: "2026-03-03", Machine: "Plover", Axis: "X", Page: "measure", Sheet: strings.Replace(test, "k3x9", "p7", 1) + "21,25,28"},
	})
	p.Open("/measure/#" + test + "28.5,28.7")
	require.Contains(t, p.Text("#before"), "2 earlier tests like this one on Heron extruder, in the log, scattered by 0.139 mm")
	p.Click("#count-before")
	p.Wait(`!document.getElementById("before")`)
	assert.Equal(t, "0.139", p.Field("spread"))
	assert.Equal(t, "5", p.Field("spreaddof"))
	p.Click("#unfill")
	p.Wait(`document.getElementById("before")`)
	p.Wait(`!location.hash.includes("spread")`)
	assert.Contains(t, p.Address(), "rest=28.5,28.7")

	// With its own runs only, or of no machine, there is nothing to offer.
	p.Open("/measure/#" + test + "28.5,28.7,28.6,28.6,28.5")
	assert.False(t, has(p, "#before"))
	p.Open("/measure/#" + heron)
	assert.False(t, has(p, "#before"))
}
