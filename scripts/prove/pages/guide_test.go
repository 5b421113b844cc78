package pages

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/scripts/prove/browser"
)

// litPieces are the fields whose pieces of the guide are lit, and the fields whose hint shows.
const (
	litPieces = `[...new Set([...document.querySelectorAll("#drawing-guide [data-lit]")].map((e) => e.dataset.of))]`
	litHints  = `[...document.querySelectorAll(".hint-line > [data-of]")].filter((e) => e.checkVisibility({visibilityProperty: true})).map((e) => e.dataset.of)`
)

// The field in use lights all of its pieces of the guide and its hint, and no other; a click on a
// piece leads to its field. Before the program is there as well.
func TestGuideAndFieldsLeadToEachOther(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	release := holdProgram(t, s)
	p := s.NewPage(t)
	p.Load("/measure/")
	p.Wait(`typeof Go === "function"`)
	for _, started := range []bool{false, true} {
		if started {
			release()
			p.WaitReady()
		}
		for _, key := range []string{"asked", "mark", "rest"} {
			p.Focus(key, 0)
			assert.Equal(t, []string{key}, browser.Eval[[]string](p, litPieces), "started: %v", started)
			assert.False(t, browser.Eval[bool](p, fmt.Sprintf(`Boolean(document.querySelector("#drawing-guide [data-of=%s]:not([data-lit])"))`, key)), "all of them: %s, started: %v", key, started)
			assert.Equal(t, []string{key}, browser.Eval[[]string](p, litHints), "started: %v", started)
		}
		for key, field := range map[string]string{"asked": "f-asked", "mark": "f-mark", "rest": "f-rest-1"} {
			p.Click("#drawing-guide circle[data-of=" + key + "]")
			assert.Equal(t, field, browser.Eval[string](p, active), "started: %v", started)
			assert.Equal(t, []string{key}, browser.Eval[[]string](p, litPieces), "started: %v", started)
		}
	}
	// It stays lit while what is typed draws the guide anew.
	p.Fill("mark", "105")
	assert.Equal(t, []string{"mark"}, browser.Eval[[]string](p, litPieces), "after a key")
	assert.Contains(t, browser.Eval[string](p, `document.querySelector("#drawing-guide svg").getAttribute("aria-label")`), "105 mm")
}

// Every letter of a guide is the letter of a field of its page, in an empty form and in the example.
func TestLettersAreThoseOfFields(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	seen := 0
	for _, page := range calc.Pages {
		for _, fragment := range []string{"", page.Example} {
			p.Show("/" + page.Slug + "/#" + fragment)
			drawn := browser.Eval[map[string]string](p, `Object.fromEntries([...document.querySelectorAll("#drawing-guide text.letter")].map((e) => [e.textContent, e.dataset.of]))`)
			p.Unfold()
			for letter, of := range drawn {
				labels := browser.Eval[[]string](p, fmt.Sprintf(`%q.split(" ").flatMap((key) => [...document.getElementsByName(key)]).flatMap((f) => [...f.labels]).map((l) => l.querySelector(".letter")?.textContent || "none")`, of))
				require.NotEmpty(t, labels, "%s#%s: %s is of no field on the page", page.Slug, fragment, letter)
				assert.Contains(t, labels, letter, "%s#%s", page.Slug, fragment)
				seen++
			}
		}
	}
	assert.Greater(t, seen, 5)
}
