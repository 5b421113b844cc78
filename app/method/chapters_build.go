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
	"striderule/calc/unit"
)

// slips is a feed test at three speeds, where it feeds less the faster it is asked to.
const slips = "v=1&trial=speeds&steps=538.0&asked=80&mark=105&at=60,60,60,120,120,120,240,240,240&rest=28.7,28.9,28.6,29.2,29.5,29.3,30.7,30.9,30.6&tool=caliper-0.05"

// chapters are the content of the method's page, from the same declarations that the calculators
// use: first what a person at the machine asks, in words and pictures. What is for who
// checks it or builds on it is folded.
func chapters() []app.UI {
	return []app.UI{
		chapter("measure", measureTitle, app.P().Text(measureSays), app.P().Text(markSays), picture[report.Drawing]("", "how")),
		chapter("doubt", doubtTitle, app.P().Text(doubtSays), picture[report.Chart](example().Example, "runs"), app.P().Text(verdictSays)),
		chapter("blame", blameTitle, app.P().Text(slipSays), picture[report.Chart](slips, "speeds"), app.P().Text(otherSays)),
		chapter("trust", trustTitle, trust()),
		chapter("cautions", cautionsTitle, cautions()...),
		folded("formulas", formulasTitle, formulasBrief, formulas),
		folded("coverage", coverageTitle, coverageBrief, coverage),
		folded("example", exampleTitle, exampleBrief, workedExample),
		folded("glossary", glossaryTitle, glossaryBrief, glossary),
		folded("links", linksTitle, forDevelopers, linkKeys),
		folded("sheet-file", sheetFileTitle, forDevelopers, sheetFileKeys),
		folded("log-file", logFileTitle, forDevelopers, logFile),
	}
}

func chapter(id, title string, body ...app.UI) app.UI {
	return app.Section().Class("part").ID(id).Body(append([]app.UI{app.H2().Text(title)}, body...)...)
}

func folded(id, title, brief string, body func() []app.UI) app.UI {
	return (*view.Folds)(nil).View(view.Fold{ID: id, Class: "part", Heading: app.H2().Text(title), Brief: brief, Body: body})
}

// example is the page whose example the chapters show.
func example() sheet.Page {
	page, _ := calc.PageOf("measure")
	return page
}

// picture is the first chart, or drawing, in a part of what a sheet answers.
func picture[T report.Block](fragment, part string) app.UI {
	for _, p := range calc.Load(example(), fragment).Report().Parts {
		for _, b := range p.Blocks {
			if _, ok := b.(T); ok && p.ID == part {
				return view.Block(b, nil)
			}
		}
	}
	panic("no picture in " + part)
}

func trust() app.UI {
	least := calc.Coverages[0].Shown
	for _, c := range calc.Coverages {
		least = min(least, c.Shown)
	}
	var items []app.UI
	for _, says := range []string{heldSays.Fill("least", unit.Trim(least, 3)), verdictHeld, partsShown, checkIt, noUncertainty} {
		items = append(items, app.Li().Text(says))
	}
	return app.Ul().Body(items...)
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
	return []app.UI{app.P().Text(coverageSays), view.Table(t), app.P().Text(coverageWhy), app.P().Text(coverageLevel)}
}

// workedExample is worked out here and now, by the page that it is about.
func workedExample() []app.UI {
	r := calc.Load(example(), example().Example).Report()
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
		app.P().Body(app.A().Href(site.LinkTo("/measure/", example().Example)).Text(openExample)),
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
	var rows [][]app.UI
	for _, f := range logbook.SheetFields() {
		rows = append(rows, []app.UI{app.Code().Text(f.Key), plain(f.Holds)})
	}
	return []app.UI{
		app.P().Text(sheetFileAbout),
		app.Pre().Class("sample").Body(app.Code().Text(logbook.WriteSheet(calc.Load(example(), example().Example)))),
		keysTable(sheetFileCaption, []string{headKey, headHolds}, rows),
		app.P().Text(sheetFileRead),
	}
}

// logFile tells what a file of the log holds, from the table that writes it.
func logFile() []app.UI {
	entries := logbook.Example()
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
		app.Pre().Class("sample").Body(app.Code().Text(logbook.WriteFile(entries[:1]))),
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

func glossary() []app.UI {
	var rows []app.UI
	for _, t := range calc.Glossary {
		rows = append(rows, app.Div().Body(app.Dt().Text(t.Name), app.Dd().Text(t.Meaning)))
	}
	return []app.UI{app.Dl().Class("terms").Body(rows...)}
}
