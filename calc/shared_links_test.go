package calc_test

import (
	_ "embed"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/link"
)

// Embedded, because there are no files in a browser, where these tests run as well.
//
//go:embed testdata/shared.txt
var sharedFile string

// Links as the pages of an edition shared them, with the result that their senders saw.
// They are opened by every later build, and this file only grows: a later edition adds its
// own lines, by UPDATE=1 for links that have none of this edition yet. Those of an edition before
// give the same value, its ± perhaps worked out differently since.
func TestSharedLinksOpen(t *testing.T) {
	if os.Getenv("UPDATE") != "" {
		shareAnew(t)
	}
	n := 0
	counts := map[form.Check]int{}
	for line := range strings.Lines(sharedFile) {
		slug, fragment, ok := strings.Cut(strings.TrimSpace(line), " ")
		if !ok || slug == "#" {
			continue
		}
		n++
		p, ok := calc.PageOf(slug)
		require.True(t, ok, slug)
		f := calc.Load(p, fragment)
		assert.Empty(t, f.Problems(), fragment)
		check, says := f.Check()
		var sheet []link.Piece
		now := false
		for _, piece := range link.Split(fragment) {
			if piece.Key != link.ClaimKey {
				sheet = append(sheet, piece)
				continue
			}
			now = strings.Split(piece.Cells[0], ":")[3] == form.Edition
		}
		counts[check]++
		switch _, longer := plannedLonger[link.Join(sheet)]; {
		case now:
			assert.Equal(t, form.Same, check, "%s: %s", fragment, says)
		case longer:
			assert.Equal(t, form.Differs, check, fragment)
			assert.Contains(t, says, "this is edition "+form.Edition, "it says why")
		default:
			assert.Contains(t, []form.Check{form.Same, form.Reworked}, check, "%s: %s", fragment, says)
		}
	}
	assert.GreaterOrEqual(t, n, 70)
	// Of no link but those of plannedLonger the value itself has become another, not even of
	// several speeds: where a line showed slip before, it's that line's value still.
	assert.Equal(t, len(plannedLonger), counts[form.Differs])
	assert.Equal(t, 14, counts[form.Reworked])
}

// shareAnew adds what links.txt is shared as today.
func shareAnew(t *testing.T) {
	t.Helper()
	for _, p := range calc.Pages {
		for _, l := range links(t)[p.Slug] {
			f := calc.Load(p, l.fragment)
			line := p.Slug + " " + f.ShareFragment() + "\n"
			if f.Report().Answer != nil && !strings.Contains(sharedFile, line) {
				sharedFile += line
			}
		}
	}
	require.NoError(t, os.WriteFile("testdata/shared.txt", []byte(sharedFile), 0o644))
}
