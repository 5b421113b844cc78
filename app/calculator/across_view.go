package calculator

import (
	"slices"
	"strconv"
	"strings"

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
	return c.folds.View(view.Fold{ID: "across", Class: "part", Heading: app.H2().Text(moreWays), Brief: moreWaysBrief, Body: func() []app.UI {
		return []app.UI{
			app.Div().Class("across-ways").Body(ways...),
			app.P().Class("hint").Text(howToReopen),
			app.If(c.code.URL == url && url != "", func() app.UI { return c.code.View() }),
		}
	}})
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

// printed is on paper only: a place for what is entered, the link, and a place for its QR code.
func (c *calculator) printed(url string) app.UI {
	return app.Div().Class("printed").ID("printed-link").Body(
		app.P().ID("printed-entries"),
		view.SVG("svg", "id", "printed-code", "aria-hidden", "true").Body(view.SVG("path", "id", "printed-path")),
		app.P().Text(printedLink.Fill("link", url)),
	)
}

// drawPrinted fills those places. go-app would do it too late.
func (c *calculator) drawPrinted() {
	if e, ok := browser.Element("printed-entries"); ok {
		var lines []string
		for _, entry := range c.form.Entries() {
			lines = append(lines, printedEntry.Fill("field", c.form.Label(entry.Key), "text", entry.Says))
		}
		e.Set("textContent", strings.Join(lines, "\n"))
	}
	url, _ := c.link()
	code := view.CodeOf(url)
	for _, a := range [...][3]string{{"code", "viewBox", code.ViewBox()}, {"code", "class", code.Class()}, {"path", "d", code.Path}} {
		if e, ok := browser.Element("printed-" + a[0]); ok {
			e.Call("setAttribute", a[1], a[2])
		}
	}
}
