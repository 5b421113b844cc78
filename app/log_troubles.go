package main

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/calc/word"
)

// troubles tells what the browser refused, and which items could not be read.
func (p *logPage) troubles() app.UI {
	body := []app.UI{}
	if p.kept.refused != "" {
		body = append(body, app.P().ID("log-refused").Text("The log can't be read. "+p.kept.refused+" The calculators work all the same; on their pages a sheet can be saved as a file."))
	}
	if n := len(p.kept.unread); n > 0 && !p.example {
		var items []app.UI
		for _, u := range p.kept.unread[:min(n, mostDamages)] {
			items = append(items, app.Li().Text(u.key+": "+u.why))
		}
		body = append(body,
			app.H2().Text(word.Plural(n, "item can't be read", "items can't be read")),
			app.Ul().Body(items...),
			app.P().Text("They are left as they are. Save them as a file: it holds them letter by letter."),
			app.Div().Class("tools").Body(
				button("save-unread", "Save them as a file", func() { browser.SaveFile("striderule-log-unread.txt", rawText(p.kept.unread)) }),
				app.If(len(p.broken()) > 0, func() app.UI {
					return button("delete-unread", "Delete what is broken", func() { p.delete(p.broken()) })
				}),
			))
	}
	return app.If(len(body) > 0, func() app.UI { return app.Div().Class("problems").ID("log-troubles").Body(body...) })
}

// broken are the items that no version can read.
func (p *logPage) broken() []stored {
	var items []stored
	for _, u := range p.kept.unread {
		if !u.newer {
			items = append(items, u.stored)
		}
	}
	return items
}

// rawText is what stands in the storage, an item a line.
func rawText(all []unread) string {
	var b strings.Builder
	for _, u := range all {
		b.WriteString(u.key + "\t" + u.text + "\n")
	}
	return b.String()
}
