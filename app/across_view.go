package main

import (
	"slices"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/view"
	"striderule/calc/logbook"
)

// across offers the ways to hand a sheet over that are used less. Without a link
// there is only a table of what was read.
func (c *calculator) across(url string) app.UI {
	var ways []app.UI
	if url != "" {
		showing := c.code.URL == url
		text := showCode
		if showing {
			text = hideCode
		}
		ways = append(ways,
			frame.Button("show-code", text, c.toggleCode).Aria("expanded", strconv.FormatBool(showing)),
			frame.Button("save-sheet", saveAsFile, c.saveSheet),
		)
	}
	for _, g := range c.form.Groups() {
		if slices.ContainsFunc(c.form.Columns(g), c.form.Filled) {
			id := view.IDOf(g)
			ways = append(ways, frame.Button("save-"+id, saveTable.Fill("rows", g.Words.All), func() { c.saveRows(id) }))
		}
	}
	if len(ways) == 0 {
		return app.Text("")
	}
	return c.folds.Fold("across", "across", false, app.Text(moreWays),
		app.Div().Class("across-ways").Body(ways...),
		app.P().Class("hint").Text(howToReopen),
		app.If(c.code.URL == url && url != "", func() app.UI { return c.code.View() }),
	)
}

// saveRows saves a group's rows for a spreadsheet. The group is found anew: a
// handler lives longer than the form that it was made for.
func (c *calculator) saveRows(id string) {
	for _, g := range c.form.Groups() {
		if view.IDOf(g) == id {
			browser.SaveFile(siteFile(c.page.Slug+"-"+id+".csv"), logbook.RowsCSV(c.form, g))
		}
	}
}

// toggleCode shows the link as a QR code, or takes it away. It is worked out only
// here: after a change it is gone, and never that of other entries.
func (c *calculator) toggleCode() {
	if url, _ := c.link(); c.code.URL != url {
		c.code = view.CodeOf(url)
		c.code.Fit(browser.WidthOf("across"), browser.Density())
	} else {
		c.code = view.Code{}
	}
}

// printedLink is on paper only: the link, and a place for its QR code.
func (c *calculator) printedLink(url string) app.UI {
	return app.Div().Class("printed").ID("printed-link").Body(
		view.SVG("svg", "id", "printed-code", "aria-hidden", "true").Body(view.SVG("path", "id", "printed-path")),
		app.P().Text(printedLink.Fill("link", url)),
	)
}

// drawPrinted fills that place. go-app would do it too late.
func (c *calculator) drawPrinted() {
	url, _ := c.link()
	code := view.CodeOf(url)
	for _, a := range [...][3]string{{"code", "viewBox", code.ViewBox()}, {"code", "class", code.Class()}, {"path", "d", code.Path}} {
		if e, ok := browser.Element("printed-" + a[0]); ok {
			e.Call("setAttribute", a[1], a[2])
		}
	}
}
