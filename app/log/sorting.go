package log

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/app/view"
	"striderule/calc/logbook"
	"striderule/calc/machine"
)

// mostUnsorted is how many names are offered at a time; the next come when these are sorted in.
const mostUnsorted = 10

// sorting offers to sort in what stands under names that are none of this device's machines.
func (p *Page) sorting() app.UI {
	if len(p.unsorted) == 0 {
		return app.Text("")
	}
	return p.folds.View(view.Fold{ID: "log-sorting", Class: "more", Heading: app.Text(sortingHeading.Fill(len(p.unsorted))), Body: func() []app.UI {
		var items []app.UI
		for _, u := range p.offered() {
			items = append(items, p.sorter(u))
		}
		return []app.UI{app.P().Class("hint").Text(sortingWhy), app.Ul().Class("sorting").Body(items...)}
	}})
}

func (p *Page) offered() []machine.Unsorted { return p.unsorted[:min(len(p.unsorted), mostUnsorted)] }

// sorter is one of these names, with the axes that it may be.
func (p *Page) sorter(u machine.Unsorted) app.UI {
	id := sorterID(u)
	name := entriesNamed.Fill(len(u.Entries), "name", nameOf(u.Entries[0]))
	options := []app.UI{app.Option().Text(chooseMachine).Selected(u.Likely == nil)}
	for i, a := range p.known {
		options = append(options, app.Option().Text(a.Title()).Selected(i == p.placeOf(u.Likely)))
	}
	return app.Li().Body(
		app.Div().Class("field").Body(
			app.Label().For(id).Text(name),
			app.Select().ID(id).Name(id).Body(options...),
		),
		app.If(u.Likely != nil, func() app.UI { return app.P().Class("hint").Text(isItThat.Fill("machine", u.Likely.Title())) }),
		frame.Button(id+"-in", sortIn, func() { p.sortIn(u) }).Aria("label", sortNameIn.Fill("name", nameOf(u.Entries[0]))),
	)
}

func sorterID(u machine.Unsorted) string { return "sort-" + u.Entries[0].ID }

// placeOf is where in the list of the known axes one is; -1 for none.
func (p *Page) placeOf(a machine.Axis) int {
	for i, known := range p.known {
		if a != nil && known.ID() == a.ID() {
			return i
		}
	}
	return -1
}

// sortIn gives entries the names of the axis that is chosen beside theirs.
func (p *Page) sortIn(u machine.Unsorted) {
	list, ok := browser.Element(sorterID(u))
	if !ok {
		return
	}
	chosen := list.Get("selectedIndex").Int() - 1
	if chosen < 0 || chosen >= len(p.known) {
		p.tell(chooseFirst.Fill("name", nameOf(u.Entries[0])))
		p.focusLater(sorterID(u))
		return
	}
	axis := p.known[chosen]
	var named []logbook.Entry
	for _, e := range u.Entries {
		named = append(named, axis.SortIn(e))
	}
	before, after := kept.Items(u.Entries), kept.Items(named)
	n, refused := kept.Replace(before, after)
	p.again()
	says := []string{sortedIn.Fill(n, "machine", axis.Title())}
	if left := len(before) - n; refused != "" {
		says = append(says, notSaved.Fill(left), refused.Says())
	} else if left > 0 {
		says = append(says, leftAlone.Fill(left))
	}
	p.tell(says...)
	p.undoing = nil
	if n > 0 {
		p.undoing = func() (int, kept.Refusal) { return kept.Replace(after, before) }
	}
	p.focusOnUndo()
	p.ctx.Defer(func(app.Context) { // a list that stands elsewhere now keeps what was chosen in it
		for _, u := range p.offered() {
			if list, ok := browser.Element(sorterID(u)); ok {
				list.Set("selectedIndex", p.placeOf(u.Likely)+1)
			}
		}
	})
}
