//go:build !wasm

package pages

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"strings"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/vector"

	"striderule/app/site"
	"striderule/calc/report"
)

// A page's preview picture is what others show beside a link to it. It is drawn
// when the site is built, and no page loads it.
const (
	previewWide = 1200
	previewHigh = 630
	previewEdge = 64 // around what is written
)

// The colours of the style sheet, light.
var (
	inkColour    = color.RGBA{0x1c, 0x27, 0x33, 0xff}
	softColour   = color.RGBA{0x4a, 0x57, 0x63, 0xff}
	lineColour   = color.RGBA{0x8a, 0x8f, 0x8c, 0xff}
	paperColour  = color.RGBA{0xf7, 0xf5, 0xee, 0xff}
	sheetColour  = color.RGBA{0xff, 0xfd, 0xf7, 0xff}
	gridColour   = color.RGBA{0xec, 0xe6, 0xd6, 0xff}
	accentColour = color.RGBA{0xa6, 0x3c, 0x19, 0xff}
)

// previewPalette has the colours and what lies between them and the paper: few
// colours make a small file.
func previewPalette() color.Palette {
	palette := color.Palette{paperColour, sheetColour, gridColour}
	for _, c := range []color.RGBA{inkColour, softColour, lineColour, accentColour} {
		const steps = 6
		for i := 1; i <= steps; i++ {
			mix := func(a, b uint8) uint8 { return uint8((int(a)*(steps-i) + int(b)*i + steps/2) / steps) }
			palette = append(palette, color.RGBA{mix(paperColour.R, c.R), mix(paperColour.G, c.G), mix(paperColour.B, c.B), 0xff})
		}
	}
	return palette
}

// previewPNG draws a page's picture: its name, its question, and a drawing of its
// example, or else strides along a rule, as many as the page has before it.
func previewPNG(title, question string, drawing *report.Drawing, strides int) ([]byte, error) {
	c := canvas{image.NewRGBA(image.Rect(0, 0, previewWide, previewHigh))}
	draw.Draw(c.RGBA, c.Bounds(), image.NewUniform(paperColour), image.Point{}, draw.Src)
	for at := 30; at < previewWide; at += 30 {
		draw.Draw(c.RGBA, image.Rect(at, 0, at+1, previewHigh), image.NewUniform(gridColour), image.Point{}, draw.Src)
		draw.Draw(c.RGBA, image.Rect(0, at, previewWide, at+1), image.NewUniform(gridColour), image.Point{}, draw.Src)
	}
	draw.Draw(c.RGBA, image.Rect(0, 0, previewWide, 14), image.NewUniform(inkColour), image.Point{}, draw.Src)
	bold, err := fontOf(gobold.TTF)
	if err != nil {
		return nil, err
	}
	regular, err := fontOf(goregular.TTF)
	if err != nil {
		return nil, err
	}
	c.mark(previewEdge, 44, 1.1)
	c.write(bold(38), site.Name, previewEdge+84, 92, inkColour)
	y := 190.0
	for _, text := range wrapped(bold(66), title) {
		c.write(bold(66), text, previewEdge, y, inkColour)
		y += 76
	}
	for _, text := range wrapped(regular(36), question) {
		c.write(regular(36), text, previewEdge, y, softColour)
		y += 48
	}
	if drawing != nil {
		c.sketch(regular, *drawing, y-20)
	} else {
		c.rule(strides)
	}
	small := image.NewPaletted(c.Bounds(), previewPalette())
	draw.Draw(small, small.Bounds(), c.RGBA, image.Point{}, draw.Src)
	var b bytes.Buffer
	err = (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&b, small)
	return b.Bytes(), err
}

// wrapped breaks a text into lines that fit.
func wrapped(f typeface, text string) []string {
	var lines []string
	for _, word := range strings.Fields(text) {
		if n := len(lines); n > 0 && f.width(lines[n-1]+" "+word) <= previewWide-2*previewEdge {
			lines[n-1] += " " + word
		} else {
			lines = append(lines, word)
		}
	}
	return lines
}

// A canvas is a picture in the making, in pixels from its upper left corner.
type canvas struct{ *image.RGBA }

// snap rounds a coordinate to a tiny part of a pixel, finer than any that is meant to be
// told apart. Some processors melt a product and a sum into one step, rounded once: what is
// drawn must not show which one it was.
func snap(at float64) float64 {
	const parts = 1 << 16
	return math.Round(parts*at) / parts
}

type dot struct{ x, y float64 }

// fill fills outlines that go round in one sense, or overlaps would cancel. Only
// the part of the picture that they lie in is looked at.
func (c canvas) fill(ink color.Color, outlines ...[]dot) {
	x1, y1, x2, y2 := float64(previewWide), float64(previewHigh), 0.0, 0.0
	for _, outline := range outlines {
		for i, p := range outline {
			p = dot{snap(p.x), snap(p.y)}
			outline[i] = p
			x1, y1, x2, y2 = min(x1, p.x), min(y1, p.y), max(x2, p.x), max(y2, p.y)
		}
	}
	area := image.Rect(int(x1), int(y1), int(x2)+1, int(y2)+1)
	z := vector.NewRasterizer(area.Dx(), area.Dy())
	for _, outline := range outlines {
		for i, p := range outline {
			if x, y := float32(p.x)-float32(area.Min.X), float32(p.y)-float32(area.Min.Y); i == 0 {
				z.MoveTo(x, y)
			} else {
				z.LineTo(x, y)
			}
		}
		z.ClosePath()
	}
	z.Draw(c.RGBA, area, image.NewUniform(ink), image.Point{})
}

// stroke draws along points, with round ends and corners.
func (c canvas) stroke(ink color.Color, wide float64, points ...dot) {
	var outlines [][]dot
	for i, p := range points {
		outlines = append(outlines, round(p, wide/2, 16))
		if i == 0 {
			continue
		}
		q := points[i-1]
		if long := math.Hypot(p.x-q.x, p.y-q.y); long > 0 {
			dx, dy := (p.x-q.x)/long*wide/2, (p.y-q.y)/long*wide/2
			outlines = append(outlines, []dot{{q.x + dy, q.y - dx}, {p.x + dy, p.y - dx}, {p.x - dy, p.y + dx}, {q.x - dy, q.y + dx}})
		}
	}
	c.fill(ink, outlines...)
}

// round is a circle's outline.
func round(at dot, r float64, corners int) []dot {
	var outline []dot
	for i := range corners {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(corners))
		outline = append(outline, dot{at.x + r*cos, at.y + r*sin})
	}
	return outline
}

// stride is an arc from one place to another with an arrow's head.
func (c canvas) stride(from, to dot, high, wide float64) {
	at := func(t float64) dot {
		return dot{from.x + (to.x-from.x)*t, from.y + (to.y-from.y)*t - high*4*t*(1-t)}
	}
	// The line ends within the head, which comes from where it ends.
	const steps = 100
	arc := []dot{from}
	for i := 1; i < steps && math.Hypot(to.x-arc[i-1].x, to.y-arc[i-1].y) > 3*wide; i++ {
		arc = append(arc, at(float64(i)/steps))
	}
	c.stroke(accentColour, wide, arc...)
	a := arc[len(arc)-1]
	long := math.Hypot(to.x-a.x, to.y-a.y)
	dx, dy := (to.x-a.x)/long*wide*3.4, (to.y-a.y)/long*wide*3.4
	c.fill(accentColour, []dot{to, {to.x - dx - dy*0.45, to.y - dy + dx*0.45}, {to.x - dx + dy*0.45, to.y - dy - dx*0.45}})
}

// mark is the site's own, as in web/icon.svg.
func (c canvas) mark(x, y, scale float64) {
	p := func(px, py float64) dot { return dot{x + px*scale, y + py*scale} }
	c.stroke(inkColour, 3.5*scale, p(10, 38), p(10, 50), p(54, 50), p(54, 38))
	for _, tick := range []dot{{21, 43}, {32, 41}, {43, 43}} {
		c.stroke(inkColour, 3.5*scale, p(tick.x, 50), p(tick.x, tick.y))
	}
	c.stride(p(11, 29), p(52, 31), 19*scale, 4.5*scale)
}

// rule is a rule with strides along it.
func (c canvas) rule(strides int) {
	const left, right, y = previewEdge, previewWide - previewEdge, 560.0
	c.stroke(inkColour, 5, dot{left, y}, dot{right, y})
	const ticks = 40
	at := func(n float64) float64 { return left + (right-left)*n/ticks }
	for i := range ticks + 1 {
		high := []float64{44, 18, 18, 18, 18, 30, 18, 18, 18, 18}[i%10]
		c.stroke(inkColour, 3, dot{at(float64(i)), y}, dot{at(float64(i)), y - high})
	}
	if strides == 0 {
		return
	}
	step := float64(ticks) / float64(strides)
	for i := range strides {
		c.stride(dot{at(float64(i) * step), y - 62}, dot{at(float64(i+1) * step), y - 62}, min(90, 8*step), 7)
	}
}
