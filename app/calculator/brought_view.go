package calculator

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/app/view"
	"striderule/calc/report"
)

// broughtView shows what a link would have sent to a machine: to be accepted, or why not to
// be; and what was accepted, to be taken back.
func (c *calculator) broughtView(b report.Brought) app.UI {
	words := broughtWords[b.State][min(len(b.All), 2)-1]
	var lines []app.UI
	for _, l := range b.All {
		lines = append(lines, app.Dt().Text(l.Label), app.Dd().Body(app.Code().Text(l.Text)))
		if own := kept.OwnLine(l.Key); b.State != report.Accepted && own != "" && own != l.Text {
			lines = append(lines, app.Dt().Text(ownSoFar), app.Dd().Body(app.Code().Text(own)))
		}
	}
	kind, button := report.Caution, app.UI(nil)
	switch b.State {
	case report.ToAccept:
		button = frame.Button("accept-"+b.Before, words.do, func() {
			for _, l := range b.All {
				kept.Accept(l)
				c.form.Accept(l.Key, l.Text)
			}
			c.decided(lineAccepted, "copy-"+b.Before)
		})
	case report.Accepted:
		kind = report.Tip
		button = frame.Button("take-back-"+b.Before, words.do, func() {
			for _, l := range b.All {
				kept.TakeBack(l)
				c.form.TakeBack(l.Key)
			}
			c.decided(lineTakenBack, "accept-"+b.Before)
		})
	}
	return app.Div().Class("brought").Body(
		view.Note(report.Note{Kind: kind, Line: report.Text(words.says)}),
		app.Dl().Body(lines...),
		app.If(button != nil, func() app.UI { return button }),
	)
}

// decided follows what was decided on a line.
func (c *calculator) decided(said, next string) {
	c.follow()
	browser.Announce(said)
	c.ctx.Defer(func(app.Context) { browser.Focus(next) })
}

// keepOwn keeps what was typed here, once that is done.
func (c *calculator) keepOwn() {
	for _, l := range c.form.Own() {
		kept.KeepOwn(l)
	}
}
