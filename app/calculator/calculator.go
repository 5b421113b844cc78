// Package calculator shows a page of calc: its form and its report.
package calculator

import (
	"cmp"
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/file"
	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/app/site"
	"striderule/app/view"
	"striderule/app/whose"
	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/machine"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/word"
)

// calculator shows one page of calc: its form and its report.
type calculator struct {
	app.Compo
	page     sheet.Page
	form     *form.Form
	last     string // what the page was when it was left, to go on with
	cleared  bool   // by the person, who does not want it back
	host     string // where the site is, before its path
	address  string // the fragment that the form was read from or written to
	settling settling
	typing   typing
	whose    *whose.Sheet
	release  func() // ends what is heard of other tabs
	lots     *lotRun
	keep     keeping
	folds    *view.Folds
	units    map[string]string // that were chosen last, by the key of the field
	post     form.PostKind
	code     view.Code
	file     file.Sheet
	rowsEdit form.RowsEdit // by the last edit
	turns    int           // how often it was rendered
	quick    []app.Context // of what a key renders: see quickView
	// ctx is the component's own. That of an event ends with its element, which
	// the event may take off the page: what comes later must not hang on it.
	ctx app.Context
}

// New shows a page.
func New(page sheet.Page) app.Composer { return &calculator{page: page} }

// CompoID keeps one calculator's state out of another: go-app reuses a
// component of the same type and ID.
func (c *calculator) CompoID() string { return c.page.Slug }

// OnInit reads the link. Later would be one frame too late: the page would
// show its defaults for a moment.
func (c *calculator) OnInit() {
	c.host = browser.Origin()
	c.settling.later = browser.After
	c.settling.now = func(do func()) { c.ctx.Dispatch(func(app.Context) { do() }) }
	frame.Yield()
	c.load(c.linked())
	frame.Yield()
}

// linked is the fragment of this page's address.
func (c *calculator) linked() string { return frame.Here(site.PathOf(c.page.Slug)) }

func (c *calculator) load(fragment string) {
	c.address, c.settling.unwritten = fragment, false
	c.last = ""
	if last := browser.LastHere(); last != fragment && !c.cleared && (fragment == "" || machine.IsAxis(fragment)) {
		c.last = last
	}
	c.cleared = false
	if frame.IsBuilding() && fragment != "" {
		// Browsers compile what runs for the first time: parts of it in slices of their own.
		calc.NewForm(c.page)
		frame.Yield()
		calc.Mend(fragment)
		frame.Yield()
	}
	read := calc.Load
	if browser.IsOwn() {
		read = calc.LoadWhole
	}
	c.form = read(c.page, fragment)
	c.whose = whose.Of(c)
	kept.AcceptKnown(c.form)
	frame.Yield()
	c.form.Mended(frame.MendedIn(fragment)) // nothing yet where the untouched go-app makes the page
	c.follow()
	c.compareNow()
	c.lots = nil
	c.keep = c.draftedKeep()
	if c.folds == nil {
		c.folds = view.NewFolds()
		c.folds.Opened = c.refill
	}
	c.folds.Whole = c.host == "" // the page as it is generated
	c.units = map[string]string{}
	var open []string
	if frame.IsBuilding() {
		open = browser.OpenFolds()
	}
	c.folds.Reset(open)
	c.typing = typing{}
	c.file = file.Sheet{}
	c.rowsEdit = form.RowsEdit{}
}

// OnNav reads a link that was opened over this page.
func (c *calculator) OnNav(ctx app.Context) {
	frame.Arrived(ctx)
	browser.Offer(browser.Offers{File: c.takeFile, Paste: c.pasteInto, Fill: c.fillIn, Find: c.makeAll, Print: c.drawPrinted, Leave: c.leave, Overtaken: c.overtaken})
	fragment := c.linked()
	if fragment == c.address {
		ctx.PreventUpdate()
		return
	}
	c.load(fragment)
	c.refill()
}

// makeAll makes what is in closed folds: a browser looks there for words too, and opens what it
// finds.
func (c *calculator) makeAll() {
	c.ctx.Dispatch(func(app.Context) {
		c.folds.Whole = true
		c.refill()
	})
}

// edit changes the form. The address follows when typing pauses, and so does
// what screen readers are told.
func (c *calculator) edit(change func(*form.Form)) {
	c.typing = typing{}
	c.change(change)
	c.follow()
}

// editByKey is edit for a key. Only the answer is rendered, and what hands it on; the rest
// of the page follows when the next key has not come at once.
//
// go-app counts for each component how often it was asked to render, and renders it if more
// asked than took it back. An event asks for the calculator that hears of it, once: the first
// PreventUpdate takes that back. A dispatch by a view's context asks for the view and for the
// calculator around it: the PreventUpdate in it is by the calculator's own context, and takes
// that one back. What is left over is one rendering of each view.
func (c *calculator) editByKey(ctx app.Context, change func(*form.Form)) {
	c.change(change)
	ctx.PreventUpdate()
	for _, of := range c.quick {
		of.Dispatch(func(app.Context) { c.ctx.PreventUpdate() })
	}
	c.settling.after(reportAfter, c.follow)
}

// follow brings the whole page up to the form.
func (c *calculator) follow() {
	c.whose.LookBack()
	c.settling.show(c.form.Report())
}

func (c *calculator) change(change func(*form.Form)) {
	change(c.form)
	c.lots = nil
	c.whose.Edited()
	c.rowsEdit = form.RowsEdit{}
	c.keep.said = "" // it was about the entries as they were
	write := func() {
		c.writeAddress()
		c.ctx.PreventUpdate()
	}
	c.settling.edited(write)
	c.settling.after(addressAfter, write)
	c.settling.after(restAfter, func() {
		c.settling.said = c.summary()
		c.compareNow()
	})
	if c.typing.id != "" {
		c.settling.after(pauseAfter, func() { c.typing = typing{} })
	}
}

// writeAddress brings the address up to the form. It does nothing once another
// page is shown.
func (c *calculator) writeAddress() {
	c.settling.unwritten = false
	if fragment := c.form.AddressFragment(); c.Mounted() && fragment != c.address {
		c.moveTo(fragment)
		browser.WriteFragment(fragment)
	}
}

// leave writes what typing has not yet paused for.
func (c *calculator) leave() {
	c.keepOwn()
	if c.settling.unwritten {
		c.writeAddress()
	}
}

// overtaken returns what is in no address: the browser has gone to another step of the
// history, and shows its address already.
func (c *calculator) overtaken() (fragment string, late bool) {
	fragment = c.form.AddressFragment()
	if !c.settling.unwritten || fragment == c.address {
		return "", false
	}
	c.moveTo(fragment) // or it would be written into the other one
	c.settling.unwritten = false
	return fragment, true
}

// moveTo makes the fragment the page's address, and what is half filled in that of it.
func (c *calculator) moveTo(fragment string) {
	if c.keep.typed {
		browser.NoteDraft(site.LinkTo(site.PathOf(c.page.Slug), c.address))
	}
	c.address = fragment
	c.noteKeep()
}

// replace opens another sheet on this page, as a step in the history: Back
// brings the entries back.
func (c *calculator) replace(ctx app.Context, said, fragment string) {
	c.writeAddress()
	if c.form.Fragment() != "" {
		said = word.Together(said, backBrings)
	}
	if said != "" {
		browser.Announce(said)
	}
	ctx.Navigate(site.LinkTo(site.PathOf(c.page.Slug), fragment))
}

// OnMount fills the fields in from the link. What was typed before the program
// was there stays: it is on its way into the form.
func (c *calculator) OnMount(ctx app.Context) {
	c.ctx = ctx
	ctx.PreventUpdate() // it has just been rendered
	c.release = kept.OnMachines(func() { ctx.Dispatch(func(app.Context) { c.edit(func(*form.Form) { c.whose.Meet() }) }) })
	ctx.Defer(func(app.Context) {
		c.eachText(false, func(e app.Value, text string) {
			if e.Get("value").String() == "" {
				e.Set("value", text)
			}
		})
	})
}

// OnDismount stops listening.
func (c *calculator) OnDismount() {
	if c.release != nil {
		c.release()
		c.release = nil
	}
}

// refill puts the form's text and ticks into the page's fields, after a change
// that was not typed into them.
func (c *calculator) refill() {
	c.ctx.Defer(func(app.Context) {
		c.eachText(true, func(e app.Value, text string) {
			if e.Get("value").String() != text {
				e.Set("value", text)
			}
		})
		for _, f := range c.form.Fields() {
			for _, o := range view.OptionsOf(f) {
				if e, ok := browser.Element(view.OptionID(f, o)); ok {
					e.Set("checked", view.IsChosen(f, o))
				}
			}
			c.refillRows(f)
		}
	})
}

// refillRows puts lists and ticks into a field's rows.
func (c *calculator) refillRows(f sheet.Field) {
	for row := range c.form.Rows(f) {
		e, ok := browser.Element(view.CellID(f, row))
		if !ok {
			continue
		}
		if q := view.QuantityOf(f, row); q != nil && q.Units() != nil {
			c.showUnits(f, row, c.unitOf(f, row, q))
		} else if flag, ok := view.ValueOf[*sheet.Flag](f, row); ok {
			e.Set("checked", flag.On)
		} else if choice, ok := view.ValueOf[*sheet.Choice](f, row); ok {
			e.Set("value", choice.Word)
		}
	}
}

// eachText visits the text fields that are on the page, with the form's text; those
// without any only if they are asked for.
func (c *calculator) eachText(empty bool, visit func(e app.Value, text string)) {
	for _, f := range c.form.Fields() {
		for row := range c.form.Rows(f) {
			if !empty && c.form.Text(f.Key, row) == "" {
				continue
			}
			e, ok := browser.Element(view.CellID(f, row))
			if ok && e.Get("type").String() == "text" {
				visit(e, shownIn(f, row, c.form.Text(f.Key, row)))
			}
		}
	}
}

// summary is the result in few sentences, for screen readers.
func (c *calculator) summary() string {
	if a := c.form.Report().Answer; a != nil {
		verdict := ""
		if v := a.Verdict; v != nil {
			verdict = strings.Replace(verdictAloud.Fill("verdict", v.Title, "why", v.Says.String()), "?.", "?", 1) // a title may ask
		}
		if a.Instead != nil {
			return word.Together(verdict, a.Aloud())
		}
		if k := a.Keep; k != nil {
			verdict = word.Together(verdict, keepAloud.Fill("label", k.Label, "figure", k.String()))
		}
		return word.Together(verdict, answerAloud.Fill("label", a.Label, "figure", a.String(), "says", a.Says.String()))
	}
	if problems := c.form.Problems(); len(problems) > 0 {
		return problems[0].Says
	}
	return ""
}

// offer is what an empty page can be filled with: what it was when it was left, or the example.
func (c *calculator) offer() (id, label, fragment string) {
	if c.last != "" {
		return "continue", goOn, c.last
	}
	return "example", loadExample, c.page.Example
}

func (c *calculator) Render() app.UI {
	c.turns++
	return frame.Shell(site.PathOf(c.page.Slug), c.page.Menu, c.page.Question,
		c.check(),
		c.told(),
		c.chips(),
		c.whose.Whose(),
		c.whose.NamingView(),
		c.file.View(),
		app.Div().Class("desk").Body(
			app.Form().Class("sheet lead").DataSet("sheet", c.page.Slug).AutoComplete(false).Aria("label", entriesName).Body(c.lead()...),
			app.Section().Class("result").ID("result").TabIndex(-1).Aria("label", resultName).Body(
				c.quickly(c.now), c.compareView(), c.parts(open), c.quickly(c.share), c.parts(closed),
			),
			app.Form().Class("sheet more").DataSet("sheet", "more").AutoComplete(false).Aria("label", moreName).Body(c.more()...),
		),
		c.quickly(c.bar),
		app.P().ID("live").Class("unseen").Attr("role", "status").Text(c.settling.said),
	)
}

// chips fill the sheet in, or empty it.
func (c *calculator) chips() app.UI {
	offer, label, _ := c.offer()
	chips := c.whose.Chips()
	if c.page.Slug == machine.Page {
		chips = append(chips, app.A().Class("chip").ID("run-it").Href(site.LinkTo(site.PathOf(calc.Run.Slug), c.form.AddressFragment())).Text(runIt))
	}
	return app.Div().Class("chips").Body(append(chips,
		app.Button().Type("button").ID(offer).Text(label).OnClick(func(ctx app.Context, e app.Event) {
			_, _, sheet := c.offer()
			c.replace(ctx, "", sheet)
		}),
		app.If(c.form.Fragment() != "", func() app.UI {
			return app.Button().Type("button").ID("clear").Text(clearAll).OnClick(func(ctx app.Context, e app.Event) {
				c.cleared = true
				c.replace(ctx, "", "")
			})
		}),
		file.OpenButton(),
	)...)
}

// neededBar says, as long as there is no answer, what it needs, with a way to each field: those of
// the picture by their letters.
func (c *calculator) neededBar() app.UI {
	keys := c.form.Report().Needed()
	if len(keys) == 0 || c.host == "" { // the page as it is made has no program yet that would keep it true
		return app.Text("")
	}
	body := []app.UI{app.Span().Class("bar-label").Text(stillNeeded)}
	for _, key := range keys {
		label, letter := c.form.Label(key), c.letter(key)
		if letter == "" || c.sharesLetter(key, keys) {
			letter = label
		} else {
			label = letterOf.Fill("letter", letter, "field", label)
		}
		body = append(body, app.Text(" "), c.jumpTo(key, 0, letter, label))
	}
	return app.Div().Class("bar needed").Body(body...)
}

// sharesLetter reports whether another of these fields has the same letter, as the old and the new
// part of a swap.
func (c *calculator) sharesLetter(key string, keys []string) bool {
	return slices.ContainsFunc(keys, func(other string) bool { return other != key && c.letter(other) == c.letter(key) })
}

// barLabel is what to do with the figure: the verdict, unless another figure is to be in use.
func barLabel(a *report.Answer) string {
	mark, label := verdictMarks[report.MeasureMore], a.Label
	switch doubted := slices.ContainsFunc(a.Notes, func(n report.Note) bool { return n.Kind == report.Doubt }); {
	case a.Keep != nil:
		mark, label = verdictMark(a.Verdict), a.Keep.Label
	case a.Verdict != nil && doubted:
		label = a.Verdict.Title
	case a.Verdict != nil:
		mark, label = verdictMark(a.Verdict), a.Verdict.Title
	case a.Instead != nil:
		return a.Instead.Title
	case !doubted:
		return label
	}
	return mark + " " + label
}

// inUse is what to have in the controller: that alone is large, in the bar and there to copy.
func inUse(a *report.Answer) report.Figure {
	if a.Keep != nil {
		return *a.Keep
	}
	return a.Figure
}

// bar keeps the answer in view on a small screen.
func (c *calculator) bar() app.UI {
	a := c.form.Report().Answer
	if a == nil {
		return c.neededBar()
	}
	if check, _ := c.form.Check(); check == form.Differs {
		return app.A().Class("bar").Href("#check").DataSet("jump", "check").Body(app.Span().Class("bar-label").Text(differsBar))
	}
	return app.A().Class("bar").Href("#result").DataSet("jump", "result").Body(
		app.Span().Class("bar-label").Text(cmp.Or(c.whose.BarLabel(), barLabel(a))),
		app.If(a.Instead == nil, func() app.UI { return app.Strong().Text(inUse(a).String()) }),
	)
}

// Form, Edit, Refill, Focus, GoTo and Jump make the calculator a whose.Host.
func (c *calculator) Form() *form.Form { return c.form }

func (c *calculator) Edit(change func(*form.Form)) { c.edit(change) }

func (c *calculator) Refill() { c.refill() }

func (c *calculator) Focus(id string) { c.ctx.Defer(func(app.Context) { browser.Focus(id) }) }

func (c *calculator) GoTo(key string) {
	f, _ := c.form.Field(key)
	c.folds.Open(c.foldOf(f, 0))
	c.Focus(view.CellID(f, 0))
}

func (c *calculator) Jump(key, text string) app.UI { return c.jump(key, 0, text) }
