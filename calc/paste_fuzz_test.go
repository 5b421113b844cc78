package calc_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/link"
)

// What is pasted into rows is told, gives figures that are declared, survives a link,
// and can be taken back.
func FuzzPaste(f *testing.F) {
	f.Add("measure", "rest", 0, "28.7\n28.9\n28.6")
	f.Add("measure", "rest", 2, "What remains\r\n28,7\t90\r\n\t\r\n")
	f.Add("parts", "name", 0, "Heron\tfeed\n\ufeffPlover\tscrew\tx\ty")
	f.Add("rate", "name", 1, "=1+1\n\x00\x01\n%0A")
	f.Fuzz(func(t *testing.T, slug, key string, row int, text string) {
		p, ok := calc.PageOf(slug)
		if !ok {
			return
		}
		form := calc.Load(p, p.Example)
		before, report := form.Fragment(), form.Report()
		pasted := form.Paste(key, row, text)
		if pasted.Group == nil {
			require.Equal(t, before, form.Fragment(), "nothing was pasted")
			return
		}
		require.NotEmpty(t, pasted.Says())
		checkFigures(t, p, form.Report())
		if canonical := form.Fragment(); len(canonical) <= link.MostLink {
			require.Equal(t, canonical, calc.Load(p, canonical).Fragment())
		}
		form.UndoRows(pasted)
		require.Equal(t, before, form.Fragment())
		require.Equal(t, report, form.Report())
	})
}
