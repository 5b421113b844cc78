package view

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/calc/report"
)

// Folds are the folds of a page: which of them the person opened, by ID. Where there are none,
// each fold keeps to itself.
type Folds struct {
	Whole  bool   // what is folded is made all the same
	Opened func() // something was, and is on the page
	open   map[string]bool
}

// NewFolds are folds that are all closed.
func NewFolds() *Folds { return &Folds{open: map[string]bool{}} }

// Reset closes all but these. They stay the same folds: handlers hold on to them.
func (f *Folds) Reset(open []string) {
	clear(f.open)
	for _, id := range open {
		f.open[id] = true
	}
}

// Open opens a fold, of which there may be none yet.
func (f *Folds) Open(id string) { f.open[id] = true }

// A Fold is a heading with what it opens, which is made when it is opened.
type Fold struct {
	ID, Class string
	Heading   app.UI
	Brief     string // what it holds, while it is closed
	Body      func() []app.UI
}

// View shows a fold.
func (f *Folds) View(fold Fold) app.UI {
	heading := []app.UI{fold.Heading}
	if fold.Brief != "" {
		heading = append(heading, app.Text(" "), app.Span().Class("brief").Text(Bound(fold.Brief)))
	}
	of := app.Details().ID(fold.ID).Class(fold.Class)
	open := f != nil && f.open[fold.ID]
	if f != nil {
		id := fold.ID
		of = of.Open(open).OnToggle(func(ctx app.Context, e app.Event) {
			if is := ctx.JSSrc().Get("open").Bool(); is != f.open[id] {
				f.open[id] = is
				if is && f.Opened != nil {
					f.Opened()
				}
			} else {
				ctx.PreventUpdate()
			}
		}, app.EventScope(id))
	}
	body := []app.UI{app.Summary().Body(heading...)}
	if open || f == nil || f.Whole {
		body = append(body, fold.Body()...)
	}
	return of.Body(body...)
}

// table is a folded table.
func (f *Folds) table(id, heading string, make func() report.Table) app.UI {
	return f.View(Fold{ID: id, Class: "values", Heading: app.Text(heading), Body: func() []app.UI {
		if f != nil && !f.open[id] {
			return nil // not in a page as it is generated either: nothing is typed there
		}
		return []app.UI{Table(make())}
	}})
}
