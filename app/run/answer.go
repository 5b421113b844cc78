package run

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/site"
	"striderule/app/view"
	"striderule/calc/machine"
	"striderule/calc/report"
	"striderule/calc/run"
)

// says adds why a verdict is so; where the sheet and the machine disagree, what to answer first.
func (p *Page) says(l *look, s run.State) {
	if p.form.IsSettingAsked() {
		l.add(p.whose.WhichSetting())
	}
	l.add(app.P().Class("run-says").Body(view.Line(s.Says)...), app.P().Class("hint").Body(view.Line(s.Hint)...))
}

// after is what is known after a run, and what to do.
func (p *Page) after(l *look) (title string) {
	s := p.test.State(p.card)
	p.says(l, s)
	l.act("run-redo", redo, func() { p.again(p.card, p.test.Redo(p.card)) })
	if p.test.CanLeaveOut(p.card) {
		text := leaveOut
		if p.test.IsLeftOut(p.card) {
			text = countIn
		}
		l.act("run-aside", text, func() {
			p.test.LeaveOut(p.card)
			p.write()
		})
	}
	l.act("run-other", p.towards(s.Other), func() { p.goTo(s.Other) })
	l.main(p.towards(s.Next), func() { p.goTo(s.Next) })
	return s.Title
}

// towards is what a button says that leads to a card.
func (p *Page) towards(c run.Card) string {
	if c.Step < run.Result {
		return nextRun
	}
	return [...]string{seeResult, toSetting, toSaving}[c.Step-run.Result]
}

// result is the answer.
func (p *Page) result(l *look) (title string) {
	last := run.Card{Step: run.After, N: max(0, p.test.Last(false))}
	s := p.test.State(last)
	if a := p.form.Report().Answer; a != nil {
		large := a.Figure
		if a.Keep != nil {
			large = *a.Keep
		}
		l.text("hint", large.Label)
		l.add(app.P().Class("run-figure").Body(view.Figure(large)))
		p.says(l, s)
		for _, n := range a.Notes {
			l.block(n)
		}
	} else {
		p.says(l, s)
	}
	if more := p.test.NextRun(last); more.N > last.N {
		l.act("run-other", nextRun, func() { p.goTo(more) })
	}
	l.main(p.towards(p.test.Next(p.card)), p.next)
	return s.Title
}

// setting is what to send or to enter, and that it was done.
func (p *Page) setting(l *look) (title string) {
	r := p.form.Report()
	var persist []report.Block
	for _, part := range r.Parts {
		switch part.ID {
		case "apply":
			for _, b := range part.Blocks {
				if code, ok := b.(report.Code); ok && !code.Brought { // a stranger's stands on the sheet, to be accepted
					l.block(code)
				}
			}
		case "persist":
			persist = part.Blocks
		}
	}
	if line := p.test.UsualLine(); line != "" && len(l.body) == 0 {
		l.block(report.Code{ID: "line", Label: usualLine, Text: line})
	}
	for _, b := range persist {
		l.block(b)
	}
	l.main(iHaveSetIt, p.setIt)
	return setTo.Fill("setting", machine.Axis(nil).With(r.SetKey, r.Set).Shown())
}

// record saves the sheet to the log.
func (p *Page) record(l *look) {
	if p.test.IsCold() {
		l.block(report.CautionOf("guard"))
	}
	if p.saved {
		l.add(app.P().ID("run-saved").TabIndex(-1).Text(savedIt),
			app.Div().Class("run-options").Body(app.A().Href(site.LinkTo(site.LogPath, "")).Text(openLog)))
		return
	}
	if p.machine().Text("machine") == "" {
		l.add(view.TextField("run-name", nameLabel, "text", &p.saveAs))
	}
	l.add(app.P().ID("run-problem").Class("problem-line").Attr("role", "alert").Text(p.problem))
	l.main(saveIt, p.saveIt)
}
