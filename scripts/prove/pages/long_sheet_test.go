package pages

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// put is Fill for a long text, as by pasting.
func put(p *browser.Page, id, text string) {
	p.T().Helper()
	browser.Eval[bool](p, `((f, text) => { f.value = text; f.dispatchEvent(new Event("input", { bubbles: true })); f.dispatchEvent(new Event("change", { bubbles: true })); return true; })(document.getElementById("`+id+`"), "`+text+`")`)
	p.Settle()
}

// A sheet may be longer than a link: in its own tab it is whole all the same, after a
// reload and by Back. As somebody's link it is cut, and that is said.
func TestSheetLongerThanALink(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/plan/#v=1&steps=538.0")
	long := strings.Repeat("é", 190)
	p.Unfold()
	ids := []string{"f-begin", "f-move", "f-stop", "f-finish"}
	for _, id := range ids {
		put(p, id, long)
	}
	p.Wait(`location.hash.length > 4000`)
	require.Contains(t, p.Text("#result"), "This sheet is too long for a link")
	whole := func(when string) {
		t.Helper()
		for _, id := range ids {
			assert.Equal(t, long, p.Field(id), "%s %s", id, when)
		}
		assert.Equal(t, "538.0", p.Field("steps"), when)
		assert.NotContains(t, strings.Join(shownProblems(p), " "), "longer than 4000")
	}
	p.Reload()
	whole("after a reload")
	p.Reload()
	whole("after another")
	follow(p, "swap")
	p.Back()
	whole("by Back")
	p.Fill("steps", "540")
	p.Wait(`location.hash.includes("steps=540")`)
	p.Reload()
	assert.Equal(t, "540", p.Field("steps"))
	assert.Equal(t, long, p.Field("f-finish"))

	address := p.Address()
	q := s.NewPage(t)
	q.Open(strings.TrimPrefix(address, strings.TrimSuffix(s.URL, "/")))
	assert.Contains(t, strings.Join(shownProblems(q), " "), "The link is longer than 4000 characters; the rest wasn't read.")
}

// A whole file pasted into a field by mistake takes nothing else with it. (WebKit lets no more
// than 524,288 characters into one.)
func TestFileInAField(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/#" + heron)
	p.Focus("tol", 0)
	browser.Eval[bool](p, `((f) => { f.value = "x".repeat(5e5); f.dispatchEvent(new Event("input", { bubbles: true })); return true; })(document.getElementById("f-tol"))`)
	p.Settle()
	p.Wait(`location.hash.length > 5e5`)
	p.Reload()
	assert.Len(t, p.Field("tol"), 500000)
	assert.Equal(t, "28.7", p.Field("rest"))
	assert.Equal(t, "538.0", p.Field("steps"))
}
