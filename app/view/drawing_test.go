//go:build !wasm

package view

import (
	"bufio"
	"os"
	"strings"
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"striderule/app/markup"
	"striderule/calc"
	"striderule/calc/report"
)

// everyDrawing visits the drawings of the sheets that calc holds against its
// laws.
func everyDrawing(t *testing.T, visit func(t *testing.T, d report.Drawing)) {
	t.Helper()
	file, err := os.Open("../../calc/testdata/drawings.txt")
	require.NoError(t, err)
	defer func() { require.NoError(t, file.Close()) }()
	n := 0
	for lines := bufio.NewScanner(file); lines.Scan(); {
		slug, fragment, _ := strings.Cut(lines.Text(), " ")
		page, ok := calc.PageOf(slug)
		if !ok {
			continue // a comment
		}
		r := calc.Load(page, fragment).Report()
		if r.Picture != nil {
			n++
			t.Run(lines.Text()+" "+r.Picture.ID, func(t *testing.T) { visit(t, *r.Picture) })
		}
		for _, part := range r.Parts {
			for _, b := range part.Blocks {
				if d, ok := b.(report.Drawing); ok {
					n++
					t.Run(lines.Text()+" "+d.ID, func(t *testing.T) { visit(t, d) })
				}
			}
		}
	}
	require.Greater(t, n, 60)
}

// What is written stays on the paper and does not cover other writing.
func TestDrawingsAreReadable(t *testing.T) {
	everyDrawing(t, func(t *testing.T, d report.Drawing) {
		const above, below = 9, 2 // of the base line
		all := Inscriptions(d)
		for i, a := range all {
			assert.GreaterOrEqual(t, a.Left, 0.0, a.Text)
			assert.LessOrEqual(t, a.Left+a.Wide, float64(report.PaperWidth), a.Text)
			assert.GreaterOrEqual(t, a.Y-above, 0.0, a.Text)
			assert.LessOrEqual(t, a.Y+below, d.High, a.Text)
			for _, b := range all[i+1:] {
				apart := a.Left+a.Wide <= b.Left || b.Left+b.Wide <= a.Left || a.Y+below <= b.Y-above || b.Y+below <= a.Y-above
				assert.True(t, apart, "%s / %s", a.Text, b.Text)
			}
		}
	})
}

// The picture is an image with a name, made of classes alone, and its markup
// can stand in a page.
func TestDrawingMarkup(t *testing.T) {
	everyDrawing(t, func(t *testing.T, d report.Drawing) {
		markup, err := markup.Clean(app.HTMLString(drawing(d)), "../")
		require.NoError(t, err)
		for _, word := range []string{"NaN", "Inf", "style", "e+", "e-0"} {
			for _, attribute := range []string{` d="`, ` x="`, ` y="`, ` width="`} {
				for _, rest := range strings.Split(markup, attribute)[1:] {
					value, _, _ := strings.Cut(rest, `"`)
					assert.NotContains(t, value, word)
				}
			}
		}
		assert.NotContains(t, markup, " style=")
		doc, err := html.Parse(strings.NewReader(markup))
		require.NoError(t, err)
		var images, written []string
		for n := range doc.Descendants() {
			if n.Data == "svg" {
				for _, a := range n.Attr {
					if a.Key == "aria-label" {
						images = append(images, a.Val)
					}
				}
				assert.Contains(t, n.Attr, html.Attribute{Key: "role", Val: "img"})
			}
			if n.Type == html.TextNode && n.Parent.Data == "text" {
				written = append(written, n.Data)
			}
		}
		assert.Equal(t, []string{d.Alt}, images)
		var want []string
		for _, w := range Inscriptions(d) {
			for _, text := range []string{w.Letter, w.Text} {
				if text != "" {
					want = append(want, text)
				}
			}
		}
		assert.Equal(t, want, written)
	})
}

func TestDimensionLinesPointOutwardsWhereThereIsRoom(t *testing.T) {
	paths := func(d report.Dim) string {
		return app.HTMLString(drawing(report.Drawing{To: report.PaperWidth, High: 50, Shapes: []report.Shape{d}}))
	}
	at := func(from, to float64, r report.Role) string {
		return paths(report.Dim{Role: r, A: report.XY{X: from, Y: 30}, B: report.XY{X: to, Y: 30}, Base: 30, Text: "x"})
	}
	assert.Equal(t, 2, strings.Count(at(100, 200, report.Measure), "head "))
	assert.Contains(t, at(100, 200, report.Measure), `d="M100.0 30.0L200.0 30.0"`)
	assert.Contains(t, at(100, 104, report.Measure), `d="M87.0 30.0L117.0 30.0"`, "from outside where it is short")
	assert.Equal(t, 1, strings.Count(at(200, 100, report.Motion), "head "), "what moves, moves one way")
	assert.NotContains(t, at(100, 100, report.Motion), "NaN")
}

func TestWheelsHaveTheirTeeth(t *testing.T) {
	assert.Equal(t, 4*12-1, strings.Count(wheel(50, 50, 20, 12), "L"))
	assert.LessOrEqual(t, strings.Count(wheel(50, 50, 20, 10_000), "L"), 4*28, "no more than can be told apart")
	assert.NotContains(t, wheel(50, 50, 20, 1), "L", "a worm's start is no tooth")
}
