package pages

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/logbook"
	"striderule/scripts/prove/browser"
)

const heronsSheet = "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05&machine=Heron&axisname=extruder&id=k3x9&set=2026-05-02"

// The loop: a test, the new setting, a check, and the next test begins with that setting.
func TestMachineTakesWhatWasSet(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, keptHeron, keptPlover)
	p.Open("/measure/#" + heronsSheet)
	assert.Contains(t, p.Text("#set-it"), "I have set it")
	p.Click("#set-it")
	arrived(p, "f-restagain-1")
	waitSaid(p, "Heron extruder now has 564.3 steps/mm. This sheet is in the log.")
	assert.False(t, has(p, "#set-it"), "it is set")
	assert.NotEmpty(t, answerOf(p), "this sheet is how the machine came to it")
	assert.Equal(t, strings.NewReplacer("538.0", "564.3", "2026-05-02", today(p)).Replace(keptHeron), keptMachines(p)["k3x9"])
	assert.Equal(t, keptPlover, keptMachines(p)["p7"])
	require.Len(t, inStorage(p), 1)
	for _, text := range inStorage(p) {
		e, err := logbook.Read(text)
		require.NoError(t, err)
		assert.Equal(t, []string{"Heron", "Extruder"}, []string{e.Machine, e.AxisName()})
	}
	p.Open("/log/")
	assert.Contains(t, p.Text("#log-list"), "Heron · Extruder")
	p.Open("/machines/")
	assert.Contains(t, p.Text("#axis-k3x9"), "564.3 steps/mm, since "+today(p))

	// The check runs belong to the same sheet, and go on.
	p.Open("/measure/#" + heronsSheet)
	assert.NotEmpty(t, answerOf(p))
	p.FillNth("restagain", 0, "25.1")
	assert.NotContains(t, p.Text("main"), "Which setting did the machine have")

	asked := func(path string) {
		t.Helper()
		p.Open(path)
		p.Wait(`document.getElementById("setting-machine")`)
		assert.Contains(t, p.Text("main"), "Which setting did the machine have for this? It has had 564.3 steps/mm since "+today(p)+"; this sheet says 538.0 steps/mm.")
		assert.Empty(t, answerOf(p))
		assert.False(t, browser.Eval[bool](p, `[...document.querySelectorAll(".bar data")].some((d) => d.checkVisibility())`), "no figure in the bar")
		assert.False(t, has(p, "#set-it"))
		assert.Equal(t, "564.3 steps/mm: the machine's", p.Text("#setting-machine"))
		assert.True(t, browser.Eval[bool](p, `document.getElementById("setting-machine").checkVisibility()`))
	}
	other := "/measure/#" + strings.Replace(heronsSheet, "28.7,28.9,28.6", "25.2,25.1,25.3", 1)
	asked(other)
	p.Click("#setting-sheet")
	assert.NotContains(t, p.Text("main"), "Which setting did the machine have")
	assert.Equal(t, "538.0", p.Field("steps"))
	agreed := answerOf(p)
	assert.NotEmpty(t, agreed)
	asked(other)
	p.Click("#setting-machine")
	assert.Equal(t, "564.3", p.Field("steps"))
	assert.NotEmpty(t, answerOf(p))
	assert.NotEqual(t, agreed, answerOf(p))

	// A label that was printed before says the old setting.
	label := strings.Replace(heronsSheet, "&rest=28.7,28.9,28.6", "", 1)
	asked("/measure/#" + label)
	p.Click("#setting-machine")
	p.FillNth("rest", 0, "25.2")
	p.FillNth("rest", 1, "25.1")
	assert.NotEmpty(t, answerOf(p))
	p.Open("/measure/#" + strings.Replace(label, "538.0", "564.30", 1))
	assert.NotContains(t, p.Text("main"), "Which setting did the machine have", "it is the same")
}

// Of a machine that this device does not have nothing is asked, and nothing set.
func TestMachineOfSomebodyElse(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, keptPlover)
	p.Open("/measure/#" + heronsSheet)
	assert.Equal(t, "This sheet is about Heron extruder.", p.Text("#whose"))
	assert.NotEmpty(t, answerOf(p))
	assert.False(t, has(p, "#set-it"))
	assert.True(t, has(p, "#name-machine"), "it can be saved")
	p.Click("#name-machine")
	assert.Equal(t, "Heron", p.Field("machine-name"))
	assert.Equal(t, "extruder", p.Field("machine-axis"))
	p.Click("#machine-save")
	p.Wait(`document.getElementById("machine-k3x9")`)
	assert.False(t, has(p, "#whose"))
	assert.Contains(t, keptMachines(p)["k3x9"], "set=2026-05-02", "in use since then")
}

// What another tab has set since is not written over unseen: the sheet hears of it at once.
func TestMachineThatAnotherTabHasSet(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, keptHeron)
	p.Open("/measure/#" + heronsSheet)
	require.True(t, has(p, "#set-it"))
	newer := strings.NewReplacer("538.0", "551.2", "2026-05-02", "2026-11-11").Replace(keptHeron)
	q := p.Beside()
	q.Open("/machines/")
	putMachine(q, "k3x9", newer)
	p.Wait(`document.getElementById("setting-machine")`)
	assert.Contains(t, p.Text("main"), "Which setting did the machine have for this? It has had 551.2")
	assert.False(t, has(p, "#set-it"))
	assert.Equal(t, newer, keptMachines(p)["k3x9"])
	putMachine(q, "k3x9", keptHeron)
	p.Reload()
	browser.Eval[bool](q, `(localStorage.removeItem("`+machineKey+`k3x9"), true)`)
	p.Wait(`document.getElementById("whose")`)
	assert.False(t, has(p, "#set-it"))
	assert.Empty(t, keptMachines(p), "deleted is deleted")
}

// What could not be saved is said, and what was saved is not denied.
func TestMachineWhereStorageIsFull(t *testing.T) {
	browser.Alongside(t)
	const fullFor = `window.fullFor = ":never:"; Storage.prototype.setItem = new Proxy(Storage.prototype.setItem, { apply(of, store, rest) {
		if (rest[0].includes(window.fullFor)) throw new DOMException("no room", "QuotaExceededError");
		return Reflect.apply(of, store, rest);
	} })`
	for name, c := range map[string]struct {
		full string
		says string
		log  int
		set  bool
	}{
		"for machines": {":machine:", "Not saved. The browser's storage for this site is full.", 2, false},
		"for the log":  {":log:", "Heron extruder now has 564.3 steps/mm. This sheet isn't in the log. The browser's storage for this site is full.", 1, true},
	} {
		t.Run(name, func(t *testing.T) {
			p := browser.NewSite(t).NewPage(t)
			p.Before(fullFor)
			p.Open("/machines/")
			fillMachines(p, keptHeron)
			fillLog(p, logbook.Example()[:1])
			p.Open("/measure/#" + heronsSheet)
			browser.Eval[bool](p, `(window.fullFor = "`+c.full+`", true)`)
			p.Click("#set-it")
			waitSaid(p, c.says)
			assert.Len(t, inStorage(p), c.log)
			assert.Equal(t, c.set, keptMachines(p)["k3x9"] != keptHeron)
		})
	}
	p := browser.NewSite(t).NewPage(t)
	p.Before(fullFor)
	p.Open("/measure/#" + heron)
	browser.Eval[bool](p, `(window.fullFor = ":machine:", true)`)
	p.Click("#name-machine")
	p.Fill("machine-name", "Heron")
	p.Click("#machine-save")
	assert.Contains(t, p.Text("#naming"), "Not saved. The browser's storage for this site is full.")
	assert.Equal(t, "Heron", p.Field("machine-name"), "nothing that was typed is lost")
}

// A link may have another name under the ID of a machine here: that stays as it is called, in the list
// and in the log. What it had set is said, and a tap on its chip corrects nothing twice.
func TestMachineKeepsItsName(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, "order=1&v=1&steps=538.0&asked=80&mark=105&tool=caliper-0.05&machine=Heron%202&axisname=extruder&id=k3x9&set=2026-05-02")
	p.Open("/measure/#v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05&machine=Plover&axisname=X&id=k3x9")
	p.Click("#set-it")
	p.Wait(`document.getElementById("set-now")`)
	assert.Contains(t, p.Text("#set-now"), "Heron 2 extruder has 564.3 steps/mm, since "+today(p))
	assert.Contains(t, p.Text(".bar"), "Set: check it")
	kept := keptMachines(p)["k3x9"]
	assert.Contains(t, kept, "steps=564.3")
	assert.Contains(t, kept, "machine=Heron%202&axisname=extruder")
	for _, text := range inStorage(p) {
		assert.NotContains(t, text, "Plover")
	}

	p.Click("#machine-k3x9")
	p.Settle()
	assert.Equal(t, "538.0", p.Field("steps"), "the readings were made with it")
	assert.Contains(t, p.Text("#verdict"), "Change it")
	assert.Contains(t, p.Text(".answer"), "564.3")
	assert.True(t, has(p, "#set-now"))
}

// Who has saved a sheet under another name, and then sets what it found, has it in the log once.
func TestSetSheetIsInTheLogOnce(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, keptHeron)
	p.Open("/measure/#" + strings.TrimPrefix(keptHeron, "order=1&") + "&rest=28.7,28.9,28.6")
	p.Click("#keep")
	p.Fill("keep-machine", "Hreon")
	p.Fill("keep-note", "by hand")
	p.Click("#keep-do")
	p.Wait(`document.querySelector("#kept a")`)
	p.Click("#set-it")
	p.Wait(`document.getElementById("set-now")`)
	all := inStorage(p)
	require.Len(t, all, 1)
	for _, text := range all {
		assert.Contains(t, text, "machine=Heron&")
		assert.Contains(t, text, "note=by%20hand")
	}
}
