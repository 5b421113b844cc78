package log

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/calc/logbook"
	"striderule/calc/word"
)

// mostDamages is how many damages are listed one by one.
const mostDamages = 20

// An importReport is what came of taking in a file.
type importReport struct {
	name                string
	added, there, aside int
	newer               bool
	damages             []logbook.Damage
	problem             string // nothing, or not all, was taken in
}

// takeFile takes in a file that was chosen or dropped.
func (p *Page) takeFile(name, text, failed string) {
	p.ctx.Dispatch(func(app.Context) {
		if p.example {
			p.showExample(false)
		}
		p.take(name, text, failed)
	})
}

// take takes a file in.
func (p *Page) take(name, text, failed string) {
	r := &importReport{name: name}
	p.imported, p.said, p.gone = r, "", nil
	p.focusLater("import-report")
	switch failed {
	case "":
	case "TooLarge":
		r.problem = "It is larger than 20 megabytes: no browser keeps a log of that size."
		return
	default:
		r.problem = "The browser could not read it (" + failed + ")."
		return
	}
	f := logbook.ReadFile(text)
	if _, _, err := logbook.ReadSheet(text); err == nil {
		r.problem = "It is a single sheet: open it on the start page, and keep it from there."
		return
	}
	if f.Foreign {
		r.problem = "It is no file of this log: such a file begins with {\"log\":\"striderule\". One that was saved for a spreadsheet cannot be taken in again."
		return
	}
	r.newer, r.damages = f.Newer, f.Damages
	p.kept = kept.Read() // another tab may have changed it
	m := p.kept.Book.Merge(f.Entries)
	n, refused := kept.Put(kept.Items(m.Added))
	if refused != "" {
		var ids []string
		for _, e := range m.Added[n:] {
			ids = append(ids, e.ID)
		}
		p.kept.Book.Remove(ids...)
		r.problem = word.Plural(len(m.Added)-n, "entry was", "entries were") + " not kept. " + refused + " The file still has all of it."
	}
	r.added, r.there, r.aside = n, m.There, m.Beside
	p.refresh()
}

// importView tells what came of it.
func (p *Page) importView() app.UI {
	r := p.imported
	if r == nil {
		return app.Text("")
	}
	heading := "Taken in from "
	if r.problem != "" && r.added == 0 {
		heading = "Could not be taken in: "
	}
	body := []app.UI{app.H2().Text(heading + r.name)}
	say := func(s string) { body = append(body, app.P().Text(s)) }
	if r.problem != "" {
		say(r.problem)
	}
	if r.problem == "" || r.added > 0 {
		say(word.Plural(r.added, "entry was", "entries were") + " taken in, " + word.Plural(r.there, "was", "were") + " there already.")
	}
	if r.aside > 0 {
		say(word.Plural(r.aside, "entry had", "entries had") + " the id of another one here, with something else in it. Both are kept.")
	}
	if r.newer {
		say("The file is of a newer version of this site. What this version understands was taken in, and the rest was kept with it.")
	}
	if n := len(r.damages); n > 0 {
		more := ""
		if n == logbook.MostDamages {
			more = " or more"
		}
		say("The file is damaged in " + word.Plural(n, "place", "places") + more + "; the rest was taken in:")
		var items []app.UI
		for _, d := range r.damages[:min(n, mostDamages)] {
			items = append(items, app.Li().Text(d.String()))
		}
		body = append(body, app.Ul().Body(items...))
		if n > mostDamages {
			say("And " + word.Plural(n-mostDamages, "more", "more") + ".")
		}
	}
	class := "log-import"
	if r.problem != "" || len(r.damages) > 0 {
		class = "log-import problems"
	}
	return app.Div().Class(class).ID("import-report").TabIndex(-1).Aria("label", "What was taken in").Body(append(body,
		frame.Button("import-end", "Close", func() {
			p.imported = nil
			p.focusLater("import")
		}))...)
}
