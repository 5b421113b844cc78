package calculator

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/frame"
	"striderule/app/view"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/report"
	"striderule/calc/word"
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
	case form.Reworked:
		sentence = "≈ " + sentence
	case form.Differs, form.Altered:
		class, sentence = "check differs", "≠ "+word.Together(sentence, differsSo)
	}
	jump := app.UI(app.Text(""))
	switch d := c.settling.comparison; {
	case check >= form.Differs && check != form.Reworked && len(c.form.Problems()) > 0:
		jump = app.A().Href("#problems").DataSet("jump", "problems").Text(seeWhy)
	case d != nil:
		if d.Theirs && check == form.Same {
			sentence = changedHasSame
			class, sentence = "check changed", "⇄ "+sentence
		}
		jump = app.A().Href("#compared").DataSet("jump", "compared").Text(view.Bound(changesSaid(d)))
	case sentence != "" || !c.form.HasBefore():
	case c.settling.isCompared():
		sentence = sameAsReceived
	default: // the line keeps its place until it is known
		sentence = changedSince
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

// told shows the remark that came with a link: text, whatever it is.
func (c *calculator) told() app.UI {
	text := c.form.Told()
	return app.If(text != "", func() app.UI {
		return app.P().Class("check changed").ID("told").Body(app.Text(theirRemark.Fill("text", text)))
	})
}

// remarkView takes a remark to go with a reply.
func (c *calculator) remarkView() app.UI {
	return c.keepCell("remark", remarkLabel, remarkTip,
		app.Input().Class("typed").ID("remark").Name("remark").Type("text").MaxLength(140).AutoComplete(false).Value(c.form.Remark()).Aria("describedby", "remark-hint").
			OnInput(func(ctx app.Context, _ app.Event) {
				text := ctx.JSSrc().Get("value").String()
				c.edit(func(f *form.Form) { f.SetRemark(text) })
			}))
}

// wasAt is what an entry was before it was changed; empty if it was not.
func (c *calculator) wasAt(key string, row int) string {
	if d := c.settling.comparison; d != nil {
		for _, x := range d.Differences {
			if x.Key == key && max(x.Row, 0) == row {
				return wasBefore.Fill("before", orEmpty(x.Before))
			}
		}
	}
	return ""
}

// was shows that beside the entry.
func (c *calculator) was(key string, row int) app.UI {
	text := c.wasAt(key, row)
	return app.If(text != "", func() app.UI { return app.P().Class("hint was").Text(view.Bound(text)) })
}

// changesSaid says how much was changed, and by whom.
func changesSaid(d *form.Comparison) string {
	n := len(d.Differences)
	if d.Before == nil || d.After == nil {
		if d.Theirs {
			return senderChanged.Fill(n)
		}
		return youChanged.Fill(n)
	}
	moved := youMoved
	if d.Theirs {
		moved = senderMoved
	}
	return moved.Fill(n, "before", answerSaid(d.Before).String(), "after", answerSaid(d.After).String())
}

// compareView shows what was changed and what it does, offers the way back, and
// a link that shows the next person the same.
func (c *calculator) compareView() app.UI {
	d := c.settling.comparison
	if d == nil {
		return app.Text("")
	}
	head := []string{changedEntry, changedBefore, changedAfter}
	alone := len(d.Differences) > 1 && len(d.Differences) <= form.MostAlone
	if alone {
		head = append(head, changedAlone)
	}
	var rows [][]app.UI
	for _, x := range d.Differences {
		row := []app.UI{app.Text(x.Name), app.Text(orEmpty(x.Before)), app.Text(orEmpty(x.After))}
		if alone {
			row = append(row, app.Span().Body(view.Line(answerSaid(x.Alone))...))
		}
		rows = append(rows, row)
	}
	title, back := changedHere, undoMyChanges
	if d.Theirs {
		title, back = changedThere, openEarlier
	}
	return app.Section().Class("part compared").ID("compared").TabIndex(-1).Body(
		app.H2().Text(title),
		app.P().Class("before-after").Body(view.Line(report.Say(beforeAndAfter, "before", answerSaid(d.Before), "after", answerSaid(d.After)))...),
		view.TableOf(changesCaption, "scroll cards-if-narrow", head, rows),
		app.If(!d.Theirs, c.remarkView),
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
		return app.P().Class("note doubt").Text(tooLongForReply)
	}
	return app.Button().Type("button").ID("reply").DataSet("copy", c.shareURL(fragment)).
		DataSet("said", replyCopied).Text(copyReply)
}

func orEmpty(text string) string {
	if text == "" {
		return emptyEntry
	}
	return text
}

// answerSaid is a result in a sentence or a cell.
func answerSaid(a *report.Answer) report.Line {
	if a == nil {
		return report.Line{{Text: noResult}}
	}
	f := unnamed(a.Figure)
	if a.Instead != nil { // its name tells it from those beside it
		return report.Say(namedResult, "label", a.Label, "figure", &f)
	}
	return report.Line{{Figure: &f}}
}

// unnamed takes a figure's ID away: where it is shown beside the page's own, it is no output.
func unnamed(f report.Figure) report.Figure {
	f.ID = ""
	return f
}
