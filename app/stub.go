package main

import (
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// stubPage stands in for the pages to come.
type stubPage struct {
	app.Compo
	Heading string
	Fields  bool

	a, b, note string
}

func (p *stubPage) Render() app.UI {
	return app.Div().Class("page").Body(
		app.A().Class("skip").Href("#main").Text("Skip to the content"),
		app.Nav().Aria("label", "Pages").Body(
			app.A().Href(root()+"/").Text("Start"), app.Text(" "),
			app.A().Href(root()+"/measure/").Text("Measure"), app.Text(" "),
			app.A().Href(root()+"/method/").Text("Method"),
		),
		app.Main().ID("main").Body(
			app.H1().Text(p.Heading),
			app.P().Text("A page that can be read before the program has started."),
			app.If(p.Fields, p.fields),
		),
	)
}

func (p *stubPage) fields() app.UI {
	keep := func(to *string) app.EventHandler {
		return func(ctx app.Context, e app.Event) { *to = ctx.JSSrc().Get("value").String() }
	}
	input := func(id, label string, to *string) app.UI {
		return app.P().Body(
			app.Label().For(id).Text(label),
			app.Input().ID(id).Name(id).Type("text").Attr("inputmode", "decimal").AutoComplete(false).
				Value(*to).OnInput(keep(to), app.EventScope(id)),
		)
	}
	a, _ := strconv.ParseFloat(strings.ReplaceAll(p.a, ",", "."), 64)
	b, _ := strconv.ParseFloat(strings.ReplaceAll(p.b, ",", "."), 64)
	sum := strconv.FormatFloat(a+b, 'g', -1, 64)
	return app.Form().Attr("data-sheet", "measure").Body(
		input("ask", "Commanded", &p.a),
		input("got", "Measured", &p.b),
		app.P().Body(
			app.Label().For("note").Text("Note"),
			app.Textarea().ID("note").Name("note").Text(p.note).OnInput(keep(&p.note)),
		),
		app.P().Body(
			app.Input().Type("checkbox").ID("warm").Name("warm").Value("yes"),
			app.Label().For("warm").Text("Warm"),
		),
		app.P().Body(app.Text("Sum "), app.Elem("data").ID("out-sum").Attr("value", sum).Text(sum)),
		app.Button().Type("button").DataSet("copy", "sum "+sum).Text("Copy"),
		app.P().ID("said").Attr("role", "status"),
	)
}
