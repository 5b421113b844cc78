package log

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/kept"
)

// troubles tells what the browser refused, and which items could not be read.
func (p *Page) troubles() app.UI {
	body := []app.UI{}
	if p.kept.Refused != "" {
		body = append(body, app.P().ID("log-refused").Text(together(cantRead, p.kept.Refused.Says(), worksAlone)))
	}
	if n := len(p.kept.Unread); n > 0 && !p.example {
		var items []app.UI
		for _, u := range p.kept.Unread[:min(n, mostDamages)] {
			items = append(items, app.Li().Text(unreadEntry.Fill("id", u.Key, "why", u.Why)))
		}
		body = append(body,
			app.H2().Text(unread.Fill(n)),
			app.Ul().Body(items...),
			app.P().Text(untouched),
			app.Div().Class("tools").Body(
				frame.Button("save-unread", saveThem, func() { browser.SaveFile("striderule-log-unread.txt", rawText(p.kept.Unread)) }),
				app.If(len(p.broken()) > 0, func() app.UI {
					return frame.Button("delete-unread", deleteThem, func() { p.delete(p.broken()) })
				}),
			))
	}
	return app.If(len(body) > 0, func() app.UI { return app.Div().Class("problems").ID("log-troubles").Body(body...) })
}

// broken are the items that no version can read.
func (p *Page) broken() []kept.Item {
	var items []kept.Item
	for _, u := range p.kept.Unread {
		if !u.Newer {
			items = append(items, u.Item)
		}
	}
	return items
}

// rawText is what stands in the storage, an item a line.
func rawText(all []kept.Unread) string {
	var b strings.Builder
	for _, u := range all {
		b.WriteString(u.Key + "\t" + u.Text + "\n")
	}
	return b.String()
}
