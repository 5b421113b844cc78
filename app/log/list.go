package log

import (
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/app/site"
	"striderule/app/view"
	"striderule/calc"
	"striderule/calc/logbook"
	"striderule/calc/report"
	"striderule/calc/word"
)

// filters choose what is listed.
func (p *Page) filters() app.UI {
	return app.Div().Class("log-filters").Body(
		p.filter("log-machine", "Machine", "All machines", p.machine, p.machines, func(name string) { p.machine = name }),
		p.filter("log-axis", "Axis", "All axes", p.axis, p.axes, func(name string) { p.axis = name }),
	)
}

func (p *Page) machines() []string { return p.kept.Book.Machines() }
func (p *Page) axes() []string     { return p.kept.Book.Axes(p.machine) }

// filter chooses a name, by its place in the list: a machine may be called
// anything. Names are asked for anew in the handler, which outlives a rendering.
func (p *Page) filter(id, name, all, chosen string, names func() []string, choose func(string)) app.UI {
	options := []app.UI{app.Option().Text(all).Selected(chosen == "")}
	for _, n := range names() {
		options = append(options, app.Option().Text(n).Selected(n == chosen))
	}
	return app.Div().Class("field").Body(
		app.Label().For(id).Text(name),
		app.Select().ID(id).Name(id).Body(options...).OnChange(func(ctx app.Context, e app.Event) {
			name := ""
			if i := ctx.JSSrc().Get("selectedIndex").Int(); i > 0 {
				name = names()[i-1]
			}
			choose(name)
			p.refresh()
			p.reselect()
		}, app.EventScope(id)),
	)
}

// reselect puts what is chosen into the lists, whose options may have changed.
func (p *Page) reselect() {
	p.ctx.Defer(func(app.Context) {
		place := func(id string, names []string, chosen string) {
			if e, ok := browser.Element(id); ok {
				e.Set("selectedIndex", slices.Index(names, chosen)+1)
			}
		}
		place("log-machine", p.machines(), p.machine)
		place("log-axis", p.axes(), p.axis)
	})
}

// trendViews show how the results of one axis change with time.
func (p *Page) trendViews() app.UI {
	if len(p.trends) == 0 {
		return app.P().Class("hint").ID("log-trend-hint").Text("Choose a machine and an axis to see how its results change with time.")
	}
	var parts []app.UI
	for _, t := range p.trends {
		body := []app.UI{view.Chart(&t.Chart, nil)}
		for _, says := range t.Says {
			body = append(body, app.P().Text(says))
		}
		parts = append(parts, app.Section().Class("part trend").Aria("label", t.Chart.Title).Body(body...))
	}
	return app.Div().ID("log-trends").Body(parts...)
}

// ListOf is a list of entries, to be looked at.
func ListOf(entries []logbook.Entry) app.UI {
	return (&Page{entries: entries, shown: listStep}).list()
}

// list shows the entries, newest first, some at a time.
func (p *Page) list() app.UI {
	shown := p.entries[:min(p.shown, len(p.entries))]
	var items []app.UI
	for _, e := range shown {
		items = append(items, p.item(e))
	}
	return app.Section().Class("part").Aria("label", "Entries").Body(
		app.Div().Class("log-head").Body(
			app.H2().Text(word.Plural(len(p.entries), "entry", "entries")),
			app.If(len(p.entries) > 1 && !p.example, func() app.UI {
				return app.Button().Type("button").ID("delete-listed").Text("Delete these " + word.Plural(len(p.entries), "entry", "entries")).
					OnClick(func(app.Context, app.Event) { p.delete(kept.Items(p.entries)) })
			}),
		),
		app.If(len(p.entries) > 1, func() app.UI { return app.P().Class("hint").Text("Tick two of them to lay them side by side.") }),
		app.Ul().Class("log").ID("log-list").TabIndex(-1).Body(items...),
		app.If(len(shown) < len(p.entries), func() app.UI {
			return frame.Button("more", "Show more", func() {
				next := p.entries[p.shown].ID
				p.shown += listStep
				p.focusLater("open-" + next)
			})
		}),
		p.comparer(),
	)
}

// nameOf is an entry's machine and axis.
func nameOf(e logbook.Entry) string {
	switch {
	case e.Machine == "" && e.Axis == "":
		return "No machine named"
	case e.Axis == "":
		return e.Machine
	}
	return strings.TrimPrefix(e.Machine+" · "+e.Axis, " · ")
}

// dateOf is an entry's date as it is read.
func dateOf(e logbook.Entry) string { return strings.Replace(e.Date, "T", " ", 1) }

// item is one entry. Its buttons say in full what they are about.
func (p *Page) item(e logbook.Entry) app.UI {
	about := nameOf(e) + ", " + dateOf(e)
	result := []app.UI{app.Span().Class("hint").Text("No result yet")}
	if e.Answered() {
		result = []app.UI{app.Span().Class("hint").Text(e.Label), app.Strong().Body(view.Figure(e.Figure()))}
	}
	tick := "tick-" + e.ID
	return app.Li().ID("entry-"+e.ID).Body(
		app.Label().Class("option log-tick").For(tick).Body(
			app.Input().Type("checkbox").ID(tick).Name("tick").Checked(slices.Contains(p.ticked, e.ID)).Aria("label", "Compare "+about).
				OnChange(func(ctx app.Context, _ app.Event) { p.tick(e.ID, ctx.JSSrc().Get("checked").Bool()) }, app.EventScope(e.ID)),
			app.Elem("time").Attr("datetime", e.Date).Text(dateOf(e)),
		),
		app.Div().Class("log-name").Text(nameOf(e)),
		app.Div().Class("log-result").Body(result...),
		app.Div().Class("log-verdict").Text(e.Verdict),
		app.Div().Class("log-note").Text(e.Note),
		app.Div().Class("log-do").Body(
			app.A().ID("open-"+e.ID).Class("log-open").Href(site.LinkTo(site.PathOf(e.Page), e.Sheet)).Aria("label", "Open "+about).Text("Open"),
			app.If(!p.example, func() app.UI {
				return frame.Button("delete-"+e.ID, "Delete", func() { p.delete(kept.Items([]logbook.Entry{e})) }).Class("log-delete").Aria("label", "Delete "+about)
			}),
		),
	)
}

func (p *Page) tick(id string, on bool) {
	p.ticked = slices.DeleteFunc(slices.Clone(p.ticked), func(t string) bool { return t == id })
	if on {
		p.ticked = append(p.ticked, id)
	}
}

// comparer stays in view while something is ticked.
func (p *Page) comparer() app.UI {
	n := len(p.ticked)
	return app.If(n > 0, func() app.UI {
		hint := "Tick one more to compare."
		if n > 2 {
			hint = "Two can be compared: " + word.Plural(n, "is ticked", "are ticked") + "."
		}
		return app.Div().Class("log-comparer").Body(
			app.If(n == 2, func() app.UI {
				return frame.Button("compare", "Compare the two", func() { p.compare() })
			}).Else(func() app.UI { return app.P().Text(hint) }),
			frame.Button("untick", "Clear ticks", func() {
				p.ticked, p.compared = nil, nil
				p.focusLater("log-list")
			}),
		)
	})
}

func (p *Page) compare() {
	a, okA := p.kept.Book.Entry(p.ticked[0])
	b, okB := p.kept.Book.Entry(p.ticked[1])
	if okA && okB {
		c := logbook.Compare(a, b)
		p.compared = &c
		p.focusLater("comparison")
	}
}

// comparison lays two entries side by side.
func (p *Page) comparison() app.UI {
	c := p.compared
	if c == nil {
		return app.Text("")
	}
	var rows [][]report.Line
	if before, after := nameOf(c.Before), nameOf(c.After); before != after {
		rows = append(rows, []report.Line{report.Say("Machine and axis"), report.Say(before), report.Say(after)})
	}
	rows = append(rows, []report.Line{report.Say("Result"), result(c.Before), result(c.After)})
	if c.Before.Verdict != "" || c.After.Verdict != "" {
		rows = append(rows, []report.Line{report.Say("Verdict"), report.Say(c.Before.Verdict), report.Say(c.After.Verdict)})
	}
	for _, d := range c.Differences {
		rows = append(rows, []report.Line{report.Say(d.Label), report.Say(d.Before), report.Say(d.After)})
	}
	says := "Of the entries, these differ:"
	switch {
	case !c.SamePage:
		says = "They are of different pages (" + pageName(c.Before.Page) + " and " + pageName(c.After.Page) + "): only the results can be laid side by side."
	case len(c.Differences) == 0:
		says = "All entries of the two pages are the same."
	}
	return app.Section().Class("part").ID("comparison").TabIndex(-1).Aria("label", "Comparison").Body(
		app.H2().Text("Side by side"),
		app.P().Text(says),
		view.Table(report.Table{Caption: "Side by side", Head: []string{"", dateOf(c.Before), dateOf(c.After)}, Rows: rows}),
		frame.Button("comparison-end", "Close", func() {
			p.compared = nil
			p.focusLater("compare")
		}),
	)
}

func pageName(slug string) string {
	page, ok := calc.PageOf(slug)
	if !ok {
		return slug
	}
	return page.Menu
}

func result(e logbook.Entry) report.Line {
	if !e.Answered() {
		return report.Say("no result")
	}
	f := e.Figure()
	return report.Line{{Text: e.Label + ": "}, {Figure: &f}}
}
