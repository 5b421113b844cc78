//go:build !wasm

package pages

import (
	"image/color"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// A typeface draws the letters of a font. They are outlines like all else on a picture:
// the font package's own drawing shows, here and there, how a processor rounds.
type typeface struct {
	font *sfnt.Font
	size fixed.Int26_6 // in pixels
	room *sfnt.Buffer
}

// fontOf returns a font in any size, in pixels.
func fontOf(ttf []byte) (func(size float64) typeface, error) {
	f, err := sfnt.Parse(ttf)
	return func(size float64) typeface {
		return typeface{f, fixed.Int26_6(64 * snap(size)), &sfnt.Buffer{}}
	}, err
}

// lay visits the letters of a text with their places, counted from its beginning, and
// returns how wide it is.
func (f typeface) lay(text string, visit func(letter sfnt.GlyphIndex, at fixed.Int26_6)) (wide fixed.Int26_6) {
	before := sfnt.GlyphIndex(0)
	for _, r := range text {
		letter := must(f.font.GlyphIndex(f.room, r))
		if before != 0 {
			if kern, err := f.font.Kern(f.room, before, letter, f.size, font.HintingNone); err == nil { // or it has none
				wide += kern
			}
		}
		if visit != nil {
			visit(letter, wide)
		}
		wide += must(f.font.GlyphAdvance(f.room, letter, f.size, font.HintingNone))
		before = letter
	}
	return wide
}

// width is how wide a text is, in pixels.
func (f typeface) width(text string) float64 { return float64(f.lay(text, nil)) / 64 }

// write writes a text that begins at x, on the line at y.
func (c canvas) write(f typeface, text string, x, y float64, ink color.Color) {
	f.lay(text, func(letter sfnt.GlyphIndex, at fixed.Int26_6) {
		left := x + float64(at)/64
		on := func(p fixed.Point26_6) dot { return dot{left + float64(p.X)/64, y + float64(p.Y)/64} }
		var outlines [][]dot
		var pen dot
		for _, s := range must(f.font.LoadGlyph(f.room, letter, f.size, nil)) {
			to := on(s.Args[0])
			switch s.Op {
			case sfnt.SegmentOpMoveTo:
				outlines = append(outlines, nil)
				add(outlines, to)
			case sfnt.SegmentOpLineTo:
				add(outlines, to)
			case sfnt.SegmentOpQuadTo:
				from, by := pen, to
				to = on(s.Args[1])
				const pieces = 8
				for i := 1; i <= pieces; i++ {
					t := float64(i) / pieces
					bend := func(a, b, c float64) float64 { return (1-t)*(1-t)*a + 2*t*(1-t)*b + t*t*c }
					add(outlines, dot{bend(from.x, by.x, to.x), bend(from.y, by.y, to.y)})
				}
			default:
				panic("app: an outline of a kind that the Go fonts do not have")
			}
			pen = to
		}
		c.fill(ink, outlines...)
	})
}

// add puts a point at the end of the last outline.
func add(outlines [][]dot, p dot) {
	last := len(outlines) - 1
	outlines[last] = append(outlines[last], p)
}

// must is for what fails only on fonts that are damaged.
func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}
