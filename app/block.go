package main

import (
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/calc/report"
)

// block is a block of a report, but for those that a calculator has to know of.
func block(b report.Block, folds folds) app.UI {
	switch b := b.(type) {
	case report.Para:
		return app.P().Body(line(b.Line)...)
	case report.Figures:
		return figures(b)
	case report.Table:
		if b.Folded {
			return folds.table("table-"+b.Caption, "All "+strconv.Itoa(len(b.Rows))+" "+strings.ToLower(b.Caption), func() report.Table { return b })
		}
		return table(b)
	case report.Steps:
		return app.Ol().Body(items(b.Items)...)
	case report.Points:
		return app.Ul().Body(items(b.Items)...)
	case report.Code:
		return code(b)
	case report.Note:
		return note(b)
	case report.Drawing:
		return drawing(b)
	case report.Chart:
		return chart(&b, folds)
	case report.Bars:
		return bars(b)
	case report.Links:
		var links []app.UI
		for _, l := range b.All {
			links = append(links, app.Li().Body(app.A().Href(linkTo(pathOf(l.Slug), l.Fragment)).Text(l.Text)))
		}
		return app.Ul().Class("links").Body(links...)
	}
	panic("app: a block without a view")
}
