package view

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/calc/report"
)

const svgSpace = "http://www.w3.org/2000/svg"

// SVG makes an element with attributes in pairs.
func SVG(tag string, attributes ...string) app.HTMLElem {
	e := app.Elem(tag).XMLNS(svgSpace)
	for i := 0; i < len(attributes); i += 2 {
		e = e.Attr(attributes[i], attributes[i+1])
	}
	return e
}

func px(v float64) string { return strconv.FormatFloat(v, 'f', 1, 64) }

func label(class, anchor, text string, x, y float64) app.HTMLElem {
	return SVG("text", "class", class, "text-anchor", anchor, "x", px(x), "y", px(y)).Text(text)
}

// shapes tell points apart without colour: class, and path from the middle.
var shapes = [...]struct{ class, path string }{
	report.Counted: {"point counted", "m-4 0a4 4 0 1 0 8 0a4 4 0 1 0 -8 0z"},
	report.Aside:   {"point aside", "m-4 -4l8 8m0 -8l-8 8"},
	report.Suspect: {"point suspect", "m0 -6l6 10h-12z"},
	report.Result:  {"point outcome", "m-4 -4h8v8h-8z"},
	report.Later:   {"point later", "m0 -5l5 5l-5 5l-5 -5z"},
}

func shape(kind report.PointKind, x, y float64) app.UI {
	s := shapes[kind]
	return SVG("path", "class", s.class, "d", "M"+px(x)+" "+px(y)+s.path)
}

func curveClass(kind report.CurveKind) string { return "curve curve-" + strconv.Itoa(int(kind)) }

// legend says what points, curves and bands mean, once each.
func legend(c *report.Chart) app.UI {
	var items []app.UI
	add := func(sample app.UI, text string) {
		items = append(items, app.Li().Body(SVG("svg", "viewBox", "0 0 26 14", "aria-hidden", "true").Body(sample), app.Text(text)))
	}
	for kind, text := range c.Keys {
		for _, p := range c.Points {
			if p.Kind == report.PointKind(kind) {
				add(shape(p.Kind, 13, 7), text)
				break
			}
		}
	}
	for _, l := range c.Curves {
		add(SVG("path", "class", curveClass(l.Kind), "d", "M0 7H26"), l.Label)
	}
	for _, b := range c.Bands {
		add(SVG("rect", "class", "band", "x", "1", "y", "1", "width", "24", "height", "12"), b.Label)
	}
	return app.Ul().Class("legend").Body(items...)
}

// bars show parts of a whole by size, as a list with a bar each.
func bars(b report.Bars) app.UI {
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
			app.Dt().Text(bar.Label), app.Dd().Body(Figure(bar.Value)),
			app.Elem("dd").Class("bar-of").Body(
				SVG("svg", "viewBox", "0 0 100 6", "preserveAspectRatio", "none", "aria-hidden", "true").Body(
					SVG("rect", "width", px(width), "height", "6")),
			),
		))
	}
	return app.Div().Body(app.H3().Text(b.Title), app.Dl().Class("figures bars").Body(rows...))
}
