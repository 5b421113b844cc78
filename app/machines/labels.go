package machines

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/site"
	"striderule/app/view"
	"striderule/calc/machine"
)

// mostLabel is how long the link of a label may be, in characters: its code is read back at 25 mm.
const mostLabel = 270

// labelURL is the link of a label: the calibration of an axis with only the readings missing, less
// the facts that it can do without if it would be too long.
func labelURL(a machine.Axis) (url string, ok bool) {
	address := browser.Origin() + site.LinkTo(site.PathOf(machine.Page), "")
	a = a.Without(machine.LineKeys...)
	for _, less := range [][]string{nil, {"limit", "counted", "speed"}, {"angle", "micro", "gears", "driving", "driven", "ratio"}, {"markstep", "marklimits", "limits", "limitsdeg"}} {
		a = a.Without(less...)
		if url = address + "#" + a.Fragment(); len(url) <= mostLabel {
			return url, true
		}
	}
	return "", false
}

// labelsView are the labels, as they are printed.
func (p *Page) labelsView() app.UI {
	var all []app.UI
	for _, a := range p.kept.All() {
		url, ok := labelURL(a.Axis)
		if !ok {
			all = append(all, app.P().Class("hint").Text(labelLong.Fill("machine", a.Title())))
			continue
		}
		code := view.CodeOf(url)
		all = append(all, app.Div().Class("label").ID("label-"+a.ID()).Body(
			view.SVG("svg", "class", code.Class(), "viewBox", code.ViewBox(), "aria-hidden", "true").Body(view.SVG("path", "d", code.Path)),
			app.Div().Body(
				app.Strong().Text(a.Title()),
				app.Span().Text(view.Bound(a.Since())),
				app.Span().Class("hint").Text(labelBy),
			),
		))
	}
	return app.Section().Class("part labels").ID("label-sheet").Body(
		app.H2().Text(labels),
		app.P().Class("hint").Text(labelsHint),
		app.Button().Type("button").ID("print-labels").DataSet("print", "labels").Text(printThem),
		app.Div().Class("label-sheet").Body(all...),
	)
}
