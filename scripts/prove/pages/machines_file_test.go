package pages

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// The file of the log has the machines too: on another device they are there again, the later
// setting stays, and nothing is there twice. A line that nobody there has accepted stays out.
func TestMachinesInTheLogsFile(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, keptHeron+"&line=M999%20E%7Bvalue%7D", keptPlover)
	p.Before(saveTexts)
	p.Open("/log/")
	press(p, "#export")
	p.Wait(`saved.length === 1`)
	text := browser.Eval[string](p, `saved[0]`)
	require.Contains(t, text, `"page":"machines"`)

	q := browser.NewSite(t).NewPage(t)
	q.Open("/log/")
	choose(q, "log.json", text)
	assert.Contains(t, q.Text("#import-report"), "2 axes of machines were added or brought up to date.")
	assert.Contains(t, q.Text("#import-report"), "0 entries were imported. 0 were already here.")
	assert.Equal(t, map[string]string{"k3x9": keptHeron, "p7": keptPlover}, keptMachines(q))
	choose(q, "log.json", text)
	assert.Contains(t, q.Text("#import-report"), "2 were already here.")

	// Here one has been set since; in the file the other has.
	later := strings.NewReplacer("538.0", "564.3", "2026-05-02", "2026-11-29").Replace(keptHeron)
	putMachine(q, "k3x9", later)
	choose(q, "log.json", strings.NewReplacer("88.9", "90.1", "set=2026-06-01", "set=2026-07-01").Replace(text))
	assert.Contains(t, q.Text("#import-report"), "1 axis of a machine was added or brought up to date.")
	assert.Equal(t, later, keptMachines(q)["k3x9"], "the later setting stays")
	assert.Contains(t, keptMachines(q)["p7"], "steps=90.1")
	q.Open("/machines/")
	assert.Equal(t, []string{"Heron extruder", "Plover X"}, axesShown(q))
}

// "Test again" opens the facts of an entry without its readings: with the machine's setting of now, or
// without one where this device does not know it.
func TestMachineIsTestedAgainFromTheLog(t *testing.T) {
	browser.Alongside(t)
	now := strings.NewReplacer("538.0", "564.3").Replace(keptHeron)
	p := withMachines(t, now)
	for _, id := range []string{"k3x9", "other"} {
		p.Open("/measure/#v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05&machine=Heron&axisname=extruder&id=" + id)
		p.Click("#keep")
		p.Click("#keep-do")
		p.Wait(`document.getElementById("kept").textContent.includes("Saved.")`)
	}
	p.Open("/log/")
	links := browser.Eval[[]string](p, `[...document.querySelectorAll("#log-list li")].map((li) => [...li.querySelectorAll("a")].find((a) => a.textContent === "Test again").hash)`)
	require.Len(t, links, 2)
	with := 0
	for _, hash := range links {
		assert.NotContains(t, hash, "rest=")
		assert.Contains(t, hash, "asked=80&mark=105&tool=caliper-0.05")
		p.Open("/measure/" + hash)
		if strings.Contains(hash, "k3x9") {
			with++
			assert.Equal(t, "564.3", p.Field("steps"))
			assert.False(t, has(p, "#setting-machine"), "it is the setting of now")
		} else {
			assert.Empty(t, p.Field("steps"))
		}
	}
	assert.Equal(t, 1, with)
}
