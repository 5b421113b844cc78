package main

import (
	"striderule/calc"
	"striderule/calc/logbook"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// across offers the ways to hand a sheet over that are used less. Without a link
// there is only a table of what was read.
func (c *calculator) across(url string) app.UI {
	var ways []app.UI
	if url != "" {
		showing := c.code.url == url
		text := "Show as QR code"
		if showing {
			text = "Hide the QR code"
		}
		ways = append(ways,
			app.Button().Type("button").ID("show-code").Aria("expanded", showing).Text(text).OnClick(func(app.Context, app.Event) { c.toggleCode() }),
			app.Button().Type("button").ID("save-sheet").Text("Save as a file").OnClick(c.saveSheet),
		)
	}
	for _, g := range c.form.Groups() {
		ways = append(ways, c.saveRows(g)...)
	}
	if len(ways) == 0 {
		return app.Text("")
	}
	return app.Details().Class("across").ID("across").Body(
		app.Summary().Text("More ways to hand it over"),
		app.Div().Class("across-ways").Body(ways...),
		app.P().Class("hint").Text("A file opens again here, or on the start page: choose it, or drop it on the page."),
		app.If(c.code.url == url && url != "", func() app.UI { return c.code.view() }),
	)
}

// saveRows saves a group's rows for a spreadsheet, once something is in them.
func (c *calculator) saveRows(g *calc.Group) []app.UI {
	for _, f := range c.form.Columns(g) {
		if c.form.Filled(f) {
			return []app.UI{app.Button().Type("button").ID("save-"+idOf(g)).Text("Save the "+g.Nouns()+" for a spreadsheet").
				OnClick(func(app.Context, app.Event) {
					saveFile(siteFile(c.page.Slug+"-"+g.Nouns()+".csv"), logbook.RowsCSV(c.form, g))
				}, app.EventScope(g.Noun))}
		}
	}
	return nil
}

// sharedURL is the link to the sheet as it stands, empty if there is none.
func (c *calculator) sharedURL() string {
	fragment := c.form.ShareFragment()
	if fragment == "" || len(fragment) > calc.MostLink {
		return ""
	}
	return shareURL(pathOf(c.page.Slug), fragment)
}

// toggleCode shows the link as a QR code, or takes it away. It is worked out here
// alone: after a change it is gone, and never that of other entries.
func (c *calculator) toggleCode() {
	if url := c.sharedURL(); c.code.url != url {
		c.code = codeOf(url)
		c.code.fit(app.Window().GetElementByID("across").Get("clientWidth").Float())
	} else {
		c.code = qrCode{}
	}
}

// printedLink is on paper only: the link, and a place for its QR code.
func (c *calculator) printedLink(url string) app.UI {
	return app.Div().Class("printed").ID("printed").Body(
		svg("svg", "id", "printed-code", "aria-hidden", "true").Body(svg("path", "id", "printed-path")),
		app.P().Text("This sheet: "+url),
	)
}

// drawPrinted fills that place. go-app would do it too late.
func (c *calculator) drawPrinted() {
	picture := app.Window().GetElementByID("printed-code")
	if !picture.Truthy() {
		return
	}
	code := codeOf(c.sharedURL())
	picture.Call("setAttribute", "viewBox", code.viewBox())
	picture.Call("setAttribute", "class", code.class())
	app.Window().GetElementByID("printed-path").Call("setAttribute", "d", code.path)
}
