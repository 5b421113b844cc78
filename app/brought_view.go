package main

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/view"
	"striderule/calc/report"
)

// broughtView shows what a link would have sent to a machine, to be accepted.
func (c *calculator) broughtView(b report.Brought) app.UI {
	says, do := "This line "+view.CameWithLink+". Somebody else may have written it. A line can heat the machine, move it, or switch a guard off. Read all of it: you can copy it once you have accepted it.", "Accept this line"
	if len(b.All) > 1 {
		says, do = "These lines "+view.CameWithLink+". Somebody else may have written them. A line can heat the machine, move it, or switch a guard off. Read all of them: you can copy and save what is made of them once you have accepted them.", "Accept these lines"
	}
	var lines []app.UI
	for _, l := range b.All {
		lines = append(lines, app.Dt().Text(l.Label), app.Dd().Body(app.Code().Text(l.Text)))
	}
	return app.Div().Class("brought").Body(
		view.Note(report.Note{Kind: report.Caution, Line: report.Say(says)}),
		app.Dl().Body(lines...),
		frame.Button("accept-"+b.Before, do, func() {
			for _, l := range b.All {
				accept(l)
				c.form.Accept(l.Key, l.Text)
			}
			c.follow()
			browser.Announce("Accepted.")
			c.ctx.Defer(func(app.Context) { browser.Focus("copy-" + b.Before) })
		}),
	)
}
