package main

import (
	"strconv"

	"striderule/calc"
	"striderule/calc/unit"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// The size of a chart in its own units; it scales with the page.
const (
	chartWidth  = 340
	chartHeight = 220
	chartLeft   = 52
	chartBottom = 40
)

const svgSpace = "http://www.w3.org/2000/svg"

// svg makes an element with attributes in pairs.
func svg(tag string, attributes ...string) app.HTMLElem {
	e := app.Elem(tag).XMLNS(svgSpace)
	for i := 0; i < len(attributes); i += 2 {
		e = e.Attr(attributes[i], attributes[i+1])
	}
	return e
}

func px(v float64) string { return strconv.FormatFloat(v, 'f', 1, 64) }

func label(class, anchor, text string, x, y float64) app.UI {
	return svg("text", "class", class, "text-anchor", anchor, "x", px(x), "y", px(y)).Text(text)
}

func chart(c calc.Chart) app.UI {
	xs, ys := extent(c)
	x := widened(xs, 0.04, chartLeft, chartWidth-8)
	y := widened(ys, 0.08, chartHeight-chartBottom, 10)
	parts := []app.UI{}
	for _, b := range c.Bands {
		top, bottom := y.at(b.Hi), y.at(b.Lo)
		parts = append(parts,
			svg("rect", "class", "band", "x", px(x.from), "y", px(top), "width", px(x.to-x.from), "height", px(max(1, bottom-top))),
			label("band-label", "start", b.Label, x.from+4, top+11))
	}
	parts = append(parts, axes(c, x, y)...)
	for _, l := range c.Lines {
		parts = append(parts, svg("line", "class", "fit", "x1", px(x.at(l.X1)), "y1", px(y.at(l.Y1)), "x2", px(x.at(l.X2)), "y2", px(y.at(l.Y2))))
	}
	for _, p := range c.Points {
		parts = append(parts, point(p, x, y)...)
	}
	return app.Figure().Class("chart").ID("chart-"+c.ID).Body(
		app.FigCaption().Text(c.Title),
		svg("svg", "viewBox", "0 0 "+strconv.Itoa(chartWidth)+" "+strconv.Itoa(chartHeight), "role", "img", "aria-label", c.Alt).Body(parts...),
	)
}

// axes are the frame with ticks and labels.
func axes(c calc.Chart, x, y span) []app.UI {
	parts := []app.UI{svg("path", "class", "axis", "d", "M"+px(x.from)+" "+px(y.to)+"V"+px(y.from)+"H"+px(x.to))}
	for _, v := range ticks(y, 5) {
		parts = append(parts,
			svg("line", "class", "grid", "x1", px(x.from), "x2", px(x.to), "y1", px(y.at(v)), "y2", px(y.at(v))),
			label("tick", "end", unit.Trim(v, 6), x.from-5, y.at(v)+4))
	}
	if len(c.X.Names) > 0 {
		for i, name := range c.X.Names {
			parts = append(parts, label("tick", "middle", name, x.at(float64(i+1)), y.from+15))
		}
	} else {
		for _, v := range ticks(x, 5) {
			parts = append(parts, label("tick", "middle", unit.Trim(v, 6), x.at(v), y.from+15))
		}
	}
	return append(parts,
		label("axis-label", "end", scaleName(c.X), x.to, chartHeight-6),
		label("axis-label", "start", scaleName(c.Y), 2, chartHeight-6))
}

func scaleName(s calc.Scale) string {
	if s.Unit == "" {
		return s.Label
	}
	return s.Label + ", " + s.Unit
}

// pointClasses tell readings apart; each has a shape of its own.
var pointClasses = map[calc.PointKind]string{
	calc.Counted: "counted", calc.Aside: "aside", calc.Suspect: "suspect", calc.Result: "outcome", calc.Later: "later",
}

func point(p calc.Point, xs, ys span) []app.UI {
	x, y := xs.at(p.X), ys.at(p.Y)
	class := "point " + pointClasses[p.Kind]
	var parts []app.UI
	if p.Lo < p.Hi {
		parts = append(parts, svg("path", "class", "interval", "d",
			"M"+px(x-5)+" "+px(ys.at(p.Lo))+"h10m-5 0V"+px(ys.at(p.Hi))+"m-5 0h10"))
	}
	var shape app.HTMLElem
	switch p.Kind {
	case calc.Aside:
		shape = svg("path", "class", class, "d", "M"+px(x-5)+" "+px(y-5)+"l10 10m0 -10l-10 10")
	case calc.Suspect:
		shape = svg("path", "class", class, "d", "M"+px(x)+" "+px(y-7)+"l7 12h-14z")
	case calc.Result:
		shape = svg("rect", "class", class, "x", px(x-5), "y", px(y-5), "width", "10", "height", "10")
	case calc.Later:
		shape = svg("path", "class", class, "d", "M"+px(x)+" "+px(y-6)+"l6 6l-6 6l-6 -6z")
	default:
		shape = svg("circle", "class", class, "cx", px(x), "cy", px(y), "r", "4.5")
	}
	return append(parts, shape.Body(svg("title").Text(p.Label)))
}

// bars show parts of a whole by size, as a list with a bar each.
func bars(b calc.Bars) app.UI {
	most := 0.0
	for _, bar := range b.All {
		most = max(most, bar.Value.Value)
	}
	var rows []app.UI
	for _, bar := range b.All {
		width := 0.0
		if most > 0 {
			width = 100 * bar.Value.Value / most
		}
		rows = append(rows, app.Div().Body(
			app.Dt().Text(bar.Label), app.Dd().Body(figure(bar.Value)),
			app.Elem("dd").Class("bar-of").Body(
				svg("svg", "viewBox", "0 0 100 6", "preserveAspectRatio", "none", "aria-hidden", "true").Body(
					svg("rect", "width", px(width), "height", "6")),
			),
		))
	}
	return app.Div().Body(app.H3().Text(b.Title), app.Dl().Class("figures bars").Body(rows...))
}
