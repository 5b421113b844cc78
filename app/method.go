package main

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/site"
	"striderule/app/view"
	"striderule/calc"
	"striderule/calc/logbook"
	"striderule/calc/report"
	"striderule/calc/sheet"
)

// methodPage tells how the numbers come about and how links are made up, from
// the same declarations that the calculators use.
type methodPage struct {
	app.Compo
	shown bool // the page as it came is this one
}

func (p *methodPage) OnNav(ctx app.Context) {
	frame.Arrived(ctx)
	ctx.PreventUpdate() // nothing of it shows
}

func (p *methodPage) Render() app.UI {
	if frame.IsBuilding() && browser.Has("formulas") {
		p.shown = true
		frame.Finish()
	}
	if p.shown {
		return frame.Kept()
	}
	return frame.Shell("/method/", "Method and cautions", "How is it worked out, and may I rely on it?",
		contents(),
		chapter("cautions", "Cautions", cautions()...),
		chapter("formulas", "Formulas and their sources", formulas()...),
		chapter("example", "A worked example", workedExample()...),
		chapter("links", "Links, key by key", linkKeys()...),
		chapter("sheet-file", "A sheet's file", sheetFileKeys()...),
		chapter("log-file", "The log's file", logFile()...),
		chapter("glossary", "Glossary", glossary()),
	)
}

// contents leads to the chapters.
func contents() app.UI {
	var items []app.UI
	for _, c := range [][2]string{{"cautions", "Cautions"}, {"formulas", "Formulas"}, {"example", "Worked example"}, {"links", "Links"}, {"sheet-file", "A sheet's file"}, {"log-file", "The log's file"}, {"glossary", "Glossary"}} {
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
		app.P().Text("Counts (teeth, starts, steps, microsteps) stay whole numbers until the last division, and π enters last, so results are exact to a few units of the last of some 16 digits. Shown are the digits that make sense; copying gives all of them."),
		app.Dl().Class("terms").Body(rows...),
	}
}

// workedExample is worked out here and now, by the page that it is about.
func workedExample() []app.UI {
	page, _ := calc.PageOf("measure")
	r := calc.Load(page, page.Example).Report()
	body := []app.UI{
		app.P().Text("Tidewater Makers' Hall is a club workshop. Heron, its printer, got another feeder: 1.8° motor, 16 microsteps, 12 teeth on the motor side and 54 on the driven side. The setting is 538.0 steps/mm. 80 mm are commanded three times, each time marked anew at 105 mm; what remains is read with a caliper."),
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
	return append(body,
		app.P().Body(append([]app.UI{app.Text(r.Answer.Label + ": "), view.Figure(unnamed(r.Answer.Figure)), app.Text(". ")}, view.Line(r.Answer.Says)...)...),
		app.P().Body(app.A().Href(site.LinkTo("/measure/", page.Example)).Text("Open this example")),
	)
}

// unnamed takes a figure's ID away: on this page it is not an output.
func unnamed(f report.Figure) report.Figure {
	f.ID = ""
	return f
}

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
		app.P().Text("A link is the page's address, a #, and the entries: key=value, joined by &. It can be read and changed by hand. v=1 is the version; links made today open for ever. A bare number is in the field's unit, another unit is written behind it: 80, 80mm, 3.15in. Lists are joined by commas, so the decimal mark in a link is the point. What is left out has its default. saw=ID:value:U:edition is the result that the sender saw, its uncertainty and the edition of the calculations that made it; the page checks it against its own. In a reply, was-key holds what a changed entry was before. What stands behind # is never sent to the host."),
		app.P().Text("Every computed figure is a data element with the id out-… and the full value: the outputs below, with -1, -2 … behind the ID where there is one for each row, and with -u for its expanded uncertainty."),
	}
	for _, p := range calc.Pages {
		// Folded: open, they are three times as long as the rest of the page on a phone.
		body = append(body, view.Folds(nil).Fold("keys-"+p.Slug, "part", false,
			app.H3().Text(p.Title+": /"+p.Slug+"/"),
			keyTable(p), outputTable(p),
		))
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
		app.P().Text("“Save as a file” writes a sheet as one text file in JSON (UTF-8). It opens again on the start page and on every calculator's page."),
		app.Pre().Class("sample").Body(app.Code().Text(logbook.WriteSheet(calc.Load(page, page.Example)))),
		keysTable("Keys of a sheet's file", []string{"Key", "Holds"}, rows),
		app.P().Text("Only page and entries are read: the result is worked out anew, and checked against saw. Entries may be texts, numbers or lists of them; a key that the page does not know is kept and told. The rows of a page are saved for a spreadsheet as CSV (RFC 4180): headings, then what was typed with the decimal point; an apostrophe stands before a text that a spreadsheet would take for a formula."),
	}
}

// logFile tells what a file of the log holds, from the table that writes it.
func logFile() []app.UI {
	example := logbook.Example()
	var rows [][]app.UI
	for _, f := range logbook.Fields {
		takes := "text"
		if f.Number() {
			takes = "number"
		}
		rows = append(rows, []app.UI{app.Code().Text(f.Key), plain(f.Holds), plain(takes)})
	}
	return []app.UI{
		app.P().Text("The log is saved as one text file in JSON (UTF-8), with an entry a line. log says what it is, version how it is to be read, entries holds the entries, the newest first. What is empty is left out."),
		app.Pre().Class("sample").Body(app.Code().Text(logbook.WriteFile(example[:1]))),
		keysTable("Keys of an entry of the log", []string{"Key", "Holds", "Is"}, rows),
		app.P().Text("A file that is damaged or cut off is taken in as far as it goes, and each damage is told with its line. An entry that is there already, with the same id and the same content, is left out; one with the same id and another content gets an id of its own. Keys that are not known are kept if they hold a text or a number. A file of a newer version is taken in as far as it is understood."),
		app.P().Text("In the browser each entry is one item: the same keys in the form of a link, log=1&id=…&date=…, under a key that names this site's folder. For a spreadsheet the same columns are saved as CSV; an apostrophe stands before a text that a spreadsheet would take for a formula."),
	}
}

func keyTable(p sheet.Page) app.UI {
	var rows [][]app.UI
	for _, f := range calc.NewForm(p).Fields() {
		label := f.Label
		if f.Group != nil {
			label += ", one for each " + f.Group.Noun
		}
		rows = append(rows, []app.UI{app.Code().Text(f.Key), plain(label), plain(sheet.About(f))})
	}
	return keysTable("Keys of "+p.Title, []string{"Key", "Entry", "Takes"}, rows)
}

func outputTable(p sheet.Page) app.UI {
	var rows [][]app.UI
	for _, o := range p.Outputs {
		rows = append(rows, []app.UI{app.Code().Text("out-" + o.ID), plain(o.Label), plain(o.Unit)})
	}
	return keysTable("Outputs of "+p.Title, []string{"Output", "Figure", "Unit"}, rows)
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
