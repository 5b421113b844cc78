// Package file opens sheets from files, wherever they are of.
package file

import (
	"errors"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/site"
	"striderule/calc/logbook"
	"striderule/calc/word"
)

// A Sheet is what a page has to say of a file that was to be opened as a
// sheet.
type Sheet struct {
	problem string // why it could not be
	log     bool   // it is a log
}

// Read returns the page and the fragment that a file holds.
func (s *Sheet) Read(name, text, failed string) (slug, fragment string, ok bool) {
	*s = Sheet{}
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

// View says what was wrong with the last file.
func (s *Sheet) View() app.UI {
	return app.If(s.problem != "", func() app.UI {
		return app.P().Class("problem").ID("file-problem").Attr("role", "alert").Body(
			app.Text(s.problem),
			app.If(s.log, func() app.UI {
				return app.Span().Body(app.Text(" "), app.A().Href(site.LinkTo(site.LogPath, "")).Text(OpenTheLog))
			}),
		)
	})
}

// OpenButton lets the person choose a file.
func OpenButton() app.UI {
	return frame.Button("open-file", openAFile, browser.ChooseFile)
}
