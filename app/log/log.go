package log

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/app/site"
	"striderule/app/view"
	"striderule/calc/logbook"
	"striderule/calc/machine"
	"striderule/calc/word"
)

// Page is the machine log: what a person saved on this device.
type Page struct {
	app.Compo
	ctx      app.Context // the component's own: see calculator
	kept     kept.Log
	known    []machine.Axis // of this device, with the settings of now
	unsorted []machine.Unsorted
	chosen   map[string]string // axes for the names of those, by ID
	folds    *view.Folds
	example  bool // the example shows, and nothing of it is stored

	machine, axis string // what is listed, the axis by its key; empty for all
	entries       []logbook.Entry
	trends        []logbook.Trend
	shown         int

	ticked   []string // IDs, for a comparison
	compared *logbook.Comparison

	said     string                                     // what was done last
	undoing  func() (n, left int, refused kept.Refusal) // puts back what was changed last; nil if nothing was
	undone   word.Counted                               // what is said of that
	imported *importReport

	changes int // by other tabs, to wait until they pause
	release func()
}

// listStep is how many entries are listed at first, and more each time.
const listStep = 50

// OnInit reads the log, once.
func (p *Page) OnInit() {
	p.kept, p.folds, p.chosen = kept.Read(), view.NewFolds(), map[string]string{}
	p.relate()
	p.refresh()
}

func (p *Page) OnNav(ctx app.Context) {
	frame.Arrived(ctx)
	browser.Offer(browser.Offers{File: p.takeFile})
	ctx.PreventUpdate() // nothing of it shows
}

// OnMount listens for other tabs that change the log.
func (p *Page) OnMount(ctx app.Context) {
	p.ctx = ctx
	ctx.PreventUpdate() // it has just been rendered
	changed := func() { ctx.Dispatch(func(app.Context) { p.changedElsewhere() }) }
	ofLog, ofMachines := kept.OnChange(kept.Prefix(), changed), kept.OnMachines(changed)
	p.release = func() {
		ofLog()
		ofMachines()
	}
}

// OnDismount stops listening.
func (p *Page) OnDismount() {
	if p.release != nil {
		p.release()
		p.release = nil
	}
}

// changedElsewhere reads the log again once the other tab has come to rest.
func (p *Page) changedElsewhere() {
	p.changes++
	change := p.changes
	browser.After(300, func() {
		p.ctx.Dispatch(func(app.Context) {
			if change == p.changes && !p.example {
				p.again()
			}
		})
	})
}

// relate reads the machines of this device, and finds what in the book belongs to none.
func (p *Page) relate() {
	p.known, p.unsorted = kept.ReadMachines().Axes(), nil
	if len(p.known) > 0 && !p.example {
		p.unsorted = machine.UnsortedIn(p.kept.Book.All(), p.known)
	}
}

// refresh brings list and trends up to the book and what is chosen.
func (p *Page) refresh() {
	book := p.kept.Book
	if p.machine != "" && len(book.Of(p.machine, "")) == 0 {
		p.machine = ""
	}
	if p.axis != "" && len(book.Of(p.machine, p.axis)) == 0 {
		p.axis = ""
	}
	p.entries = book.Of(p.machine, p.axis)
	p.shown = listStep
	p.trends = nil
	if p.oneAxis() {
		p.trends = logbook.Trends(p.entries)
	}
	ticked := p.ticked[:0]
	for _, id := range p.ticked {
		if _, ok := book.Entry(id); ok {
			ticked = append(ticked, id)
		}
	}
	p.ticked = ticked
	p.compared = nil
}

// oneAxis reports whether all that is listed is of the same axis.
func (p *Page) oneAxis() bool {
	for _, e := range p.entries {
		if e.Machine != p.entries[0].Machine || logbook.AxisKey(e.Axis) != logbook.AxisKey(p.entries[0].Axis) {
			return false
		}
	}
	return len(p.entries) > 0
}

// delete takes items out of the log, for undo to put back.
func (p *Page) delete(items []kept.Item) {
	gone, refused := kept.Drop(items)
	p.again()
	p.undoing = nil
	if len(gone) > 0 {
		p.undoing, p.undone = func() (int, int, kept.Refusal) {
			n, refused := kept.PutBack(gone)
			return n, 0, refused
		}, restored
	}
	switch left := len(items) - len(gone); {
	case refused != "":
		p.tell(notDeleted.Fill(left), refused.Says())
	case left > 0:
		p.tell(deleted.Fill(len(gone)), leftAlone.Fill(left))
	default:
		p.tell(deleted.Fill(len(gone)))
	}
	p.focusOnUndo()
}

// focusOnUndo moves the focus to the way back, or where there is none to what was said.
func (p *Page) focusOnUndo() {
	if p.undoing != nil {
		p.focusLater("undo")
	} else {
		p.focusLater("log-said")
	}
}

// again reads the log, and lists as many as before.
func (p *Page) again() {
	shown := p.shown
	p.kept = kept.Read()
	p.relate()
	p.refresh()
	p.rechoose()
	p.shown = max(p.shown, shown)
}

// undo puts back what was changed last.
func (p *Page) undo() {
	n, left, refused := p.undoing()
	p.again()
	if refused != "" {
		p.tell(notAllRestored, refused.Says())
	} else {
		p.tell(p.undone.Fill(n))
		if left > 0 {
			p.tell(p.said, leftAlone.Fill(left))
		}
		p.undoing = nil
	}
	p.focusLater("log-said")
}

// tell says what was done; it is announced.
func (p *Page) tell(sentences ...string) { p.said = together(sentences...) }

// together are whole sentences in a row.
func together(sentences ...string) string { return strings.Join(sentences, " ") }

func (p *Page) focusLater(id string) {
	p.ctx.Defer(func(app.Context) { browser.Focus(id) })
}

func (p *Page) showExample(on bool) {
	p.example = on
	p.machine, p.axis, p.ticked, p.undoing, p.imported, p.said = "", "", nil, nil, nil, ""
	if on {
		p.kept.Book = logbook.NewBook(logbook.Example()...)
		newest := p.kept.Book.All()[0]
		p.machine, p.axis = newest.Machine, newest.Axis
	} else {
		p.kept = kept.Read()
	}
	p.relate()
	p.refresh()
	p.focusLater("title")
}

func (p *Page) Render() app.UI {
	return frame.Shell(site.LogPath, pageTitle, pageQuestion,
		app.If(p.kept.Book.Len() == 0, func() app.UI {
			return app.P().Class("intro").Text(whatFor)
		}),
		app.P().Class("intro").Text(whereItIs),
		p.troubles(),
		p.notice(),
		p.tools(),
		p.importView(),
		p.content(),
	)
}

// notice is what was done last, with a way back.
func (p *Page) notice() app.UI {
	return app.Div().Class(frame.NoticeClass(p.said)).Body(
		app.P().ID("log-said").TabIndex(-1).Attr("role", "status").Text(p.said),
		app.If(p.undoing != nil, func() app.UI {
			return frame.Button("undo", undoLabel, p.undo)
		}),
	)
}

// content is the log itself, or what to do about an empty one.
func (p *Page) content() app.UI {
	switch {
	case !app.IsClient:
		return app.P().Class("ask").Text(notYet)
	case p.example:
	case p.kept.Refused != "":
		return app.Text("")
	case p.kept.Book.Len() == 0:
		return app.P().Class("ask").ID("log-empty").Text(empty)
	}
	return app.Div().Class("log-content").Body(
		app.If(p.example, func() app.UI {
			return app.Div().Class("check same").ID("log-example").Body(
				app.P().Text(theExample),
				frame.Button("example-end", backToMine, func() { p.showExample(false) }),
			)
		}),
		p.sorting(), p.filters(), p.trendViews(), p.comparison(), p.list(),
	)
}

// tools are what can be done with the whole log.
func (p *Page) tools() app.UI {
	if p.example {
		return app.Text("")
	}
	some := p.kept.Book.Len() > 0
	return app.Div().Class("tools").Body(
		app.If(some || len(p.known) > 0, func() app.UI {
			return frame.Button("export", saveFile, func() {
				browser.SaveFile(kept.FileName("json"), logbook.WriteFile(kept.WithMachines(p.kept.Book.All())))
			})
		}),
		app.If(some, func() app.UI {
			return frame.Button("export-csv", saveCSV, func() { browser.SaveFile(kept.FileName("csv"), logbook.CSV(p.kept.Book.All())) })
		}),
		frame.Button("import", importFile, browser.ChooseFile),
		frame.Button("example-show", showExample, func() { p.showExample(true) }),
	)
}
