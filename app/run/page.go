package run

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/app/site"
	"striderule/app/whose"
	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/machine"
	"striderule/calc/run"
)

// Page is the card that shows.
type Page struct {
	app.Compo
	ctx     app.Context // the component's own: see calculator
	form    *form.Form
	test    run.Test
	card    run.Card
	address string // the fragment that the form was read from or written to
	name    string // of the test, in the steps of the history
	whose   *whose.Sheet
	release func() // ends what is heard of other tabs

	since     float64 // when the card came to show, by the page's clock, in ms
	began     float64 // when the move of this card began, by the device's clock, in ms; 0 while it has not
	signed    bool    // that it is over was said
	sentLines string  // the cards whose lines were sent, each behind a comma
	ticking   bool
	problem   string // with what was typed
	doubt     string // what is asked about the reading
	instead   string // what it may have been
	keyboard  bool   // the system's own is used
	dims      bool   // the screen may go dark
	saveAs    string // the name of a machine that the sheet has none of
	saved     bool
}

var path = site.PathOf(calc.Run.Slug)

// OnInit reads the link. The form is that of Calibrate, and so is all that is saved of it.
func (p *Page) OnInit() { p.load(frame.Here(path)) }

func (p *Page) load(fragment string) {
	page, _ := calc.PageOf(machine.Page)
	frame.Yield()
	p.form = calc.Load(page, fragment)
	p.address, p.sentLines = fragment, ""
	p.test = run.Test{Form: p.form}
	p.form.Mended(frame.MendedIn(fragment))
	kept.AcceptKnown(p.form)
	frame.Yield()
	p.whose = whose.Of(p)
	p.takeUp()
	p.name = browser.TestHere()
}

// show makes a card the one that shows.
func (p *Page) show(c run.Card) {
	p.card = c
	p.problem, p.doubt, p.instead, p.saved = "", "", "", false
	p.began, p.signed, p.since = 0, false, browser.Clock()
	p.form.SetCard(c.String())
}

// takeUp shows the card of the address, whose move may have begun already.
func (p *Page) takeUp() {
	p.show(p.test.Start())
	switch r := kept.ReadRun(); {
	case r.Fragment == p.form.AddressFragment():
		p.began, p.sentLines = min(r.Began, browser.Milliseconds()), r.Sent // or the clock was set back
	case r.Began == 0 && p.Mounted() && p.sentLines != "": // no move goes on elsewhere
		p.keep(0)
	}
}

// OnNav goes to another card, or reads a link that was opened over this page.
func (p *Page) OnNav(ctx app.Context) {
	frame.Arrived(ctx)
	browser.Offer(browser.Offers{Dim: p.mayDim})
	browser.StayAwake(p.isMoving())
	fragment := frame.Here(path)
	if fragment == p.address {
		ctx.PreventUpdate()
		return
	}
	if p.name == "" || browser.TestHere() != p.name {
		p.load(fragment)
		p.nameTest()
		p.arrived()
		return
	}
	// A step of this test: what was typed since then stays.
	p.form.SetCard(link.TextOf(link.Split(fragment), form.CardKey))
	p.takeUp()
	p.write()
	p.arrived()
}

// OnMount begins to listen, and to count where a move has begun.
func (p *Page) OnMount(ctx app.Context) {
	p.ctx = ctx
	ctx.PreventUpdate() // it has just been rendered
	p.release = kept.OnMachines(func() { ctx.Dispatch(func(app.Context) { p.whose.Meet() }) })
	p.nameTest()
	p.tick()
	ctx.Defer(func(app.Context) { p.refill() })
}

// nameTest gives the steps of a test that has just been opened a name.
func (p *Page) nameTest() {
	if p.name == "" {
		p.name = strconv.FormatFloat(browser.Milliseconds(), 'f', 0, 64)
		browser.NameTest(p.name)
	}
}

// OnDismount stops listening.
func (p *Page) OnDismount() {
	if p.release != nil {
		p.release()
		p.release = nil
	}
	browser.StayAwake(false)
}

// goTo shows a card, as a step of the history.
func (p *Page) goTo(c run.Card) {
	p.show(c)
	p.keep(0)
	if fragment := p.form.AddressFragment(); fragment != p.address {
		p.address = fragment
		browser.PushCard(fragment, p.name)
	}
	p.arrived()
}

// keep keeps where the test is on this device, and when the move of the card began.
func (p *Page) keep(began float64) {
	p.began = began
	kept.Run{Fragment: p.form.AddressFragment(), Began: began, Sent: p.sentLines}.Keep()
}

// arrived hands the focus to the card that shows.
func (p *Page) arrived() {
	browser.StayAwake(p.isMoving())
	browser.ToTheTop()
	p.tick()
	p.ctx.Defer(func(app.Context) {
		p.since = browser.Clock() // the card shows only now
		p.refill()
		id := "card-says"
		if browser.Has(entryID) && !p.keyboard {
			id = entryID
		}
		browser.Focus(id)
	})
}

// isMoving reports whether the test is at the machine: then the screen stays awake.
func (p *Page) isMoving() bool {
	return p.card.Step > run.Care && p.card.Step < run.Result
}

// mayDim notes that the screen can't be kept awake.
func (p *Page) mayDim() { p.ctx.Dispatch(func(app.Context) { p.dims = true }) }

// write brings the address up to the form.
func (p *Page) write() {
	if fragment := p.form.AddressFragment(); fragment != p.address {
		p.address = fragment
		browser.WriteFragment(fragment)
	}
}

// refill puts the form's text into the field.
func (p *Page) refill() {
	if e, ok := browser.Element(entryID); ok && e.Get("value").String() != p.test.Text(p.card) {
		e.Set("value", p.test.Text(p.card))
	}
}

// Form, Edit, Refill, Focus, GoTo and Jump make the page a whose.Host.
func (p *Page) Form() *form.Form { return p.form }

func (p *Page) Edit(change func(*form.Form)) {
	change(p.form)
	if p.Mounted() { // not while the link is read
		p.write()
		p.keep(p.began)
	}
}

func (p *Page) Refill() {}

func (p *Page) Focus(id string) { p.ctx.Defer(func(app.Context) { browser.Focus(id) }) }

func (p *Page) GoTo(string) {}

func (p *Page) Jump(_, text string) app.UI { return app.Span().Text(text) }

// toSheet is the address of the same sheet on Calibrate, which knows the card to come back to.
func (p *Page) toSheet() string {
	return site.LinkTo(site.PathOf(machine.Page), p.form.AddressFragment())
}
