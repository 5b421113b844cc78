package view

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/site"
	"striderule/calc/report"
)

// Block is a block of a report, but for those that a calculator has to know of.
func Block(b report.Block, folds *Folds) app.UI {
	switch b := b.(type) {
	case report.Para:
		return app.P().Body(Line(b.Line)...)
	case report.Figures:
		return figures(b)
	case report.Table:
		if b.Folded {
			return folds.table("table-"+b.Caption, allRows.Fill("table", b.Caption, "n", strconv.Itoa(len(b.Rows))), func() report.Table { return b })
		}
		return Table(b)
	case report.Steps:
		return app.Ol().Body(items(b.Items)...)
	case report.Points:
		return app.Ul().Body(items(b.Items)...)
	case report.Code:
		return CodeBlock(b)
	case report.Note:
		return Note(b)
	case report.Drawing:
		return drawing(b)
	case report.Chart:
		return Chart(&b, folds)
	case report.Bars:
		return bars(b)
	case report.Links:
		var links []app.UI
		for _, l := range b.All {
			links = append(links, app.Li().Body(app.A().Href(site.LinkTo(site.PathOf(l.Slug), l.Fragment)).Text(l.Text)))
		}
		return app.Ul().Class("links").Body(links...)
	}
	panic("app: a block without a view")
}
