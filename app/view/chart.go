package view

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/calc/report"
)

// The size of a chart in its own units, which are CSS pixels on a narrow phone;
// it grows with the page.
const (
	chartWidth = 288
	chartTop   = 22 // above it is what a touched point says
	chartDeep  = 150
	chartFlat  = 84
	tickLine   = 20
	edge       = 8
)

// A plot is a chart with its scales.
type plot struct {
	*report.Chart
	x, y          Span
	across, along []tick
}

func plotOf(c *report.Chart) *plot {
	p := &plot{Chart: c}
	deep, n := chartDeep, 6
	if c.Flat {
		deep, n = chartFlat, 4
	}
	xs, ys := extent(c)
	p.y = widened(ys, 0.08, chartTop+float64(deep), chartTop)
	p.along = ticks(p.y, n)
	left := 0.0
	for _, t := range p.along {
		left = max(left, t.width())
	}
	p.x = widened(xs, 0.04, left+edge, chartWidth-edge)
	if c.X.Names != nil {
		p.across = named(p.x, c.X.Names)
	} else {
		p.across = across(p.x)
	}
	return p
}

// Chart is a picture with what its marks mean, and the same in figures.
func Chart(c *report.Chart, folds *Folds) app.UI {
	p := plotOf(c)
	parts := append(p.frame(), label("ask-point", "start", tapAPoint, 2, 11))
	for _, l := range c.Curves {
		path := ""
		for i, at := range l.At {
			path += [...]string{"M", "L"}[min(i, 1)] + px(p.x.At(at.X)) + " " + px(p.y.At(at.Y))
		}
		parts = append(parts, SVG("path", "class", curveClass(l.Kind), "d", path))
	}
	for _, point := range c.Points {
		parts = append(parts, p.mark(point))
	}
	height := int(p.y.From) + tickLine
	return app.Figure().Class("chart").ID("chart-"+c.ID).Body(
		app.FigCaption().Text(c.Title),
		SVG("svg", "class", "plot", "viewBox", "0 0 "+strconv.Itoa(chartWidth)+" "+strconv.Itoa(height), "role", "img", "aria-label", c.Alt()).Body(parts...),
		app.P().Class("scales").Body(app.Span().Text("↑ "+c.Y.Title()), app.Span().Text("→ "+c.X.Title())),
		legend(c),
		folds.table("values-"+c.ID, showValues, c.Values),
	)
}

// frame is what the points are held against: bands, axes, ticks and the line of 0.
func (p *plot) frame() []app.UI {
	var parts []app.UI
	for _, b := range p.Bands {
		top, bottom := p.y.At(b.Hi), p.y.At(b.Lo)
		parts = append(parts, SVG("rect", "class", "band", "x", px(p.x.From), "y", px(top), "width", px(p.x.To-p.x.From), "height", px(max(1, bottom-top))))
	}
	ruled := func(class string, y float64) app.UI {
		return SVG("path", "class", class, "d", "M"+px(p.x.From-4)+" "+px(y)+"H"+px(p.x.To))
	}
	for _, t := range p.along {
		parts = append(parts, ruled("grid", t.at), label("tick", "end", t.text, p.x.From-6, t.at+4))
	}
	if p.y.Lo < 0 && p.y.Hi > 0 {
		parts = append(parts, ruled("zero", p.y.At(0)))
	}
	notches := ""
	for _, t := range p.across {
		notches += "M" + px(t.at) + " " + px(p.y.From) + "v4"
		parts = append(parts, label("tick", "middle", t.text, t.inside(0, chartWidth), p.y.From+16))
	}
	return append(parts, SVG("path", "class", "axis", "d", "M"+px(p.x.From)+" "+px(p.y.To)+"V"+px(p.y.From)+"H"+px(p.x.To)+notches))
}

// roomToRead is how many signs of what a point says fit into the picture.
const roomToRead = 46

// mark is a point with its interval. It is easy to hit, and says its values
// while it is touched.
func (p *plot) mark(point report.Point) app.UI {
	x, y := p.x.At(point.X), p.y.At(point.Y)
	parts := []app.UI{SVG("circle", "class", "hit", "cx", px(x), "cy", px(y), "r", "13")}
	if point.Lo < point.Hi {
		parts = append(parts, SVG("path", "class", "interval", "d",
			"M"+px(x-4)+" "+px(p.y.At(point.Lo))+"h8m-4 0V"+px(p.y.At(point.Hi))+"m-4 0h8"))
	}
	says := p.Reading(point)
	text := label("says", "start", says, 2, 11)
	if len([]rune(says)) > roomToRead {
		text = text.Attr("textLength", px(chartWidth-4)).Attr("lengthAdjust", "spacingAndGlyphs")
	}
	return SVG("g", "class", "mark", "tabindex", "-1").Body(append(parts, shape(point.Kind, x, y), text)...)
}
