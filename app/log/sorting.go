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
const mostUnsorted = 5

// sorting offers to sort in what belongs to none of this device's machines.
func (p *Page) sorting() app.UI {
	if len(p.unsorted) == 0 {
		return app.Text("")
	}
	return p.folds.View(view.Fold{ID: "log-sorting", Heading: app.Text(sortingHeading.Fill(len(p.unsorted), "name", nameOf(p.unsorted[0].Entries[0]))), Body: func() []app.UI {
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
	if u.Likely != nil {
		name = together(name, isItThat.Fill("machine", u.Likely.Title()))
	}
	chosen := p.placeOf(p.chosenFor(u))
	options := []app.UI{app.Option().Text(chooseMachine).Selected(chosen < 0)}
	for i, a := range p.known {
		options = append(options, app.Option().Text(a.Title()).Selected(i == chosen))
	}
	return app.Li().Body(
		app.Label().For(id).Text(name),
		app.Select().ID(id).Name(id).Body(options...).OnChange(func(ctx app.Context, _ app.Event) {
			p.chosen[nameIn(u)] = ""
			if i := ctx.JSSrc().Get("selectedIndex").Int(); i > 0 {
				p.chosen[nameIn(u)] = p.known[i-1].ID()
			}
		}, app.EventScope(id)),
		frame.Button(id+"-in", sortIn, func() { p.sortIn(u) }).Aria("label", sortNameIn.Fill("name", nameOf(u.Entries[0]))),
	)
}

func sorterID(u machine.Unsorted) string { return "sort-" + u.Entries[0].ID }

// nameIn is a name in the log, by which what is chosen for it is kept: lists come and go.
func nameIn(u machine.Unsorted) string { return u.Machine + "\n" + u.Axis }

// chosenFor is the ID of the axis that is chosen for a name, or that is likely; empty for none.
func (p *Page) chosenFor(u machine.Unsorted) string {
	if id, ok := p.chosen[nameIn(u)]; ok {
		return id
	}
	return u.Likely.ID()
}

// placeOf is where in the list of the known axes one is; -1 for none.
func (p *Page) placeOf(id string) int {
	for i, known := range p.known {
		if id != "" && known.ID() == id {
			return i
		}
	}
	return -1
}

// rechoose puts into the lists what is chosen: they may stand beside another name now.
func (p *Page) rechoose() {
	p.ctx.Defer(func(app.Context) {
		for _, u := range p.offered() {
			if list, ok := browser.Element(sorterID(u)); ok {
				list.Set("selectedIndex", p.placeOf(p.chosenFor(u))+1)
			}
		}
	})
}

// sortIn gives entries the names of the axis that is chosen for theirs, as it is by now.
func (p *Page) sortIn(u machine.Unsorted) {
	axis := kept.ReadMachines().Of(p.chosenFor(u))
	if axis == nil {
		p.again() // it may be gone
		p.tell(chooseFirst.Fill("name", nameOf(u.Entries[0])))
		p.focusLater(sorterID(u))
		return
	}
	var fit, named []logbook.Entry
	for _, e := range u.Entries {
		if sorted, ok := axis.SortIn(e); ok {
			fit, named = append(fit, e), append(named, sorted)
		}
	}
	before, after := kept.Items(fit), kept.Items(named)
	n, refused := kept.Replace(before, after)
	p.again()
	var says []string
	if n > 0 {
		says = append(says, sortedIn.Fill(n, "machine", axis.Title()))
	}
	if left := len(before) - n; refused != "" {
		says = append(says, notSaved.Fill(left), refused.Says())
	} else if left > 0 {
		says = append(says, leftAlone.Fill(left))
	}
	if left := len(u.Entries) - len(fit); left > 0 {
		says = append(says, noRoom.Fill(left))
	}
	p.tell(says...)
	p.undoing = nil
	if n > 0 {
		p.undoing, p.undone = func() (int, int, kept.Refusal) {
			back, refused := kept.Replace(after, before)
			return back, len(after) - back, refused
		}, backAgain
	}
	p.focusOnUndo()
}
