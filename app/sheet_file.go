package main

import (
	"errors"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/site"
	"striderule/calc/logbook"
	"striderule/calc/word"
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
	says := ""
	switch failed {
	case "":
		var err error
		slug, fragment, err = logbook.ReadSheet(text)
		if err == nil {
			return slug, fragment, true
		}
		says, s.log = err.Error(), errors.Is(err, logbook.ErrLog)
	case "TooLarge":
		says = fileTooLong
	default:
		says = fileUnread.Fill("error", failed)
	}
	s.problem = word.Together(notOpened.Fill("file", name), says)
	return "", "", false
}

// view says what was wrong with the last file.
func (s *sheetFile) view() app.UI {
	return app.If(s.problem != "", func() app.UI {
		return app.P().Class("problem").ID("file-problem").Attr("role", "alert").Body(
			app.Text(s.problem),
			app.If(s.log, func() app.UI {
				return app.Span().Body(app.Text(" "), app.A().Href(site.LinkTo(site.LogPath, "")).Text(openTheLog))
			}),
		)
	})
}

// openButton lets the person choose a file.
func openButton() app.UI {
	return frame.Button("open-file", openAFile, browser.ChooseFile)
}

// takeFile opens a sheet from a file: here, or on the page that it is of.
func (c *calculator) takeFile(name, text, failed string) {
	c.ctx.Dispatch(func(ctx app.Context) {
		slug, fragment, ok := c.file.read(name, text, failed)
		switch {
		case !ok:
		case slug == c.page.Slug:
			c.replace(ctx, openedFile.Fill("file", name), fragment)
		default:
			c.writeAddress()
			ctx.Navigate(site.LinkTo(site.PathOf(slug), fragment))
			browser.Announce(openedFile.Fill("file", name))
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
