package log

import (
	"slices"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/app/site"
	"striderule/app/view"
	"striderule/calc"
	"striderule/calc/lists"
	"striderule/calc/logbook"
	"striderule/calc/machine"
	"striderule/calc/report"
	"striderule/calc/word"
)

// filters choose what is listed.
func (p *Page) filters() app.UI {
	return app.Div().Class("log-filters").Body(
		p.filter("log-machine", machineLabel, allMachines, p.machine, p.machines, func(name string) string { return name }, func(name string) { p.machine = name }),
		p.filter("log-axis", axisLabel, allAxes, p.axis, p.axes, logbook.AxisName, func(key string) { p.axis = key }),
	)
}

func (p *Page) machines() []string { return p.kept.Book.Machines() }
func (p *Page) axes() []string     { return p.kept.Book.Axes(p.machine) }

// filter chooses from a list, by the place in it: a machine may be called anything. The
// list is asked for again in the handler, which outlives a rendering.
func (p *Page) filter(id, label, all, chosen string, list func() []string, name func(string) string, choose func(string)) app.UI {
	options := []app.UI{app.Option().Text(all).Selected(chosen == "")}
	for _, one := range list() {
		options = append(options, app.Option().Text(name(one)).Selected(one == chosen))
	}
	return app.Div().Class("field").Body(
		app.Label().For(id).Text(label),
		app.Select().ID(id).Name(id).Body(options...).OnChange(func(ctx app.Context, e app.Event) {
			one := ""
			if i := ctx.JSSrc().Get("selectedIndex").Int(); i > 0 {
				one = list()[i-1]
			}
			choose(one)
			p.refresh()
			p.reselect()
		}, app.EventScope(id)),
	)
}

// reselect puts what is chosen into the lists, whose options may have changed.
func (p *Page) reselect() {
	p.ctx.Defer(func(app.Context) {
		place := func(id string, list []string, chosen string) {
			if e, ok := browser.Element(id); ok {
				e.Set("selectedIndex", slices.Index(list, chosen)+1)
			}
		}
		place("log-machine", p.machines(), p.machine)
		place("log-axis", p.axes(), p.axis)
	})
}

// trendViews show how the results of one axis change with time.
func (p *Page) trendViews() app.UI {
	if len(p.trends) == 0 {
		return app.P().Class("hint").ID("log-trend-hint").Text(chooseAxis)
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
	return app.Section().Class("part").Aria("label", theEntries).Body(
		app.Div().Class("log-head").Body(
			app.H2().Text(listHeading.Fill(len(p.entries))),
			app.If(len(p.entries) > 1 && !p.example, func() app.UI {
				return app.Button().Type("button").ID("delete-listed").Class("quiet").Text(deleteListed.Fill("n", strconv.Itoa(len(p.entries)))).
					OnClick(func(app.Context, app.Event) { p.delete(kept.Items(p.entries)) })
			}),
		),
		app.If(len(p.entries) > 1, func() app.UI { return app.P().Class("hint").Text(tickTwo) }),
		app.Ul().Class("log").ID("log-list").TabIndex(-1).Body(items...),
		app.If(len(shown) < len(p.entries), func() app.UI {
			return frame.Button("more", showMore, func() {
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
		return noMachine
	case e.Axis == "":
		return e.Machine
	case e.Machine == "":
		return e.AxisName()
	}
	return machineAndAxis.Fill("machine", e.Machine, "axis", e.AxisName())
}

// dateOf is an entry's date as it is read.
func dateOf(e logbook.Entry) string { return word.Day(e.Date) }

// item is one entry. Its buttons say in full what they are about.
func (p *Page) item(e logbook.Entry) app.UI {
	about := entryOfDate.Fill("entry", nameOf(e), "date", dateOf(e))
	result := []app.UI{app.Span().Class("hint").Text(noResultYet)}
	if e.Answered() {
		result = []app.UI{app.Span().Class("hint").Text(e.ResultName()), app.Strong().Body(view.Figure(e.Figure()))}
	}
	tick := "tick-" + e.ID
	return app.Li().ID("entry-"+e.ID).Body(
		app.Label().Class("option log-tick").For(tick).Body(
			app.Input().Type("checkbox").ID(tick).Name("tick").Checked(slices.Contains(p.ticked, e.ID)).Aria("label", compareEntry.Fill("entry", about)).
				OnChange(func(ctx app.Context, _ app.Event) { p.tick(e.ID, ctx.JSSrc().Get("checked").Bool()) }, app.EventScope(e.ID)),
			app.Elem("time").Attr("datetime", e.Date).Text(dateOf(e)),
		),
		app.Div().Class("log-name").Text(nameOf(e)),
		app.Div().Class("log-result").Body(result...),
		app.Div().Class("log-verdict").Text(e.VerdictTitle()),
		app.Div().Class("log-note").Text(e.Note),
		app.Div().Class("log-do").Body(
			p.opener(e, about),
			p.tester(e, about),
			app.If(!p.example, func() app.UI {
				return frame.Button("delete-"+e.ID, deleteIt, func() { p.delete(kept.Items([]logbook.Entry{e})) }).Class("log-delete").Aria("label", deleteEntry.Fill("entry", about))
			}),
		),
	)
}

// opener leads to an entry's sheet. A file may hold entries of pages that there are not.
func (p *Page) opener(e logbook.Entry, about string) app.UI {
	if _, ok := calc.PageOf(e.Page); !ok {
		return app.Span().ID("open-" + e.ID).TabIndex(-1).Class("hint").Text(noSuchPage)
	}
	return app.A().ID("open-"+e.ID).Class("log-open").Href(site.LinkTo(site.PathOf(e.Page), e.Sheet)).Aria("label", openEntry.Fill("entry", about)).Text(openLabel)
}

// tester leads to a new test of an entry's axis.
func (p *Page) tester(e logbook.Entry, about string) app.UI {
	if e.Page != machine.Page {
		return app.Text("")
	}
	return app.A().Class("log-open").Href(site.LinkTo(site.PathOf(e.Page), machine.Again(e.Sheet, machine.AxisOf(e, p.known)))).Aria("label", testEntry.Fill("entry", about)).Text(testLabel)
}

func (p *Page) tick(id string, on bool) {
	p.ticked = lists.Keep(p.ticked, func(t string) bool { return t != id })
	if on {
		p.ticked = append(p.ticked, id)
	}
}

// comparer stays in view while something is ticked.
func (p *Page) comparer() app.UI {
	n := len(p.ticked)
	return app.If(n > 0, func() app.UI {
		hint := tickOneMore
		if n > 2 {
			hint = onlyTwo.Fill("n", strconv.Itoa(n))
		}
		return app.Div().Class("log-comparer").Body(
			app.If(n == 2, func() app.UI {
				return frame.Button("compare", compareTwo, func() { p.compare() })
			}).Else(func() app.UI { return app.P().Text(hint) }),
			frame.Button("untick", clearTicks, func() {
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
		rows = append(rows, []report.Line{report.Text(machineAxis), report.Text(before), report.Text(after)})
	}
	rows = append(rows, []report.Line{report.Text(aResult), result(c.Before), result(c.After)})
	if c.Before.Verdict != "" || c.After.Verdict != "" {
		rows = append(rows, []report.Line{report.Text(aVerdict), report.Text(c.Before.VerdictTitle()), report.Text(c.After.VerdictTitle())})
	}
	for _, d := range c.Differences {
		rows = append(rows, []report.Line{report.Text(d.Label), report.Text(d.Before), report.Text(d.After)})
	}
	says := whatDiffers
	switch {
	case !c.SamePage:
		says = otherPages.Fill("before", pageName(c.Before.Page), "after", pageName(c.After.Page))
	case len(c.Differences) == 0:
		says = restIsSame
	}
	return app.Section().Class("part").ID("comparison").TabIndex(-1).Aria("label", comparisonLabel).Body(
		app.H2().Text(sideBySide),
		app.P().Text(says),
		view.Table(report.Table{Caption: sideBySide, Head: []string{"", dateOf(c.Before), dateOf(c.After)}, Rows: rows}),
		frame.Button("comparison-end", closeIt, func() {
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
		return report.Say(noResult)
	}
	f := e.Figure()
	return report.Say(namedResult, "name", e.ResultName(), "result", &f)
}
