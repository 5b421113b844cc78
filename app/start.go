package main

import (
	"striderule/calc"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// A task is one situation, in the words of who is in it, and the page that
// helps, with the right fields open.
type task struct {
	situation, help, slug, fragment string
}

var tasks = []task{
	{"I fitted another feeder", "Make a short test, type what you measured, and get the new setting.", "measure", ""},
	{"I measured, and an axis is off", "Commanded and measured length in, the corrected setting out.", "measure", "v=1&axis=travel"},
	{"My new controller wants the other number", "Steps per mm into travel per motor turn, or back, for all axes at once.", "convert", ""},
	{"I fitted another motor", "A 0.9° motor for a 1.8° one: which numbers move, which stay.", "swap", "v=1&changed=angle"},
	{"I changed the driver or its microsteps", "What doubles, what stays, and the entry beside it.", "swap", "v=1&changed=micro"},
	{"I changed gears", "Old and new teeth in, the new setting out.", "swap", "v=1&changed=gears"},
	{"I changed a pulley, belt, screw or roller", "Old and new part side by side.", "swap", "v=1&changed=out"},
}

// startPage asks what happened.
type startPage struct {
	app.Compo
	pasted  string
	problem string
}

func (p *startPage) OnNav(ctx app.Context) { arrived(ctx) }

func (p *startPage) Render() app.UI {
	var cards []app.UI
	for _, t := range tasks {
		cards = append(cards, app.Li().Body(
			app.A().Class("card").Href(linkTo(pathOf(t.slug), t.fragment)).Body(
				app.Strong().Text(t.situation),
				app.Span().Text(t.help),
			),
		))
	}
	return shell("/", "What changed?", "",
		app.P().Class("intro").Text("Something between motor and work was changed, and now lengths or amounts come out wrong. Choose what fits; everything is worked out on this device, also without a network."),
		app.Ul().Class("cards").Body(cards...),
		p.paste(),
	)
}

// paste opens a link that somebody sent, wherever it was made.
func (p *startPage) paste() app.UI {
	input := app.Input().ID("pasted").Name("pasted").Type("text").AutoComplete(false).Value(p.pasted).
		OnInput(func(ctx app.Context, e app.Event) { p.pasted = ctx.JSSrc().Get("value").String() })
	if p.problem != "" {
		input = input.Aria("invalid", "true").Aria("describedby", "pasted-problem")
	}
	return app.Form().Class("card paste").DataSet("sheet", "start").OnSubmit(p.open).Body(
		app.Label().For("pasted").Body(
			app.Strong().Text("Somebody sent me a link"),
			app.Span().Text("Opening it is enough. Or paste it here: it works from any copy of this site."),
		),
		app.Div().Class("paste-row").Body(input, app.Button().Type("submit").ID("open").Text("Open")),
		app.If(p.problem != "", func() app.UI {
			return app.P().Class("problem").ID("pasted-problem").Attr("role", "alert").Text(p.problem)
		}),
	)
}

func (p *startPage) open(ctx app.Context, e app.Event) {
	e.PreventDefault()
	slug, fragment, ok := calc.ReadAddress(p.pasted)
	if !ok {
		p.problem = "That is not a link to one of these pages: it looks like …/measure/#v=1&…"
		return
	}
	p.problem = ""
	ctx.Navigate(linkTo(pathOf(slug), fragment))
}
