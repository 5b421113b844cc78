package pages

import (
	"strconv"
	"testing"

	"striderule/calc/logbook"
	"striderule/scripts/prove/browser"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// waitListed waits until the log lists so many entries.
func waitListed(p *browser.Page, n int) {
	p.T().Helper()
	p.Wait(`document.querySelectorAll("#log-list > li").length === ` + strconv.Itoa(n))
}

// renoted is an entry with another note under the same ID, as a file of another
// device may have it.
func renoted(e logbook.Entry) logbook.Entry {
	e.Note = "another note"
	return e
}

// notesInStorage are those of all entries in the storage.
func notesInStorage(p *browser.Page) map[string]int {
	p.T().Helper()
	notes := map[string]int{}
	for _, text := range inStorage(p) {
		e, err := logbook.Read(text)
		require.NoError(p.T(), err)
		notes[e.Note]++
	}
	return notes
}

func TestOneSheetInTwoTabs(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	q := p.Beside()
	for _, tab := range []*browser.Page{p, q} {
		tab.Open("/measure/#" + heron)
	}
	p.FillNth("rest", 0, "28.5")
	q.FillNth("rest", 0, "27.5")
	for tab, rest := range map[*browser.Page]string{p: "28.5", q: "27.5"} {
		tab.Wait(`location.hash.includes("rest=` + rest + `,")`)
		tab.Reload()
		assert.Equal(t, rest, tab.Field("rest"))
	}
}

func TestKeepingInTwoTabs(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#" + heron)
	log, q := p.Beside(), p.Beside()
	log.Open("/log/")
	q.Open("/measure/#" + heron)
	// Both forms are open before either keeps.
	for tab, machine := range map[*browser.Page]string{p: "Heron", q: "Plover"} {
		press(tab, "#keep")
		tab.Fill("keep-machine", machine)
	}
	press(p, "#keep-do")
	press(q, "#keep-do")
	waitListed(log, 2)
	press(log, ".log-delete")
	waitListed(log, 1)
	assert.Len(t, inStorage(p), 1)
	press(q, "#keep")
	q.Fill("keep-machine", "Dunlin")
	press(q, "#keep-do")
	waitListed(log, 2)
	press(log, "#undo")
	waitListed(log, 3)
	assert.Len(t, inStorage(q), 3)
}

func TestLogInTwoTabs(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/log/")
	fillLog(p, logbook.Example()[:4])
	p.Reload()
	q := p.Beside()
	q.Open("/log/")
	before := inStorage(p)

	press(p, ".log-delete")
	waitListed(q, 3)
	press(q, "#delete-listed")
	p.Wait(`document.getElementById("log-empty")`)
	press(p, "#undo") // each puts back what it deleted itself
	waitListed(q, 1)
	press(q, "#undo")
	waitListed(p, 4)
	assert.Equal(t, before, inStorage(p))
}

// deaf lets a tab hear nothing of the others, as one that the system has stopped.
const deaf = `addEventListener("storage", (e) => e.stopImmediatePropagation(), true)`

// What a tab shows may be old. It overwrites and deletes nothing that it does not know.
func TestLogOfATabThatIsBehind(t *testing.T) {
	browser.Alongside(t)
	first, second := logbook.Example()[0], logbook.Example()[1]
	for _, c := range []struct {
		name  string
		meant func(p *browser.Page) // in the tab that is behind
		notes map[string]int        // in the end
	}{
		{"imports a file", func(p *browser.Page) {
			choose(p, "log.json", logbook.WriteFile([]logbook.Entry{renoted(second)}))
			assert.Contains(t, p.Text("#import-report"), "1 entry shares its ID with a different entry here")
		}, map[string]int{first.Note: 1, second.Note: 1, "another note": 1}},
		{"deletes", func(p *browser.Page) {
			browser.Eval[bool](p, `(localStorage.setItem("`+logKey+first.ID+`", `+strconv.Quote(renoted(first).Text())+`), true)`)
			press(p, ".log-delete")
			assert.Equal(t, "0 entries deleted. 1 entry was changed in another tab and was left alone.", p.Text("#log-said"))
		}, map[string]int{second.Note: 1, "another note": 1}},
		{"undoes", func(p *browser.Page) {
			press(p, ".log-delete")
			browser.Eval[bool](p, `(localStorage.setItem("`+logKey+first.ID+`", `+strconv.Quote(renoted(first).Text())+`), true)`)
			press(p, "#undo")
		}, map[string]int{first.Note: 1, second.Note: 1, "another note": 1}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := browser.NewSite(t)
			p := s.NewPage(t)
			p.Before(deaf)
			p.Open("/log/")
			fillLog(p, []logbook.Entry{first})
			p.Reload()
			q := p.Beside()
			q.Open("/log/")
			choose(q, "log.json", logbook.WriteFile([]logbook.Entry{second}))
			require.Equal(t, 1, listed(p), "it was to be behind")
			c.meant(p)
			assert.Equal(t, c.notes, notesInStorage(q))
		})
	}
}

// A page that the browser lays aside, to show it again by Back, hears nothing.
func TestLogThatLayAside(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Before(deaf)
	p.Open("/log/")
	fillLog(p, logbook.Example()[:3])
	require.Equal(t, 0, listed(p))
	browser.Eval[bool](p, `dispatchEvent(new PageTransitionEvent("pageshow", { persisted: true }))`)
	waitListed(p, 3)
}

// An entry of a newer version, which this one can't read, may have the ID of one in a file.
func TestNewerEntryIsNotOverwritten(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/log/")
	e := logbook.Example()[0]
	newer := "log=2&id=" + e.ID + "&what=ever"
	browser.Eval[bool](p, `(localStorage.setItem("`+logKey+e.ID+`", "`+newer+`"), true)`)
	p.Reload()
	choose(p, "log.json", logbook.WriteFile([]logbook.Entry{e}))
	assert.Equal(t, 1, listed(p))
	assert.Len(t, inStorage(p), 2)
	assert.Equal(t, newer, inStorage(p)[logKey+e.ID])
}
