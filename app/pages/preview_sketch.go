//go:build !wasm

package pages

import (
	"image/color"
	"math"

	"striderule/app/view"
	"striderule/calc/report"
)

// roleInks are the colours and widths of a drawing's roles, as in the style sheet.
var roleInks = [...]struct {
	colour color.RGBA
	wide   float64
}{
	report.Body: {inkColour, 1.5}, report.Motion: {accentColour, 1.75}, report.Measure: {softColour, 0.9},
	report.Mark: {accentColour, 2.5}, report.Ghost: {lineColour, 1.25},
}

// sketch puts a drawing of a report below a height, as large as there is room.
func (c canvas) sketch(face func(float64) typeface, d report.Drawing, top float64) {
	scale := min((previewHigh-28-top)/d.High, (previewWide-2*previewEdge)/report.PaperWidth)
	left := previewWide - previewEdge - report.PaperWidth*scale
	top = previewHigh - 28 - d.High*scale
	x := view.Span{Lo: d.From, Hi: d.To, From: 0, To: report.PaperWidth}
	on := func(px, py float64) dot { return dot{left + px*scale, top + py*scale} }
	place := func(p report.XY) dot { return on(x.At(p.X), p.Y) }
	for _, s := range d.Shapes {
		switch s := s.(type) {
		case report.Stroke:
			var points []dot
			for _, p := range s.Points {
				points = append(points, place(p))
			}
			ink := roleInks[s.Role]
			c.stroke(ink.colour, ink.wide*scale, points...)
			if s.Head {
				c.head(ink.colour, points[len(points)-2], points[len(points)-1], 9*scale)
			}
		case report.Disc:
			ink, at := roleInks[s.Role], place(s.At)
			outline := rim(at, s.R*scale, s.Teeth, scale)
			c.fill(sheetColour, outline)
			c.stroke(ink.colour, ink.wide*scale, append(outline, outline[0])...)
		case report.Plate:
			ink, a, b := roleInks[s.Role], place(s.A), place(s.B)
			outline := []dot{a, {b.x, a.y}, b, {a.x, b.y}}
			fill := sheetColour
			if s.Role == report.Measure {
				fill = gridColour
			}
			c.fill(fill, outline)
			c.stroke(ink.colour, ink.wide*scale, append(outline, a)...)
		case report.Dim:
			ink, a, b := roleInks[report.Measure], place(s.A), place(s.B)
			c.stroke(ink.colour, ink.wide*scale, a, b)
			c.head(ink.colour, a, b, 7*scale)
			c.head(ink.colour, b, a, 7*scale)
		}
	}
	for _, t := range view.Inscriptions(d) {
		f := face(12 * scale)
		at := on(t.Left+t.Share()*t.Wide, t.Y)
		c.write(f, t.Text, at.x-t.Share()*f.width(t.Text), at.y, inkColour)
	}
}

// head is an arrow's head at b, coming from a.
func (c canvas) head(ink color.Color, a, b dot, long float64) {
	d := math.Hypot(b.x-a.x, b.y-a.y)
	if d == 0 {
		return
	}
	dx, dy := (b.x-a.x)/d*long, (b.y-a.y)/d*long
	const slim = 0.28
	c.fill(ink, []dot{b, {b.x - dx - dy*slim, b.y - dy + dx*slim}, {b.x - dx + dy*slim, b.y - dy - dx*slim}})
}

// rim is the outline of a wheel with teeth, as the page draws it.
func rim(at dot, r float64, teeth int, scale float64) []dot {
	if teeth < 4 {
		return round(at, r, 64)
	}
	const pitch, high = 4.5, 1.3
	n := min(teeth, int(2*math.Pi*r/scale/pitch))
	var outline []dot
	for i := range 4 * n {
		edge := r + high*scale
		if i%4 > 1 {
			edge = r - high*scale
		}
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.5) / float64(4*n))
		outline = append(outline, dot{at.x + edge*cos, at.y + edge*sin})
	}
	return outline
}
