package log

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/calc/logbook"
)

// mostDamages is how many damages are listed one by one.
const mostDamages = 20

// An importReport is what came of a file.
type importReport struct {
	name                string
	added, there, aside int
	machines            int
	newer               bool
	damages             []logbook.Damage
	problem             string // why nothing, or not all, was imported
}

// takeFile imports a file that was chosen or dropped.
func (p *Page) takeFile(name, text, failed string) {
	p.ctx.Dispatch(func(app.Context) {
		if p.example {
			p.showExample(false)
		}
		p.take(name, text, failed)
	})
}

// take imports a file.
func (p *Page) take(name, text, failed string) {
	r := &importReport{name: name}
	p.imported, p.said, p.undoing = r, "", nil
	p.focusLater("import-report")
	switch failed {
	case "":
	case "TooLarge":
		r.problem = tooLarge
		return
	default:
		r.problem = cantOpen.Fill("error", failed)
		return
	}
	f := logbook.ReadFile(text)
	if _, _, err := logbook.ReadSheet(text); err == nil {
		r.problem = isASheet
		return
	}
	if f.Foreign {
		r.problem = isNoLog
		return
	}
	r.newer, r.damages = f.Newer, f.Damages
	p.kept = kept.Read() // another tab may have changed it
	entries, machines, there, refusedMachine := kept.TakeMachines(f.Entries)
	m := p.kept.Book.Merge(entries)
	n, refused := kept.Put(kept.Items(m.Added))
	if refused != "" {
		var ids []string
		for _, e := range m.Added[n:] {
			ids = append(ids, e.ID)
		}
		p.kept.Book.Remove(ids...)
		r.problem = together(notSaved.Fill(len(m.Added)-n), refused.Says(), fileHasAll)
	}
	if refused == "" && refusedMachine != "" {
		r.problem = together(machinesNotSaved, refusedMachine.Says(), fileHasAll)
	}
	r.added, r.there, r.aside, r.machines = n, m.There+there, m.Beside, machines
	p.relate()
	p.refresh()
	p.rechoose()
}

// importView tells what came of it.
func (p *Page) importView() app.UI {
	r := p.imported
	if r == nil {
		return app.Text("")
	}
	heading := importedFrom
	if r.problem != "" && r.added == 0 {
		heading = notImported
	}
	body := []app.UI{app.H2().Text(heading.Fill("file", r.name))}
	say := func(s string) { body = append(body, app.P().Text(s)) }
	if r.problem != "" {
		say(r.problem)
	}
	if r.problem == "" || r.added > 0 {
		say(together(importedHere.Fill(r.added), alreadyHere.Fill(r.there)))
	}
	if r.machines > 0 {
		say(machinesImported.Fill(r.machines))
	}
	if r.aside > 0 {
		say(sameID.Fill(r.aside))
	}
	if r.newer {
		say(newerFile)
	}
	if n := len(r.damages); n > 0 {
		if n == logbook.MostDamages {
			say(manyDamages.Fill("n", strconv.Itoa(n)))
		} else {
			say(damagedIn.Fill(n))
		}
		var items []app.UI
		for _, d := range r.damages[:min(n, mostDamages)] {
			items = append(items, app.Li().Text(d.String()))
		}
		body = append(body, app.Ul().Body(items...))
		if n > mostDamages {
			say(moreDamages.Fill(n - mostDamages))
		}
	}
	class := "log-import"
	if r.problem != "" || len(r.damages) > 0 {
		class = "log-import problems"
	}
	return app.Div().Class(class).ID("import-report").TabIndex(-1).Aria("label", whatCame).Body(append(body,
		frame.Button("import-end", closeIt, func() {
			p.imported = nil
			p.focusLater("import")
		}))...)
}
