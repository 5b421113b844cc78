package view

import (
	"math"
	"strings"
	"unicode/utf8"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/calc/report"
)

// drawing makes lines of a drawing; its text says the same.
func drawing(d report.Drawing) app.UI {
	p := sheetOfPaper{Span{d.From, d.To, 0, report.PaperWidth}, nil, ""}
	for _, s := range d.Shapes {
		p.draw(s)
	}
	for _, t := range Inscriptions(d) { // above all lines
		p.write(t)
	}
	return app.Figure().Class("drawing").ID("drawing-"+d.ID).Body(
		app.If(d.Title != "", func() app.UI { return app.FigCaption().Text(d.Title) }),
		SVG("svg", "viewBox", "0 0 "+px(report.PaperWidth)+" "+px(d.High), "role", "img", "aria-label", d.Alt).Body(p.parts...),
	)
}

// roleClasses tell roles apart.
var roleClasses = [...]string{report.Body: "body", report.Motion: "motion", report.Measure: "measure", report.Mark: "spot", report.Ghost: "ghost"}

// A sheetOfPaper is a drawing in the making.
type sheetOfPaper struct {
	x     Span
	parts []app.UI
	of    string // the field that is being drawn
}

func (p *sheetOfPaper) path(class, d string) {
	p.parts = append(p.parts, p.tagged(SVG("path", "class", class, "d", d), p.of))
}

// tagged says which field a piece shows: web/page.js lights it, and goes there.
func (p *sheetOfPaper) tagged(piece app.HTMLElem, of string) app.HTMLElem {
	if of != "" {
		piece = piece.Attr("data-of", of)
	}
	return piece
}

// write writes on the paper, behind the letter of a field.
func (p *sheetOfPaper) write(t inscription) {
	left := t.Left
	if t.Letter != "" {
		x, y := px(left+letterWide/2), px(t.Y-4)
		p.parts = append(p.parts,
			p.tagged(SVG("circle", "class", "letter", "cx", x, "cy", y, "r", px(letterWide/2)), t.Of),
			p.tagged(SVG("text", "class", "letter", "text-anchor", "middle", "x", x, "y", px(t.Y)).Text(t.Letter), t.Of))
		left += letterWide + letterGap
	}
	if t.Text == "" {
		return
	}
	e := SVG("text", "text-anchor", anchors[t.anchor], "x", px(t.Left+t.Share()*t.Wide), "y", px(t.Y))
	if t.Letter != "" {
		e = SVG("text", "x", px(left), "y", px(t.Y))
	}
	if t.Wide == mostWide { // squeezed, so that all of it is seen
		e = e.Attr("textLength", px(mostWide)).Attr("lengthAdjust", "spacingAndGlyphs")
	}
	p.parts = append(p.parts, p.tagged(e.Text(t.Text), t.Of))
}

func at(x, y float64) string { return px(x) + " " + px(y) }

func (p *sheetOfPaper) draw(s report.Shape) {
	p.of = ""
	switch s := s.(type) {
	case report.Stroke:
		p.of = s.Of
		n := len(s.Points)
		d := "M"
		for i, q := range s.Points {
			if i > 0 {
				d += "L"
			}
			d += at(p.x.At(q.X), q.Y)
		}
		p.path(roleClasses[s.Role], d)
		if s.Head {
			a, b := s.Points[n-2], s.Points[n-1]
			p.head(s.Role, p.x.At(a.X), a.Y, p.x.At(b.X), b.Y, 9)
		}
	case report.Disc:
		p.path("solid "+roleClasses[s.Role], wheel(p.x.At(s.At.X), s.At.Y, s.R, s.Teeth))
	case report.Plate:
		x1, x2 := p.x.At(s.A.X), p.x.At(s.B.X)
		e := SVG("rect", "class", "solid "+roleClasses[s.Role], "x", px(x1), "y", px(s.A.Y), "width", px(max(0.1, x2-x1)), "height", px(s.B.Y-s.A.Y))
		if s.Round {
			e = e.Attr("rx", px(min(x2-x1, s.B.Y-s.A.Y)/2))
		}
		p.parts = append(p.parts, e)
	case report.Dim:
		p.of = s.Of
		p.dim(s)
	}
}

// head is an arrow's head at b, coming from a.
func (p *sheetOfPaper) head(r report.Role, ax, ay, bx, by, long float64) {
	dx, dy := bx-ax, by-ay
	d := math.Sqrt(dx*dx + dy*dy)
	if d == 0 {
		return
	}
	dx, dy = dx/d*long, dy/d*long
	const slim = 0.28
	p.path("head "+roleClasses[r], "M"+at(bx, by)+"L"+at(bx-dx-dy*slim, by-dy+dx*slim)+"L"+at(bx-dx+dy*slim, by-dy-dx*slim)+"Z")
}

// dim is a dimension line with its arrows: inside where there is room, else from
// outside.
func (p *sheetOfPaper) dim(s report.Dim) {
	ax, bx, ay, by := p.x.At(s.A.X), p.x.At(s.B.X), s.A.Y, s.B.Y
	ux, uy := 0.0, 1.0 // from A to B
	if ay == by {
		ux, uy = math.Copysign(1, bx-ax), 0
		if s.Base != ay {
			over := math.Copysign(4, ay-s.Base)
			p.path("measure", "M"+at(ax, s.Base)+"V"+px(ay+over)+"M"+at(bx, s.Base)+"V"+px(by+over))
		}
	}
	long := math.Abs(bx-ax) + math.Abs(by-ay)
	class := roleClasses[s.Role]
	oneWay := s.Role == report.Motion || s.Role == report.Ghost
	switch {
	case oneWay:
		p.path(class, "M"+at(ax, ay)+"L"+at(bx, by)+"M"+at(ax-4*uy, ay-4*ux)+"L"+at(ax+4*uy, ay+4*ux))
		p.head(s.Role, ax, ay, bx, by, min(9, long))
	case long >= 20:
		p.path(class, "M"+at(ax, ay)+"L"+at(bx, by))
		p.head(s.Role, bx, by, ax, ay, 8)
		p.head(s.Role, ax, ay, bx, by, 8)
	default:
		const out = 13
		p.path(class, "M"+at(ax-out*ux, ay-out*uy)+"L"+at(bx+out*ux, by+out*uy))
		p.head(s.Role, ax-out*ux, ay-out*uy, ax, ay, 8)
		p.head(s.Role, bx+out*ux, by+out*uy, bx, by, 8)
	}
}

// wheel is a circle, or the outline of a gear: as many teeth as can be told
// apart at its size.
func wheel(x, y, r float64, teeth int) string {
	if teeth < 4 {
		return "M" + at(x-r, y) + "a" + at(r, r) + " 0 1 0 " + at(2*r, 0) + "a" + at(r, r) + " 0 1 0 " + at(-2*r, 0) + "Z"
	}
	const pitch, high = 4.5, 1.3
	n := min(teeth, int(2*math.Pi*r/pitch))
	var d strings.Builder
	for i := range 4 * n {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.5) / float64(4*n))
		edge := r + high
		if i%4 > 1 {
			edge = r - high
		}
		d.WriteString([...]string{"M", "L"}[min(i, 1)] + at(x+edge*cos, y+edge*sin))
	}
	return d.String() + "Z"
}

// An inscription is a text in its place; y is its base line. How wide it is is a
// guess on the safe side.
type inscription struct {
	Left, Y, Wide float64
	anchor        report.Anchor
	Text          string
	report.Tag
}

// How wide a letter is in its circle, and the gap behind it.
const letterWide, letterGap = 16, 4

// Share is how much of the text lies left of its anchor.
func (w inscription) Share() float64 { return float64(w.anchor) / 2 }

var anchors = [...]string{report.Start: "start", report.Middle: "middle", report.End: "end"}

// letter is how wide a character is taken to be; an m is wider.
const (
	letter = 7.2
	wider  = 4.5
	// mostWide is all the paper, less a hair at either side.
	mostWide = report.PaperWidth - 2
)

func write(text string, tag report.Tag, at float64, anchor report.Anchor, y float64) inscription {
	wide := letter*float64(utf8.RuneCountInString(text)) + wider*float64(strings.Count(text, "m"))
	if tag.Letter != "" {
		wide += letterWide
		if text != "" {
			wide += letterGap
		}
	}
	w := inscription{Y: y, Wide: min(mostWide, wide), anchor: anchor, Text: text, Tag: tag}
	w.Left = max(1, min(at-w.Share()*w.Wide, report.PaperWidth-1-w.Wide))
	return w
}

// Inscriptions are all that is written on a drawing, kept inside of it.
func Inscriptions(d report.Drawing) []inscription {
	x := Span{d.From, d.To, 0, report.PaperWidth}
	var all []inscription
	for _, s := range d.Shapes {
		switch s := s.(type) {
		case report.Words:
			all = append(all, write(s.Text, s.Tag, x.At(s.At.X), s.Anchor, s.At.Y))
		case report.Dim:
			all = append(all, beside(s.Text, s.Tag, x.At(s.A.X), s.A.Y, x.At(s.B.X), s.B.Y))
		}
	}
	return all
}

// beside is where the text of a dimension line goes.
func beside(text string, tag report.Tag, ax, ay, bx, by float64) inscription {
	if ay != by {
		return write(text, tag, ax+6, report.Start, (ay+by)/2+4)
	}
	over := write(text, tag, (ax+bx)/2, report.Middle, ay-5)
	const gap = 18 // room for an arrow from outside
	switch left, right := min(ax, bx), max(ax, bx); {
	case over.Wide <= right-left:
	case right+gap+over.Wide < report.PaperWidth:
		return write(text, tag, right+gap, report.Start, ay+4)
	case left-gap-over.Wide > 0:
		return write(text, tag, left-gap, report.End, ay+4)
	}
	return over
}
