package view

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/calc/report"
)

// Folds remembers, by ID, which folds of a page the person opened or closed:
// go-app makes one into another when those before it come or go. Where there is
// none, each fold keeps to itself.
type Folds map[string]bool

// Fold is a heading with what it opens. Until it is touched, open says whether
// it is open.
func (f Folds) Fold(id, class string, open bool, heading app.UI, body ...app.UI) app.UI {
	fold := app.Details().ID(id).Class(class)
	if f != nil {
		if touched, ok := f[id]; ok {
			open = touched
		}
		fold = fold.Open(open).OnToggle(func(ctx app.Context, e app.Event) {
			f[id] = ctx.JSSrc().Get("open").Bool()
		}, app.EventScope(id))
	}
	return fold.Body(append([]app.UI{app.Summary().Body(heading)}, body...)...)
}

// table is a folded table. It is made when it is asked for.
func (f Folds) table(id, heading string, make func() report.Table) app.UI {
	var body []app.UI
	if f == nil || f[id] {
		body = append(body, Table(make()))
	}
	return f.Fold(id, "values", false, app.Text(heading), body...)
}
