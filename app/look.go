//go:build !wasm

package main

import (
	"html"
	"os"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/log"
	"striderule/app/markup"
	"striderule/app/view"
	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/logbook"
	"striderule/calc/measure"
	"striderule/calc/report"
)

// lookStates are sheets that show forms and reports in their states.
var lookStates = []struct{ title, slug, fragment string }{
	{"Empty, with what is missing", "measure", "v=1"},
	{"Filled in, a reading set aside", "measure", "v=1&steps=538&asked=80&mark=105&tool=caliper-0.05&rest=28.7,28.9,28.6,31&aside=,,,yes"},
	{"Wrong entries", "measure", "v=1&steps=538.0&asked=8Omm&mark=105&rest=28.7,120&nozzle=4"},
	{"Both sides", "measure", "v=1&axis=travel&steps=80&trip=sides&target=10,100&up=10.04,100.04&down=9.96,9x"},
	{"Rows of many fields", "convert", "v=1&name=Heron%20feed,Plover%20X&moves=feed"},
}

// lookBlocks has one of every block that a report can have.
func lookBlocks() []report.Block {
	length := report.Figure{Label: "Length fed", Value: 76.267, Unit: "mm", U: 0.21}
	says := func(text string) report.Line { return report.Line{{Text: text + " "}, {Figure: &length}} }
	lines := []report.Line{says("First"), says("Then")}
	blocks := []report.Block{
		report.Para{Line: says("A paragraph with a figure:")},
		report.Figures{All: []report.Figure{length, {Label: "Error", Value: -4.67, Unit: "%", U: 0.2}}},
		report.Table{Caption: "Short", Head: []string{"Run", "Fed", "Error"}, Rows: [][]report.Line{{report.Say("1"), says(""), report.Say("0.1 %")}}},
		report.Table{Caption: "Long", Head: []string{"Setting", "Before", "After", "What to do"}, Rows: [][]report.Line{{report.Say("Steps per mm"), report.Say("538.0"), report.Say("564.3"), report.Say("Write it into the controller and save it there.")}}},
		report.Steps{Items: lines}, report.Points{Items: lines},
		report.Code{ID: "look-1", Label: "Steps per mm", Text: "564.3"},
		report.Code{ID: "look-2", Label: "Several lines", Text: "G1 X10 F600\nG1 X100 F600", File: "test.txt"},
		report.Brought{Before: "moves", All: []report.TemplateText{{Key: "move", Label: "Line of a move", Text: "G1 {axis}{length} F6000"}}},
		report.Code{ID: "moves", Label: "Moves", Text: "G1 X10 F6000", Brought: true},
		report.Ask{Keys: []string{"asked", "steps"}, For: "the correction"},
		report.Links{All: []report.Link{{Text: "Convert it", Slug: "convert"}}},
		report.Bars{Title: "Where the doubt comes from", Unit: "%", All: []report.Bar{{Label: "Scatter", Value: length}, {Label: "Step", Value: report.Figure{Value: 12, Unit: "mm"}}}},
		report.Lots{Value: 76, Budget: measure.Budget{}, Commanded: 80, Low: -5, High: -4.4},
	}
	for kind := report.Tip; kind <= report.Caution; kind++ {
		blocks = append(blocks, report.Note{Kind: kind, Line: says(kind.String())})
	}
	picture := report.Chart{ID: "look", Title: "Every mark", X: report.Scale{Label: "Run", Digits: 3}, Y: report.Scale{Label: "Error", Unit: "%", Digits: 3},
		Bands: []report.Band{{Lo: -0.5, Hi: 0.5, Label: "Tolerance"}}}
	for kind := report.Counted; kind <= report.Later; kind++ {
		at := float64(kind)
		picture.Keys[kind] = "Kind " + string('1'+rune(kind))
		picture.Points = append(picture.Points, report.Point{X: at, Y: at / 3, Lo: at/3 - 0.2, Hi: at/3 + 0.2, Label: picture.Keys[kind], Kind: kind})
	}
	for kind := report.Fitted; kind <= report.Limit+3; kind++ {
		picture.Curves = append(picture.Curves, report.Curve{Label: "Curve " + string('1'+rune(kind)), Kind: kind, At: []report.Place{{X: 0, Y: float64(kind) / 4}, {X: 4, Y: float64(kind) / 3}}})
	}
	sketch := report.Drawing{ID: "look", Title: "Every role", Alt: "A line of each role.", To: 100, High: 100}
	for role := report.Body; role <= report.Ghost; role++ {
		y := 15 + 15*float64(role)
		sketch.Shapes = append(sketch.Shapes, report.Stroke{Role: role, Points: []report.XY{{X: 5, Y: y}, {X: 95, Y: y}}, Head: true})
	}
	return append(blocks, picture, sketch)
}

// lookHTML is a page with every piece in every state, for who works on the
// style sheet, which it holds. It is no part of the site.
func lookHTML(sheet string) (string, error) {
	var b strings.Builder
	b.WriteString("<!DOCTYPE html><html lang=\"en\" data-bar=\"shown\"><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\"><title>Look</title><style>" + sheet + "</style><div class=\"page\">")
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
		c.follow()
		return c
	}
	for _, s := range lookStates {
		c := filled(s.slug, s.fragment)
		if err := add(s.title, c.form, c.check(), app.Div().Class("desk").Body(
			app.Form().Class("sheet").Body(c.entries()...),
			app.Div().Class("result").Body(c.now(), c.share(), c.parts(false)),
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
	for _, block := range lookBlocks() {
		blocks = append(blocks, c.liveBlock(block))
	}
	c.keep = keeping{open: true, book: logbook.NewBook(logbook.Example()...), wrong: "keep-machine", problem: "Machine: no name is given."}
	for _, piece := range []struct {
		title string
		body  app.UI
	}{
		{"Verdicts", app.Div().Class("result").Body(verdicts...)},
		{"Blocks", app.Div().Class("part").Body(blocks...)},
		{"Keep in the log", c.keepView()},
		{"The log", log.ListOf(logbook.Example())},
		{"The bar", c.bar()},
	} {
		if err := add(piece.title, c.form, piece.body); err != nil {
			return "", err
		}
	}
	return b.String() + "</div></html>\n", nil
}

// writeLook writes the page with every piece.
func writeLook(file string) error {
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
