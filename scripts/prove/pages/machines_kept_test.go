package pages

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// What another tab has done to an axis meanwhile is not written over, and it is said where
// somebody looks.
func TestMachinesInTwoTabs(t *testing.T) {
	browser.Alongside(t)
	changed := strings.Replace(keptPlover, "88.9", "91.0", 1)
	inSight := func(p *browser.Page) {
		p.T().Helper()
		p.Wait(`document.getElementById("main").textContent.includes("Another tab has changed or deleted this meanwhile: nothing was changed here.")`)
		assert.True(p.T(), browser.Eval[bool](p, `[...document.querySelectorAll("[role=status], [role=alert]")].some((e) => {
			const box = e.getBoundingClientRect();
			return e.textContent.includes("Another tab has changed") && e.checkVisibility() && box.top >= 0 && box.bottom <= innerHeight;
		})`), "it is said in view")
	}
	for name, c := range map[string]struct {
		meanwhile func(q *browser.Page)
		left      string
	}{
		"changed": {func(q *browser.Page) {
			q.Click("#edit-p7")
			q.Fill("axis-setting", "91.0")
			q.Click("#axis-save")
		}, changed},
		"deleted": {func(q *browser.Page) { q.Click("#delete-p7") }, ""},
	} {
		t.Run(name, func(t *testing.T) {
			p := withMachines(t, keptHeron, keptPlover)
			q := p.Beside()
			q.Open("/machines/")
			p.Click("#edit-p7")
			p.Fill("axis-setting", "77")
			c.meanwhile(q)
			if c.left == "" {
				p.Wait(`!document.getElementById("axis-p7")`)
			} else {
				p.Wait(`document.getElementById("axis-p7").textContent.includes("91.0 steps/mm")`)
			}
			assert.Equal(t, "77", p.Field("axis-setting"), "what is typed stays")
			p.Click("#axis-save")
			inSight(p)
			assert.Equal(t, c.left, keptMachines(p)["p7"])
			assert.Equal(t, "77", p.Field("axis-setting"))
			p.Click("#axis-save")
			assert.Equal(t, c.left, keptMachines(p)["p7"], "nor by trying again")
		})
	}
	// A tab that hears nothing shows what is old, and does what it does to what is there.
	t.Run("behind", func(t *testing.T) {
		s := browser.NewSite(t)
		p := s.NewPage(t)
		p.Before(deaf)
		p.Open("/machines/")
		fillMachines(p, keptHeron, keptPlover)
		p.Reload()
		q := p.Beside()
		q.Open("/machines/")
		fillMachines(q, changed)
		sees := func(is string) { // browsers of several processes take a moment
			t.Helper()
			p.Wait(`((p7, k3x9) => ` + is + `)(localStorage.getItem("` + machineKey + `p7") || "", localStorage.getItem("` + machineKey + `k3x9") || "")`)
		}
		sees(`p7.includes("91.0")`)
		p.Click("#edit-p7")
		assert.Equal(t, "91.0", p.Field("axis-setting"), "as it is now")
		p.Click("#axis-cancel")
		browser.Eval[bool](q, `(localStorage.removeItem("`+machineKey+`p7"), true)`)
		sees(`!p7`)
		p.Click("#copy-p7")
		assert.Equal(t, []string{"Heron extruder"}, axesShown(p))
		assert.Len(t, keptMachines(p), 1)
		p.Click("#delete-k3x9")
		fillMachines(q, strings.Replace(keptHeron, "538.0", "540", 1)) // under the same ID
		sees(`k3x9.includes("540")`)
		p.Click("#undo")
		kept := keptMachines(p)
		assert.Len(t, kept, 2, "both")
		assert.Contains(t, kept["k3x9"], "540")
	})
}

// What this version can't read stays as it is, beside what it can.
func TestMachinesThatCannotBeRead(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/machines/")
	fillMachines(p, keptHeron, keptPlover)
	for id, text := range map[string]string{
		"n1": "v=2&machine=Godwit&id=n1&steps=1", "n2": "order=1&v=2&machine=Godwit&id=n2&steps=1", "b1": "%zz=%", "b2": "", "b3": "two\nlines",
		"b4": "order=1&v=1&steps=1&machine=Dunlin&id=other", // which would be written under another key
	} {
		putMachine(p, id, text)
	}
	before := keptMachines(p)
	p.Reload()
	assert.Equal(t, []string{"Heron extruder", "Plover X"}, axesShown(p))
	assert.Contains(t, p.Text("main .problems"), "6 axes saved here can't be read, perhaps from a newer version of this site. Nothing was changed.")
	assert.Equal(t, before, keptMachines(p))
	p.Click("#down-k3x9")
	p.Click("#delete-p7")
	p.Click("#undo")
	after := keptMachines(p)
	for _, id := range []string{"n1", "n2", "b1", "b2", "b3", "b4"} {
		assert.Contains(t, after, id)
		assert.Equal(t, before[id], after[id], id)
	}
	// A link with the ID of one of them takes another ID.
	p.Open("/machines/#v=1&steps=80,81&machine=Godwit,Dunlin&id=n1,b3")
	p.Click("#take-all")
	assert.Equal(t, "2 axes saved on this device.", p.Text("#machines-said"))
	after = keptMachines(p)
	assert.Len(t, after, 10)
	assert.Equal(t, before["n1"], after["n1"])
	assert.Equal(t, before["b3"], after["b3"])
	p.Open("/measure/")
	assert.Equal(t, 4, browser.Eval[int](p, `document.querySelectorAll(".chips [aria-pressed]").length`))
}

func TestMachinesWhereStorageIsFull(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Before(`Storage.prototype.setItem = new Proxy(Storage.prototype.setItem, { apply(of, store, rest) {
		if (window.noRoom) throw new DOMException("no room", "QuotaExceededError");
		return Reflect.apply(of, store, rest);
	} })`)
	p.Open("/machines/")
	fillMachines(p, keptHeron, keptPlover)
	p.Reload()
	browser.Eval[bool](p, `(window.noRoom = true)`)
	const says = "Not saved. The browser's storage for this site is full."
	p.Click("#copy-p7")
	assert.Equal(t, says, p.Text("#machines-said"))
	p.Click("#down-k3x9")
	assert.Equal(t, says, p.Text("#machines-said"))
	assert.Equal(t, []string{"Heron extruder", "Plover X"}, axesShown(p), "as it is kept")
	p.Click("#edit-p7")
	p.Fill("axis-setting", "77")
	p.Click("#axis-save")
	p.Wait(`document.getElementById("main").textContent.includes("` + says + `")`)
	assert.Equal(t, "77", p.Field("axis-setting"), "nothing that was typed is lost")
	assert.Equal(t, map[string]string{"k3x9": keptHeron, "p7": keptPlover}, keptMachines(p))
	p.Click("#axis-cancel")
	p.Click("#delete-p7")
	p.Click("#undo")
	assert.Equal(t, says, p.Text("#machines-said"))
	require.True(t, has(p, "#undo"), "else it would be lost")
	browser.Eval[bool](p, `(window.noRoom = false, true)`)
	p.Click("#undo")
	assert.Equal(t, map[string]string{"k3x9": keptHeron, "p7": keptPlover}, keptMachines(p))
}

func TestMachinesWhereStorageIsBlocked(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	s.Trimmed(t, "asks for the storage itself, and ends without")
	p := s.NewPage(t)
	p.Allow("offline use is off")
	p.Before(refusals[everything])
	p.Open("/machines/")
	const says = "This browser doesn't let the site store anything"
	assert.Contains(t, p.Text("main .problems"), says)
	p.Click("#add-axis")
	p.Fill("axis-machine", "Plover")
	p.Fill("axis-setting", "80")
	p.Click("#axis-save")
	p.Wait(`document.getElementById("main").textContent.includes("Not saved. ` + says + `")`)
	assert.Equal(t, "Plover", p.Field("axis-machine"))
	p.Open("/measure/#" + heronsSheet)
	assert.NotEmpty(t, answerOf(p), "it calculates all the same")
	p.Click("#name-machine")
	p.Click("#machine-save")
	assert.Contains(t, p.Text("#naming"), "Not saved. "+says)
}
