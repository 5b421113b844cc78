package main

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/frame"
	"striderule/app/view"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/report"
)

// compareNow works the comparison with the received sheet out. It solves the
// sheet once for each change, so it waits until typing pauses.
func (c *calculator) compareNow() {
	c.settling.compare(c.form.Compare())
}

// check tells at the top whether the sender of a link saw the same result, and
// what became of the sheet since.
func (c *calculator) check() app.UI {
	check, sentence := c.form.Check()
	class := "check"
	switch check {
	case form.Same:
		class, sentence = "check same", "✓ "+sentence
	case form.Differs:
		class, sentence = "check differs", "≠ "+sentence+" Do not use either before you know why."
	}
	jump := app.UI(app.Text(""))
	switch d := c.settling.comparison; {
	case d != nil:
		jump = app.A().Href("#compared").DataSet("jump", "compared").Text(changesSaid(d))
	case sentence != "" || !c.form.HasBefore():
	case c.settling.isCompared():
		sentence = "Nothing differs from the sheet as it was received."
	default: // the line keeps its place until it is known
		sentence = "Changed since this sheet was received."
	}
	p := app.P().Class(class).ID("check").Hidden(sentence == "" && c.settling.comparison == nil)
	if c.host == "" { // for web/peek.js, which knows no units
		for _, o := range c.page.Outputs {
			p = p.DataSet(o.ID, o.Unit)
		}
		return p
	}
	return p.Body(app.Text(sentence+" "), jump)
}

// changesSaid says how much was changed, and by whom.
func changesSaid(d *form.Comparison) string {
	n, entries := len(d.Differences), "entries"
	if n == 1 {
		entries = "entry"
	}
	moved := ""
	if d.Before != nil && d.After != nil {
		moved = ", from " + d.Before.Figure.String() + " to " + d.After.Figure.String()
	}
	if d.Theirs {
		return "The sender changed " + strconv.Itoa(n) + " " + entries + moved + ": see which."
	}
	return strconv.Itoa(n) + " " + entries + " changed since this sheet was received" + moved + ": see which."
}

// compareView shows what was changed and what it does, offers the way back, and
// a link that shows the next person the same.
func (c *calculator) compareView() app.UI {
	d := c.settling.comparison
	if d == nil {
		return app.Text("")
	}
	head := []string{"Entry", "Before", "After"}
	alone := len(d.Differences) > 1 && len(d.Differences) <= form.MostAlone
	if alone {
		head = append(head, "That alone gives")
	}
	var rows [][]app.UI
	for _, x := range d.Differences {
		row := []app.UI{app.Text(x.Name), app.Text(orNothing(x.Before)), app.Text(orNothing(x.After))}
		if alone {
			row = append(row, answerSaid(x.Alone))
		}
		rows = append(rows, row)
	}
	title, back := "Changed since it was received", "Back to the sheet as received"
	if d.Theirs {
		title, back = "Changed by the sender", "Open the sheet as it was before"
	}
	return app.Section().Class("part compared").ID("compared").TabIndex(-1).Body(
		app.H2().Text(title),
		app.P().Class("before-after").Body(app.Text("Result before: "), answerSaid(d.Before), app.Text(" · now: "), answerSaid(d.After)),
		view.TableOf("What was changed", "scroll cards-if-narrow", head, rows),
		app.Div().Class("share").Body(
			c.replyButton(),
			frame.Button("as-received", back, func() { c.replace(c.ctx, "", c.form.AsReceived()) }),
		),
	)
}

// replyButton copies a link that carries the comparison.
func (c *calculator) replyButton() app.UI {
	fragment := c.form.ReplyFragment()
	if len(fragment) > link.MostLink {
		return app.P().Class("note doubt").Text("Both sheets together are too long for a link: share this one by itself.")
	}
	return app.Button().Type("button").ID("reply").DataSet("copy", c.shareURL(fragment)).
		DataSet("said", "Link copied. It shows what was changed.").Text("Reply: copy a link that shows this")
}

func orNothing(text string) string {
	if text == "" {
		return "nothing"
	}
	return text
}

// answerSaid is a result in a sentence or a cell.
func answerSaid(a *report.Answer) app.UI {
	if a == nil {
		return app.Text("no result")
	}
	f := a.Figure
	f.ID = ""
	return view.Figure(f)
}
