package calc_test

import (
	"os"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/report"
)

// TestFiguresStay holds every figure of the sheets that are kept for tests against
// testdata/figures.txt, in full and without a word of what is said about it: whoever
// changes words or the house around them sees that no figure changed. To make it anew:
//
//	UPDATE=1 go test ./calc -run TestFiguresStay
//
// After the sheet stand the headline's ID and verdict, then each figure with its
// uncertainty.
func TestFiguresStay(t *testing.T) {
	var b strings.Builder
	sheets := sheetLines(t)
	for _, p := range calc.Pages {
		for _, s := range sheets[p.Slug] {
			fragment, edits, _ := strings.Cut(s.line, " > ")
			f := calc.Load(p, fragment)
			typeInto(f, edits)
			b.WriteString(sheetMark + p.Slug + " " + s.line + "\n")
			writeFigures(&b, f.Report())
		}
	}
	if runtime.GOARCH == "amd64" {
		keptAs(t, figuresFile, b.String())
		return
	}
	// Where products and sums melt into one step the last digits are others.
	kept, err := os.ReadFile(figuresFile)
	require.NoError(t, err)
	was, is := strings.Fields(string(kept)), strings.Fields(b.String())
	require.Len(t, is, len(was))
	for i := range was {
		before, err := strconv.ParseFloat(was[i], 64)
		if err != nil || before == 0 {
			assert.Equal(t, was[i], is[i])
			continue
		}
		now, err := strconv.ParseFloat(is[i], 64)
		require.NoError(t, err)
		assert.InEpsilon(t, before, now, 1e-11)
	}
}

const figuresFile = "testdata/figures.txt"

func writeFigures(b *strings.Builder, r report.Report) {
	if a := r.Answer; a != nil {
		b.WriteString(a.ID)
		if a.Verdict != nil {
			b.WriteString(" " + a.Verdict.Word())
		}
		if a.Keep != nil {
			b.WriteString(" keep " + a.Keep.Full())
		}
		b.WriteString("\n")
	}
	for _, f := range r.Figures() {
		b.WriteString("  " + f.ID + " " + f.Full())
		if f.U > 0 {
			u := f
			u.Value = f.U
			b.WriteString(" " + u.Full())
		}
		b.WriteString("\n")
	}
}
