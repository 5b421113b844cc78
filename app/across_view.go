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
		text := "Show as QR code"
		if showing {
			text = "Hide the QR code"
		}
		ways = append(ways,
			frame.Button("show-code", text, c.toggleCode).Aria("expanded", strconv.FormatBool(showing)),
			frame.Button("save-sheet", "Save as a file", c.saveSheet),
		)
	}
	for _, g := range c.form.Groups() {
		if slices.ContainsFunc(c.form.Columns(g), c.form.Filled) {
			noun := g.Noun
			ways = append(ways, frame.Button("save-"+view.IDOf(g), "Save the "+g.Nouns()+" for a spreadsheet", func() { c.saveRows(noun) }))
		}
	}
	if len(ways) == 0 {
		return app.Text("")
	}
	return c.folds.Fold("across", "across", false, app.Text("More ways to hand it over"),
		app.Div().Class("across-ways").Body(ways...),
		app.P().Class("hint").Text("A file opens again here, or on the start page: choose it, or drop it on the page."),
		app.If(c.code.URL == url && url != "", func() app.UI { return c.code.View() }),
	)
}

// saveRows saves a group's rows for a spreadsheet. The group is found anew: a
// handler lives longer than the form that it was made for.
func (c *calculator) saveRows(noun string) {
	for _, g := range c.form.Groups() {
		if g.Noun == noun {
			browser.SaveFile(siteFile(c.page.Slug+"-"+g.Nouns()+".csv"), logbook.RowsCSV(c.form, g))
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
		app.P().Text("This sheet: "+url),
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
