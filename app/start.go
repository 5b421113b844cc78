package main

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/file"
	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/app/site"
	"striderule/calc"
	"striderule/calc/lists"
	"striderule/calc/machine"
	"striderule/calc/sheet"
)

// startPage asks what happened.
type startPage struct {
	app.Compo
	pasted  string
	problem string
	file    file.Sheet
	ctx     app.Context // the component's own: see calculator
}

// OnInit fills in what the tab has kept.
func (p *startPage) OnInit() {
	if texts, ok := browser.DraftOf(site.LinkTo("/", ""), 1); ok {
		p.pasted = texts[0]
	}
}

func (p *startPage) OnMount(ctx app.Context) {
	p.ctx = ctx
	ctx.PreventUpdate() // it has just been rendered
}

func (p *startPage) OnNav(ctx app.Context) {
	frame.Arrived(ctx)
	browser.Offer(browser.Offers{File: p.takeFile})
	ctx.PreventUpdate() // nothing of it shows
}

// takeFile opens a sheet from a file on its page.
func (p *startPage) takeFile(name, text, failed string) {
	p.ctx.Dispatch(func(ctx app.Context) {
		if slug, fragment, ok := p.file.Read(name, text, failed); ok {
			ctx.Navigate(site.LinkTo(site.PathOf(slug), fragment))
			browser.Announce(file.Opened.Fill("file", name))
		}
	})
}

func (p *startPage) Render() app.UI {
	body := []app.UI{app.P().Class("intro").Text(startIntro), p.machines()}
	for occasion, title := range occasions {
		var cards []app.UI
		for _, page := range lists.Concat(calc.Pages, []sheet.Page{calc.Run}) {
			for _, t := range page.Tasks {
				if t.Occasion == sheet.Occasion(occasion) {
					cards = append(cards, &cardView{Address: site.LinkTo(site.PathOf(page.Slug), t.Fragment), Situation: t.Situation, Help: t.Help})
				}
			}
		}
		body = append(body, app.H2().Class("occasion").Text(title), app.Ul().Class("cards").Body(cards...))
	}
	return frame.Shell("/", site.Name, whatChanged, append(body, p.paste())...)
}

// machines are the test that is being made on this device, and its machines, each a way to its next
// calibration.
func (p *startPage) machines() app.UI {
	going := app.UI(app.Text(""))
	axes := kept.ReadMachines().First(mostMachines)
	if r := kept.ReadRun(); r.IsBegun() {
		going = app.A().Class("card").ID("go-on-run").Href(site.LinkTo(site.PathOf(calc.Run.Slug), r.Fragment)).Body(app.Strong().Text(testGoesOn))
	}
	if len(axes) == 0 {
		return going
	}
	var chips []app.UI
	for _, a := range axes {
		chips = append(chips, app.A().Class("chip").Href(site.LinkTo(site.PathOf(machine.Page), a.Fragment())).Text(a.Title()))
	}
	return app.Section().ID("your-machines").Body(going, app.H2().Class("occasion").Text(yourMachines),
		app.Div().Class("chips").Body(append(chips, app.A().Class("to-machines").Href(site.LinkTo(site.MachinesPath, "")).Text(allMachines))...))
}

// mostMachines is how many are shown; the rest is on their own page.
const mostMachines = 12

// A cardView is a situation, and where it leads.
type cardView struct {
	app.Compo
	Address, Situation, Help string
}

func (v *cardView) Render() app.UI {
	frame.Yield()
	return app.Li().Body(
		app.A().Class("card").Href(v.Address).Body(
			app.Strong().Text(v.Situation),
			app.Span().Text(v.Help),
		),
	)
}

// paste opens a link that somebody sent, wherever it was made.
func (p *startPage) paste() app.UI {
	input := app.Textarea().ID("pasted").Name("pasted").Rows(2).Text(p.pasted).
		OnInput(func(ctx app.Context, e app.Event) {
			p.pasted = ctx.JSSrc().Get("value").String()
			browser.NoteDraft(site.LinkTo("/", ""), p.pasted)
		})
	if p.problem != "" {
		input = input.Aria("invalid", "true").Aria("describedby", "pasted-problem")
	}
	return app.Form().Class("card paste").DataSet("sheet", "start").OnSubmit(p.open).Body(
		app.Label().For("pasted").Body(
			app.Strong().Text(gotALink),
			app.Span().Text(pasteALink),
		),
		app.Div().Class("paste-row").Body(input, app.Button().Type("submit").ID("open").Text(openPasted)),
		app.If(p.problem != "", func() app.UI {
			return app.P().Class("problem").ID("pasted-problem").Attr("role", "alert").Text(p.problem)
		}),
		app.Div().Class("paste-file").Body(app.Span().Text(gotAFile), file.OpenButton()),
		p.file.View(),
	)
}

func (p *startPage) open(ctx app.Context, e app.Event) {
	e.PreventDefault()
	slug, fragment, mended, ok := calc.ReadAddress(p.pasted)
	if !ok {
		slug, fragment, mended, ok = calc.ReadPost(p.pasted)
	}
	if !ok {
		p.problem = notALink
		return
	}
	p.problem = ""
	browser.NoteDraft(site.LinkTo("/", ""))
	frame.Bring(fragment, mended)
	ctx.Navigate(site.LinkTo(site.PathOf(slug), fragment))
}
