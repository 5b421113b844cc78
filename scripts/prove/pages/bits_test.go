package pages

import (
	"maps"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// Every figure that the program which is shipped shows for the links that were ever
// shared has the same bits as natively: a full value is the shortest text of them.
func TestLinksToTheLastBit(t *testing.T) {
	browser.Alongside(t)
	type link struct{ slug, fragment string }
	all, order := map[link]map[string]string{}, []link{}
	for _, line := range portableFigures(t) {
		m := regexp.MustCompile(`^figure of (\S+) (\S+): (\S+) (\S+)$`).FindStringSubmatch(line)
		if m == nil {
			continue // of the vectors
		}
		l := link{m[1], m[2]}
		if all[l] == nil {
			all[l], order = map[string]string{}, append(order, l)
		}
		all[l][m[3]] = m[4]
	}
	require.Greater(t, len(order), 50)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	compared, open := 0, ""
	for _, l := range order {
		if l.slug != open {
			p.Open("/" + l.slug + "/")
			open = l.slug
		}
		browser.Eval[bool](p, `((location.hash = "#`+l.fragment+`"), true)`)
		p.Unfold()
		var got map[string]string
		for range 20 { // what is folded away follows later
			got = browser.Eval[map[string]string](p, `Object.fromEntries([...document.querySelectorAll("data[id^=out-]")].map((d) => [d.id, d.value]))`)
			if maps.Equal(all[l], got) {
				break
			}
			p.Settle()
		}
		assert.Equal(t, all[l], got, "%s %s", l.slug, l.fragment)
		compared += len(got)
	}
	t.Logf("%s: %d figures of %d links are the same to the last bit", browser.Name(), compared, len(order))
}
