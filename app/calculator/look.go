//go:build !wasm

package calculator

import (
	"html"
	"os"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/log"
	"striderule/app/markup"
	"striderule/app/view"
	"striderule/app/whose"
	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/logbook"
	"striderule/calc/report"
)

// lookStates are sheets that show forms and reports in their states.
var lookStates = []struct{ title, slug, fragment string }{
	{"Empty, with what is missing", "measure", "v=1"},
	{"Filled in, a reading left out", "measure", "v=1&steps=538&asked=80&mark=105&tool=caliper-0.05&rest=28.7,28.9,28.6,31&aside=,,,yes"},
	{"Wrong entries", "measure", "v=1&steps=538.0&asked=8Omm&mark=105&rest=28.7,120&nozzle=4"},
	{"Both sides", "measure", "v=1&axis=travel&steps=80&trip=sides&target=10,100&up=10.04,100.04&down=9.96,9x"},
	{"Rows of many fields", "convert", "v=1&name=Heron%20feed,Plover%20X&moves=feed"},
}

// lookHTML is a page with every piece in every state, for who works on the
// style sheet, which it holds. It is no part of the site.
func lookHTML(sheet string) (string, error) {
	var b strings.Builder
	b.WriteString("<!DOCTYPE html><html data-bar=\"shown\"><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\"><title>Look</title><style>" + sheet + "</style><div class=\"page\">")
	add := func(title string, typed *form.Form, pieces ...app.UI) error {
		markup, err := markup.Clean(app.HTMLString(app.Section().Body(append([]app.UI{app.H2().Text(title)}, pieces...)...)), "./")
		if err != nil {
			return err
		}
		// Texts are put in by the program, which is not here.
		for _, f := range typed.Fields() {
			for row := range typed.Rows(f) {
				if text := typed.Text(f.Key, row); text != "" {
					id := `id="` + view.CellID(f, row) + `"`
					markup = strings.Replace(markup, id, id+` value="`+html.EscapeString(text)+`"`, 1)
				}
			}
		}
		b.WriteString(markup)
		return nil
	}
	filled := func(slug, fragment string) *calculator {
		page, _ := calc.PageOf(slug)
		c := &calculator{page: page, form: calc.Load(page, fragment)}
		c.whose = whose.Of(c)
		c.follow()
		return c
	}
	for _, s := range lookStates {
		c := filled(s.slug, s.fragment)
		if err := add(s.title, c.form, c.check(), app.Div().Class("desk").Body(
			app.Form().Class("sheet lead").Body(c.lead()...),
			app.Div().Class("result").Body(c.now(), c.parts(open), c.share(), c.parts(closed)),
			app.Form().Class("sheet more").Body(c.more()...),
		)); err != nil {
			return "", err
		}
	}
	c := filled(lookStates[1].slug, lookStates[1].fragment)
	var verdicts, blocks []app.UI
	for kind := report.Leave; kind <= report.Either; kind++ {
		verdicts = append(verdicts, c.answer(&report.Answer{
			Figure:  report.Figure{Label: "New setting", Value: 564.3357, Unit: "steps/mm", U: 1.6},
			Verdict: &report.Verdict{Kind: kind, Title: "Verdict: " + kind.String(), Says: report.Say("And why it is so.")},
			Says:    report.Say("What to do with it."),
			Notes:   []report.Note{{Kind: report.Doubt, Line: report.Say("What may mislead.")}},
		}))
	}
	for _, block := range view.Specimens() {
		blocks = append(blocks, c.liveBlock(block))
	}
	c.keep = keeping{open: true, book: logbook.NewBook(logbook.Example()...), wrong: "keep-machine", problem: noMachine}
	for _, piece := range []struct {
		title string
		body  app.UI
	}{
		{"Verdicts", app.Div().Class("result").Body(verdicts...)},
		{"Blocks", app.Div().Class("part").Body(blocks...)},
		{"Save to log", c.keepView()},
		{"The log", log.ListOf(logbook.Example())},
		{"The bar", c.bar()},
	} {
		if err := add(piece.title, c.form, piece.body); err != nil {
			return "", err
		}
	}
	return b.String() + "</div></html>\n", nil
}

// WriteLook writes the page with every piece.
func WriteLook(file string) error {
	sheet, err := os.ReadFile("web/style.css")
	if err != nil {
		return err
	}
	page, err := lookHTML(string(sheet))
	if err != nil {
		return err
	}
	return os.WriteFile(file, []byte(page), 0o644)
}
