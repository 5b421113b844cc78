package calc_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// A sentence about a number that cannot be read ends in examples of how to write it, one of
// which can be typed there.
func TestWhatIsAdvisedIsRead(t *testing.T) {
	eachPage(t, func(t *testing.T, p sheet.Page) {
		for _, field := range calc.NewForm(p).Fields() {
			field.Cells.Resize(1)
			entry, ok := field.Cells.At(0).(*unit.Entry)
			if !ok {
				continue
			}
			says := sheet.ProblemWith(field, 0, entry.Set("?")).Says
			_, like, found := strings.Cut(says, field.Name(0)+": “?” isn't a number. Write it like ")
			require.True(t, found, says)
			fits := false
			for _, example := range strings.Split(strings.TrimSuffix(like, "."), " or ") {
				err := entry.Set(example)
				fits = fits || err == nil
				assert.True(t, err == nil || errors.Is(err, unit.ErrRange), "%s: %s", field.Key, says)
			}
			assert.True(t, fits, "one lies within the range: %s", says)
		}
	})
}

// Rows are named by the words of their group, whichever these are.
func TestRowsHaveWords(t *testing.T) {
	eachPage(t, func(t *testing.T, p sheet.Page) {
		of := map[string]*sheet.Group{}
		for _, field := range calc.NewForm(p).Fields() {
			g := field.Group
			if g == nil {
				continue
			}
			if before, seen := of[g.Words.ID]; seen {
				assert.Same(t, g, before, "ids are told apart")
			}
			of[g.Words.ID] = g
			assert.Regexp(t, `^[a-z]+(-[a-z]+)*$`, g.Words.ID)
			assert.NotEmpty(t, g.Words.All)
			assert.NotEmpty(t, g.Words.Add)
			assert.Contains(t, g.Row(6), "7")
			assert.Equal(t, g.Row(6), g.RowsFrom(6, 1))
			assert.Equal(t, g.Row(6), g.RowsFrom(6, 0), "where nothing was put in")
			assert.Regexp(t, `\b7\b.*\b9\b`, g.RowsFrom(6, 3))
			assert.Contains(t, field.Name(6), g.Row(6))
			assert.Contains(t, field.Named(), field.Label)
		}
	})
}
