package calculator

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/file"
	"striderule/app/site"
	"striderule/calc/logbook"
)

// takeFile opens a sheet from a file: here, or on the page that it is of.
func (c *calculator) takeFile(name, text, failed string) {
	c.ctx.Dispatch(func(ctx app.Context) {
		slug, fragment, ok := c.file.Read(name, text, failed)
		switch {
		case !ok:
		case slug == c.page.Slug:
			c.replace(ctx, file.Opened.Fill("file", name), fragment)
		default:
			c.writeAddress()
			ctx.Navigate(site.LinkTo(site.PathOf(slug), fragment))
			browser.Announce(file.Opened.Fill("file", name))
		}
	})
}

// saveSheet saves the sheet as a file.
func (c *calculator) saveSheet() {
	browser.SaveFile(siteFile(c.page.Slug+".json"), logbook.WriteSheet(c.form))
}

// siteFile is a file's name that tells where it is from.
func siteFile(name string) string {
	return "striderule-" + strings.ReplaceAll(name, " ", "-")
}
