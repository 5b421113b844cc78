package machines

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/app/site"
	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/machine"
	"striderule/calc/word"
)

// Page is the machines: what this device keeps, and what a link brought.
type Page struct {
	app.Compo
	ctx     app.Context // the component's own: see calculator
	kept    *kept.Machines
	address string         // the fragment that was read
	brought []machine.Axis // by the link
	left    int            // so many more in the link can not be used
	checks  *form.Form     // an empty sheet, to try settings in
	form    *kept.Axis     // that is edited; nil while none is
	entries [fields]string // of the form
	problem string         // with them
	wrong   string         // the field that it is about; empty for the whole
	said    string         // what was done last
	gone    *kept.Axis     // what was deleted last
	labels  bool           // they show
	shown   int            // of the list
	release func()
}

// step is how many axes are listed at first, and more each time.
const step = 24

func (p *Page) OnInit() {
	p.shown = step
	p.load()
}

func (p *Page) load() {
	p.kept = kept.ReadMachines()
	p.address = frame.Here(site.MachinesPath)
	p.brought, p.left = machine.Split(p.address)
	if len(p.brought) > 0 {
		page, _ := calc.PageOf(machine.Page)
		p.checks = calc.NewForm(page)
	}
}

func (p *Page) OnNav(ctx app.Context) {
	frame.Arrived(ctx)
	browser.Offer(browser.Offers{})
	if frame.Here(site.MachinesPath) == p.address {
		ctx.PreventUpdate() // nothing of it shows
		return
	}
	p.load()
}

// OnMount listens for other tabs that change machines.
func (p *Page) OnMount(ctx app.Context) {
	p.ctx = ctx
	ctx.PreventUpdate() // it has just been rendered
	p.release = kept.OnMachines(func() { ctx.Dispatch(func(app.Context) { p.kept = kept.ReadMachines() }) })
}

// OnDismount stops listening.
func (p *Page) OnDismount() {
	if p.release != nil {
		p.release()
		p.release = nil
	}
}

func (p *Page) Render() app.UI {
	list := p.list() // reads them
	return frame.Shell(site.MachinesPath, Name, pageQuestion,
		app.P().Class(p.onScreen("intro")).Text(whereTheyAre),
		p.troubles(),
		app.Div().Class(frame.NoticeClass(p.said)).Body(
			app.P().ID("machines-said").TabIndex(-1).Attr("role", "status").Text(p.said),
			app.If(p.gone != nil, func() app.UI { return frame.Button("undo", undo, p.undo) }),
		),
		p.broughtView(),
		list,
		p.formView(),
		p.handOn(),
	)
}

// onScreen is a class of what is not printed with the labels.
func (p *Page) onScreen(class string) string {
	if p.labels {
		class += " unprinted"
	}
	return class
}

// troubles say what can't be read.
func (p *Page) troubles() app.UI {
	says := p.kept.Refused.Says()
	if n := p.kept.Unread(); n > 0 {
		says = word.Together(says, unread.Fill(n))
	}
	if says == "" {
		return app.Text("")
	}
	return app.P().Class("problems").Text(says)
}

// list are the axes of this device.
func (p *Page) list() app.UI {
	switch {
	case !app.IsClient:
		return app.P().Class("ask").Text(notYet)
	case p.kept.Len() == 0:
		return app.P().Class("ask").ID("machines-empty").Text(empty)
	}
	var items []app.UI
	shown := p.kept.First(p.shown)
	for i, a := range shown {
		items = append(items, item("axis-"+a.ID(), a.Axis, "", []app.UI{
			p.act("edit", edit, edit, a, p.edit),
			p.act("copy", duplicate, duplicate, a, p.duplicate),
			p.act("up", upSign, up, a, func(a *kept.Axis) { p.swap(a.ID(), -1) }).Disabled(i == 0),
			p.act("down", downSign, down, a, func(a *kept.Axis) { p.swap(a.ID(), 1) }).Disabled(i == p.kept.Len()-1),
			p.act("delete", remove, remove, a, p.delete),
		}))
	}
	return app.Div().Body(
		app.If(len(p.brought) > 0, func() app.UI { return app.H2().Text(onDevice) }),
		app.Ul().Class(p.onScreen("machines")).ID("machines").Body(items...),
		app.If(len(shown) == p.shown && p.kept.Len() > p.shown, func() app.UI {
			return frame.Button("more-machines", showMore, func() { p.shown += step })
		}),
	)
}

// act is a button that does something with an axis, as it stands on the device then.
func (p *Page) act(name, sign, label string, a *kept.Axis, do func(a *kept.Axis)) app.HTMLButton {
	id := a.ID()
	return frame.Button(name+"-"+id, sign, func() {
		p.kept = kept.ReadMachines()
		if a := p.kept.Of(id); a != nil {
			do(a)
		}
	}).Aria("label", actOn.Fill("act", label, "machine", a.Title()))
}

// item is one axis, with what can be done with it.
func item(id string, a machine.Axis, says string, acts []app.UI) app.UI {
	brief := a.Brief()
	return app.Li().TabIndex(-1).ID(id).Body(
		app.H2().Text(a.Title()),
		app.P().Class("setting").Text(a.Since()),
		app.If(brief != "", func() app.UI { return app.P().Class("hint").Text(brief) }),
		app.If(says != "", func() app.UI { return app.P().Class("hint").Text(says) }),
		app.Div().Class("machine-do").Body(append([]app.UI{
			app.A().Class("go-on").Href(site.LinkTo(site.PathOf(machine.Page), a.Fragment())).Text(calibrateIt),
			app.A().Class("go-on").Href(site.LinkTo(site.PathOf(calc.Run.Slug), a.Fragment())).Aria("label", actOn.Fill("act", runIt, "machine", a.Title())).Text(runIt),
		}, acts...)...),
	)
}

// keep keeps an axis and says what came of it.
func (p *Page) keep(a *kept.Axis, said string) bool {
	refused := a.Keep()
	p.kept = kept.ReadMachines()
	if refused != "" {
		said = word.Together(notSaved, refused.Says())
	}
	p.said, p.gone = said, nil
	return refused == ""
}

func (p *Page) duplicate(a *kept.Axis) {
	twin := p.kept.New(a.With("axisname", copyName.Fill("axis", a.Text("axisname"))))
	p.keep(twin, saved.Fill("machine", twin.Title()))
}

func (p *Page) delete(a *kept.Axis) {
	refused := a.Drop()
	p.kept = kept.ReadMachines()
	if p.said, p.gone = refused.Says(), nil; refused == "" {
		p.said, p.gone = deleted.Fill("machine", a.Title()), a
		if p.form != nil && p.form.ID() == a.ID() {
			p.form = nil
		}
		p.focus("undo")
	}
}

func (p *Page) undo() {
	p.kept = kept.ReadMachines()
	gone := p.gone
	back := p.kept.New(gone.Axis)
	back.Order = gone.Order
	if !p.keep(back, restored.Fill("machine", back.Title())) {
		p.gone = gone // it is nowhere else
		return
	}
	p.focus("machines-said")
}

func (p *Page) focus(id string) { p.ctx.Defer(func(app.Context) { browser.Focus(id) }) }

// swap gives an axis the place of a neighbour. Two may have the same number: another tab, or a link,
// may have given it.
func (p *Page) swap(id string, by int) {
	axes := p.kept.All()
	for i, a := range axes {
		if a.ID() == id && i+by >= 0 && i+by < len(axes) {
			axes[i], axes[i+by] = axes[i+by], axes[i]
			break
		}
	}
	for i, a := range axes {
		if a.Order == i+1 {
			continue
		}
		a.Order = i + 1
		isEdited := p.form != nil && p.form.ID() == a.ID() && p.form.Fragment() == a.Fragment()
		if !p.keep(a, "") {
			break
		}
		if isEdited { // its place is no change that the form must not write over
			p.form = a
		}
	}
	p.kept = kept.ReadMachines()
	p.focus("axis-" + id)
}

// handOn are one link to the whole list, and the labels.
func (p *Page) handOn() app.UI {
	if p.kept.Len() == 0 {
		return app.Text("")
	}
	var axes []machine.Axis
	for _, a := range p.kept.First(machine.Most) {
		axes = append(axes, a.Axis)
	}
	address := browser.Origin() + site.LinkTo(site.MachinesPath, "")
	fragment, fit := machine.Join(axes, link.MostLink-len(address)-1)
	return app.Div().Class("hand-on").Body(
		app.Div().Class("share").Body(
			app.Button().Type("button").ID("copy-list").DataSet("copy", address+"#"+fragment).DataSet("said", listCopied).Text(copyList),
			frame.Button("labels", labels, func() { p.labels = !p.labels }).Aria("expanded", strconv.FormatBool(p.labels)),
		),
		app.If(fit < p.kept.Len(), func() app.UI {
			return app.P().Class("hint").ID("not-all").Text(notAllFit.Fill("n", strconv.Itoa(fit), "all", strconv.Itoa(p.kept.Len())))
		}),
		app.If(p.labels, p.labelsView),
	)
}
