//go:build !wasm

package method

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/site"
	"striderule/app/view"
	"striderule/calc"
	"striderule/calc/logbook"
	"striderule/calc/report"
	"striderule/calc/sheet"
)

// chapters are the content of the method's page, from the same declarations that the
// calculators use.
func chapters() []app.UI {
	return []app.UI{
		contents(),
		chapter("cautions", cautionsTitle, cautions()...),
		chapter("formulas", formulasTitle, formulas()...),
		chapter("coverage", coverageTitle, coverage()...),
		chapter("example", exampleTitle, workedExample()...),
		chapter("links", linksTitle, linkKeys()...),
		chapter("sheet-file", sheetFileTitle, sheetFileKeys()...),
		chapter("log-file", logFileTitle, logFile()...),
		chapter("glossary", glossaryTitle, glossary()),
	}
}

// contents leads to the chapters.
func contents() app.UI {
	var items []app.UI
	for _, c := range [][2]string{{"cautions", cautionsTitle}, {"formulas", formulasTitle}, {"coverage", coverageTitle}, {"example", exampleTitle}, {"links", linksTitle}, {"sheet-file", sheetFileTitle}, {"log-file", logFileTitle}, {"glossary", glossaryTitle}} {
		items = append(items, app.Li().Body(app.A().Href("#"+c[0]).DataSet("jump", c[0]).Text(c[1])))
	}
	return app.Ul().Class("links contents").Body(items...)
}

func chapter(id, title string, body ...app.UI) app.UI {
	return app.Section().Class("part").ID(id).Body(append([]app.UI{app.H2().Text(title)}, body...)...)
}

func cautions() []app.UI {
	var rows []app.UI
	for _, h := range report.Hazards {
		rows = append(rows, app.Div().Body(app.Dt().Text(h.When), app.Dd().Text(h.Says)))
	}
	return []app.UI{app.Dl().Class("terms").Body(rows...)}
}

func formulas() []app.UI {
	var rows []app.UI
	for _, f := range calc.Formulas {
		rows = append(rows, app.Div().Body(
			app.Dt().Text(f.Name),
			app.Dd().Body(app.Span().Class("formula").Text(f.Text), app.Span().Class("source").Text(f.Source)),
		))
	}
	return []app.UI{
		app.P().Text(exactness),
		app.Dl().Class("terms").Body(rows...),
	}
}

// coverage says how often the interval holds the true value, and why it is not the Guide's.
func coverage() []app.UI {
	t := report.Table{Caption: coverageCaption, Head: []string{coverageRuns, coverageShown, coverageGuide, coverageWidth}}
	for _, c := range calc.Coverages {
		t.Row(coverageRow.Fill("n", strconv.Itoa(c.Runs)),
			&report.Figure{Value: c.Shown, Digits: 3, Unit: "%"}, &report.Figure{Value: c.Guide, Digits: 3, Unit: "%"}, &report.Figure{Value: c.Width, Digits: 2, Keep: true})
	}
	return []app.UI{app.P().Text(coverageSays), view.Table(t), app.P().Text(coverageWhy), app.P().Text(coverageLevel), app.P().Text(coverageLimits)}
}

// workedExample is worked out here and now, by the page that it is about.
func workedExample() []app.UI {
	page, _ := calc.PageOf("measure")
	r := calc.Load(page, page.Example).Report()
	body := []app.UI{
		app.P().Text(exampleStory),
	}
	for _, part := range r.Parts {
		if part.ID != "runs" && part.ID != "conventions" {
			continue
		}
		body = append(body, app.H3().Text(part.Title))
		for _, b := range part.Blocks {
			if t, ok := b.(report.Table); ok {
				body = append(body, view.Table(anonymous(t)))
			}
		}
	}
	figure := unnamed(r.Answer.Figure)
	return append(body,
		app.P().Body(view.Line(report.Say(exampleAnswer, "label", r.Answer.Label, "figure", &figure, "says", r.Answer.Says))...),
		app.P().Body(app.A().Href(site.LinkTo("/measure/", page.Example)).Text(openExample)),
	)
}

// unnamed takes a figure's ID away: here it is no output.
func unnamed(f report.Figure) report.Figure {
	f.ID = ""
	return f
}

// anonymous takes the IDs of a table's figures away.
func anonymous(t report.Table) report.Table {
	for _, row := range t.Rows {
		for _, cell := range row {
			for i, s := range cell {
				if s.Figure != nil {
					f := unnamed(*s.Figure)
					cell[i].Figure = &f
				}
			}
		}
	}
	return t
}

func linkKeys() []app.UI {
	body := []app.UI{
		app.P().Text(linksAbout),
		app.P().Text(figuresAbout),
	}
	for _, p := range calc.Pages {
		// Folded: open, they are three times as long as the rest of the page on a phone.
		body = append(body, (*view.Folds)(nil).View(view.Fold{ID: "keys-" + p.Slug, Class: "part",
			Heading: app.H3().Text(pageAndPath.Fill("page", p.Title, "path", site.PathOf(p.Slug))),
			Body:    func() []app.UI { return []app.UI{keyTable(p), outputTable(p)} },
		}))
	}
	return body
}

// sheetFileKeys tells what a file of one sheet holds, from the table that writes
// it.
func sheetFileKeys() []app.UI {
	page, _ := calc.PageOf("measure")
	var rows [][]app.UI
	for _, f := range logbook.SheetFields() {
		rows = append(rows, []app.UI{app.Code().Text(f.Key), plain(f.Holds)})
	}
	return []app.UI{
		app.P().Text(sheetFileAbout),
		app.Pre().Class("sample").Body(app.Code().Text(logbook.WriteSheet(calc.Load(page, page.Example)))),
		keysTable(sheetFileCaption, []string{headKey, headHolds}, rows),
		app.P().Text(sheetFileRead),
	}
}

// logFile tells what a file of the log holds, from the table that writes it.
func logFile() []app.UI {
	example := logbook.Example()
	var rows [][]app.UI
	for _, f := range logbook.Fields {
		takes := isText
		if f.Number() {
			takes = isNumber
		}
		rows = append(rows, []app.UI{app.Code().Text(f.Key), plain(f.Holds), plain(takes)})
	}
	return []app.UI{
		app.P().Text(logFileAbout),
		app.Pre().Class("sample").Body(app.Code().Text(logbook.WriteFile(example[:1]))),
		keysTable(logFileCaption, []string{headKey, headHolds, headIs}, rows),
		app.P().Text(logFileRead),
		app.P().Text(logFileStored),
	}
}

func keyTable(p sheet.Page) app.UI {
	var rows [][]app.UI
	for _, f := range calc.NewForm(p).Fields() {
		rows = append(rows, []app.UI{app.Code().Text(f.Key), plain(f.Named()), plain(sheet.About(f))})
	}
	return keysTable(keysOf.Fill("page", p.Title), []string{headKey, headEntry, headTakes}, rows)
}

func outputTable(p sheet.Page) app.UI {
	var rows [][]app.UI
	for _, o := range p.Outputs {
		rows = append(rows, []app.UI{app.Code().Text("out-" + o.ID), plain(o.Label), plain(o.Unit)})
	}
	return keysTable(outputsOf.Fill("page", p.Title), []string{headOutput, headFigure, headUnit}, rows)
}

func plain(text string) app.UI { return app.Span().Text(text) }

func keysTable(caption string, head []string, rows [][]app.UI) app.UI {
	return view.TableOf(caption, "scroll cards-if-narrow keys", head, rows)
}

func glossary() app.UI {
	var rows []app.UI
	for _, t := range calc.Glossary {
		rows = append(rows, app.Div().Body(app.Dt().Text(t.Word), app.Dd().Text(t.Meaning)))
	}
	return app.Dl().Class("terms").Body(rows...)
}
