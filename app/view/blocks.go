package view

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/calc/report"
)

// Figure is a computed number: shown in the digits that make sense, held at
// full precision. It stands alone, where a line may end between all of its pieces.
func Figure(f report.Figure) app.UI { return figure(f, " ") }

func figure(f report.Figure, space string) app.UI {
	gap := f.Gap()
	if gap != "" {
		gap = space
	}
	unit := app.Span().Class("of").Text(f.Unit)
	if f.U <= 0 {
		return value(f.ID, f.Full()).Body(app.Text(f.Number()), app.Text(gap), unit)
	}
	u, id := f, f.ID
	u.Value = f.U
	if id != "" {
		id += "-u"
	}
	return app.Span().Class("measured").Body(
		value(f.ID, f.Full()).Text(f.Number()),
		app.Text(" ±"+space),
		value(id, u.Full()).Text(f.Uncertainty()),
		app.Text(gap), unit,
	)
}

func value(id, full string) app.HTMLData {
	data := app.Data().Value(full)
	if id != "" {
		data = data.ID("out-" + id)
	}
	return data
}

// Line is a sentence with its figures, or a figure alone.
func Line(l report.Line) []app.UI {
	space := noBreak
	if len(l) == 1 {
		space = " "
	}
	var spans []app.UI
	for _, s := range l {
		if s.Figure != nil {
			spans = append(spans, figure(*s.Figure, space))
		} else {
			spans = append(spans, app.Text(Bound(s.Text)))
		}
	}
	return spans
}

func items(lines []report.Line) []app.UI {
	var all []app.UI
	for _, l := range lines {
		all = append(all, app.Li().Body(Line(l)...))
	}
	return all
}

func figures(f report.Figures) app.UI {
	var rows []app.UI
	for _, x := range f.All {
		rows = append(rows, app.Div().Body(app.Dt().Text(x.Label), app.Dd().Body(Figure(x))))
	}
	return app.Dl().Class("figures").Body(rows...)
}

// Table is a table of a report.
func Table(t report.Table) app.UI {
	rows := make([][]app.UI, len(t.Rows))
	for column := range t.Head {
		texts := make([]string, len(t.Rows))
		for i, r := range t.Rows {
			texts[i] = r[column].String()
		}
		for i, lead := range leads(texts) {
			cell := app.Span().Body(Line(t.Rows[i][column])...)
			if lead != "" && column > 0 {
				cell = cell.DataSet("lead", lead)
			}
			rows[i] = append(rows[i], cell)
		}
	}
	class := "scroll"
	if isWordy(t) {
		class = "scroll cards-if-narrow"
	}
	return TableOf(t.Caption, class, t.Head, rows)
}

// mostInCell is how many signs of a cell stand side by side with others on a phone.
const mostInCell = 28

// isWordy reports whether a table is too much for a phone's width.
func isWordy(t report.Table) bool {
	if len(t.Head) > 3 {
		return true
	}
	for _, r := range t.Rows {
		for _, cell := range r[1:] {
			if len(cell.String()) > mostInCell {
				return true
			}
		}
	}
	return false
}

// TableOf is a table whose rows may become cards by the class. The roles say
// what browsers forget of a table that is laid out as something else.
func TableOf(caption, class string, head []string, rows [][]app.UI) app.UI {
	var heads, body []app.UI
	for _, h := range head {
		heads = append(heads, app.Th().Scope("col").Attr("role", "columnheader").Text(h))
	}
	for _, r := range rows {
		cells := []app.UI{app.Th().Scope("row").Attr("role", "rowheader").Body(r[0])}
		for i, cell := range r[1:] {
			cells = append(cells, app.Td().Attr("role", "cell").DataSet("label", head[i+1]).Body(cell))
		}
		body = append(body, app.Tr().Attr("role", "row").Body(cells...))
	}
	return app.Div().Class(class).Body(app.Table().Attr("role", "table").Body(
		app.Caption().Class("unseen").Text(caption),
		app.THead().Attr("role", "rowgroup").Body(app.Tr().Attr("role", "row").Body(heads...)),
		app.TBody().Attr("role", "rowgroup").Body(body...),
	))
}

// noteMarks tell notes apart without colour.
var noteMarks = [...]string{report.Tip: "i", report.Doubt: "?", report.Caution: "!"}

var noteClasses = [...]string{report.Tip: "tip", report.Doubt: "doubt", report.Caution: "caution"}

// Note is a note, with a mark for its kind.
func Note(n report.Note) app.UI {
	return app.Div().Class("note "+noteClasses[n.Kind]).Body(
		app.Span().Class("note-mark").Aria("hidden", "true").Text(noteMarks[n.Kind]),
		app.P().Body(append([]app.UI{app.Span().Class("unseen").Text(n.Kind.String() + ": ")}, Line(n.Line)...)...),
	)
}

// CodeBlock is text to copy, and to save if it has the name of a file. What is made of a
// stranger's template is only shown.
func CodeBlock(c report.Code) app.UI {
	said, name := lineCopied.Fill("text", c.Text), copyLine.Fill("label", c.Label, "text", c.Text)
	class := "code"
	if strings.Contains(c.Text, "\n") { // too long to be read out whole
		said, name = linesCopied.Fill("label", c.Label), copyLines.Fill("label", c.Label)
		class = "code lines"
	}
	if c.Brought {
		return app.Div().Class(class).Body(
			app.Span().Class("code-label").Text(cameWith.Fill("label", c.Label)),
			app.Code().Text(c.Text),
		)
	}
	return app.Div().Class(class).Body(
		app.Span().Class("code-label").Text(c.Label),
		app.Code().Text(c.Text),
		app.Button().Type("button").Class("copy").ID("copy-"+c.ID).DataSet("copy", c.Text).DataSet("said", said).Aria("label", name).Text(copyText),
		app.If(c.File != "", func() app.UI {
			return app.Button().Type("button").Class("copy").DataSet("save", c.File).DataSet("text", c.Text).Text(saveAs.Fill("file", c.File))
		}),
	)
}
