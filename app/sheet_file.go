package main

import (
	"errors"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/site"
	"striderule/calc/logbook"
)

// A sheetFile is what a page has to say of a file that was to be opened as a
// sheet.
type sheetFile struct {
	problem string // why it could not be
	log     bool   // it is a log
}

// read returns the page and the fragment that a file holds.
func (s *sheetFile) read(name, text, failed string) (slug, fragment string, ok bool) {
	*s = sheetFile{}
	var err error
	switch failed {
	case "":
		slug, fragment, err = logbook.ReadSheet(text)
	case "TooLarge":
		err = errors.New("it is longer than a sheet can be")
	default:
		err = errors.New("the browser could not read it (" + failed + ")")
	}
	if err != nil {
		s.problem = name + " was not opened: " + err.Error() + "."
		s.log = errors.Is(err, logbook.ErrLog)
	}
	return slug, fragment, err == nil
}

// view says what was wrong with the last file.
func (s *sheetFile) view() app.UI {
	return app.If(s.problem != "", func() app.UI {
		return app.P().Class("problem").ID("file-problem").Attr("role", "alert").Body(
			app.Text(s.problem),
			app.If(s.log, func() app.UI {
				return app.Span().Body(app.Text(" "), app.A().Href(site.LinkTo(site.LogPath, "")).Text("Open the log"))
			}),
		)
	})
}

// openButton lets the person choose a file.
func openButton() app.UI {
	return frame.Button("open-file", "Open a file", browser.ChooseFile)
}

// takeFile opens a sheet from a file: here, or on the page that it is of.
func (c *calculator) takeFile(name, text, failed string) {
	c.ctx.Dispatch(func(ctx app.Context) {
		slug, fragment, ok := c.file.read(name, text, failed)
		switch {
		case !ok:
		case slug == c.page.Slug:
			c.replace(ctx, "Opened "+name+". ", fragment)
		default:
			c.writeAddress()
			ctx.Navigate(site.LinkTo(site.PathOf(slug), fragment))
			browser.Announce("Opened " + name + ".")
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
