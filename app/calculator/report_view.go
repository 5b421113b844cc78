package calculator

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/site"
	"striderule/app/view"
	"striderule/calc/report"
)

// now is what a key shows at once. It is busy until the rest of the page is about the
// same entries.
func (c *calculator) now() app.UI {
	now := app.Div().Class("now").Body(c.problems(), c.whose.SetNow(), c.answer(c.form.Report().Answer), c.whose.Scattered())
	if c.settling.isBehind() {
		now = now.Aria("busy", "true")
	}
	return now
}

// problems lists what is wrong, each with a way to its field.
func (c *calculator) problems() app.UI {
	problems := c.form.Problems()
	return app.If(len(problems) > 0, func() app.UI {
		var items []app.UI
		for _, p := range problems {
			items = append(items, app.Li().Body(c.jump(p.Key, p.Row, p.Says)))
		}
		return app.Div().Class("problems").ID("problems").Body(
			app.H2().Text(pleaseFix),
			app.Ul().Body(items...),
		)
	})
}

// jump is a link to a field, or plain text where there is no such field.
func (c *calculator) jump(key string, row int, text string) app.UI {
	return c.jumpTo(key, row, text, text)
}

// jumpTo is jump whose text is short: its name says it whole.
func (c *calculator) jumpTo(key string, row int, text, name string) app.UI {
	for _, f := range c.form.Fields() {
		if f.Key == key && c.form.Visible(f, row) {
			id := view.CellID(f, row)
			link := app.A().Href("#"+id).DataSet("jump", id).Text(view.Bound(text))
			if name != text {
				link = link.Aria("label", name)
			}
			if in := c.foldOf(f, row); in != "" {
				link = link.DataSet("in", in)
			}
			return link
		}
	}
	return app.Span().Text(view.Bound(text))
}

// answer is the headline: the value with its unit and what it means.
func (c *calculator) answer(a *report.Answer) app.UI {
	if a == nil {
		return app.Text("")
	}
	class := "answer"
	verdict := app.UI(app.Text(""))
	if v := a.Verdict; v != nil {
		class += " " + verdictClass(v)
		verdict = app.Div().Class("verdict").ID("verdict").Body(
			app.H2().Class("verdict-word").Body(app.Span().Class("verdict-mark").Aria("hidden", "true").Text(verdictMark(v)), app.Text(v.Title)),
			app.P().Body(view.Line(v.Says)...),
		)
	}
	var notes []app.UI
	for _, n := range a.Notes {
		notes = append(notes, view.Note(n))
	}
	body := []app.UI{
		verdict,
	}
	if a.Instead != nil {
		var together []app.UI
		for _, b := range a.Instead.Blocks {
			together = append(together, c.liveBlock(b))
		}
		body = append(body, app.H2().Text(view.Bound(a.Instead.Title)), app.Div().Class("terms found").Body(together...))
	} else {
		large := inUse(a)
		full := large.Full()
		copied := app.Button().Type("button").Class("copy").DataSet("copy", full).
			DataSet("said", copiedValue.Fill("value", full)).Aria("label", copyExactOf.Fill("value", full)).Text(copyExact)
		size := "headline found"
		if a.Keep != nil {
			size = "headline"
		}
		body = append(body, app.H2().Text(large.Label), app.P().Class(size).Body(view.Figure(large), app.Text(" "), copied))
		if a.Keep != nil {
			body = append(body, app.H2().Text(a.Label), app.P().Class("found").Body(view.Figure(a.Figure)))
		}
	}
	body = append(body, app.P().Body(view.Line(a.Says)...))
	return app.Div().Class(class).Body(append(body, notes...)...)
}

// verdictClass gives a verdict its tone.
func verdictClass(v *report.Verdict) string {
	if v.Mistake {
		return "look-first"
	}
	return v.Kind.String()
}

// verdictMark tells a verdict by shape.
func verdictMark(v *report.Verdict) string {
	if v.Mistake {
		return "!"
	}
	return verdictMarks[v.Kind]
}

// verdictMarks are those of the kinds.
var verdictMarks = [...]string{report.Leave: "✓", report.Change: "→", report.MeasureMore: "?", report.Hopeless: "⊘", report.Either: "≈"}

// link is the link to the sheet as it stands, the same on every way out. It is empty while
// nothing is typed, or where the sheet is longer than a link may be.
func (c *calculator) link() (url string, long bool) {
	fragment, ok := c.form.LinkFragment()
	if !ok || fragment == "" {
		return "", !ok
	}
	return c.shareURL(fragment), false
}

// shareURL is a link to the sheet of a fragment as anybody can open it; there is none while
// pages are generated, where the host is not known.
func (c *calculator) shareURL(fragment string) string {
	if c.host == "" {
		return ""
	}
	return c.host + site.LinkTo(site.PathOf(c.page.Slug), fragment)
}

// share offers the link to this sheet, and to save it to the log.
func (c *calculator) share() app.UI {
	url, long := c.link()
	if long {
		return app.Div().Body(app.P().Class("note doubt").Text(tooLongForLink), c.across(""))
	}
	if url == "" {
		return app.Text("")
	}
	return app.Div().Body(c.whose.SetItView(), app.Div().Class("share").Body(
		app.Button().Type("button").ID("copy-link").DataSet("copy", url).DataSet("said", linkCopied).Text(copyLink),
		app.Button().Type("button").ID("share-link").Class("only-share").DataSet("share", url).DataSet("title", site.TitleOf(c.page.Title)).Text(shareLink),
		app.If(!c.keep.open, func() app.UI {
			return app.Button().Type("button").ID("keep").Text(saveToLog).OnClick(func(app.Context, app.Event) { c.openKeep() })
		}),
		app.Button().Type("button").ID("print").Class("quiet").DataSet("print", "page").Text(printPage),
	), c.keepView(), c.postView(url), c.across(url), c.printed(url))
}

// Which parts of a report: those that say what to do, or what is folded.
const (
	open   = false
	closed = true
)

// parts are the report's parts below the answer. How to make the test comes first while there is
// none, and last then.
func (c *calculator) parts(folded bool) app.UI {
	r := c.settling.report
	var parts, guides []app.UI
	for _, p := range r.Parts {
		switch {
		case (p.Folded || p.Guide) != folded:
		case p.Guide:
			guides = append(guides, c.folded(p))
		case p.Folded:
			parts = append(parts, c.folded(p))
		default:
			body := []app.UI{app.H2().Text(p.Title)}
			for _, b := range p.Blocks {
				body = append(body, c.liveBlock(b))
			}
			parts = append(parts, app.Section().Class("part").ID("part-"+p.ID).Body(body...))
		}
	}
	if r.Answer == nil {
		parts = append(guides, parts...)
	} else {
		parts = append(parts, guides...)
	}
	if len(parts) == 0 {
		return app.Text("")
	}
	class := "parts"
	if folded {
		class += " folds"
	}
	return app.Div().Class(class).Body(parts...)
}

// liveBlock is a block that is rendered again only when it has changed, unless
// it depends on more than itself.
func (c *calculator) liveBlock(b report.Block) app.UI {
	switch b := b.(type) {
	case report.Lots:
		return c.lotsView(b)
	case report.Ask:
		return c.ask(b)
	case report.Go:
		return c.whose.MainAct(b)
	case report.Brought:
		return c.broughtView(b)
	}
	return &blockView{Block: b, folds: c.folds}
}

// ask names what is missing, each with a way to its field.
func (c *calculator) ask(a report.Ask) app.UI {
	var body []app.UI
	toGet.Each(func(text string) { body = append(body, app.Text(text)) }, func(part string) {
		if part == "result" {
			body = append(body, app.Text(a.For))
			return
		}
		for i, key := range a.Keys {
			switch {
			case i > 0 && i == len(a.Keys)-1:
				body = append(body, app.Text(andTheLast))
			case i > 0:
				body = append(body, app.Text(andTheNext))
			}
			body = append(body, c.jump(key, 0, c.form.Label(key)))
		}
	})
	return app.P().Class("ask").Body(body...)
}
