package machines

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/app/view"
	"striderule/calc"
	"striderule/calc/logbook"
	"striderule/calc/machine"
	"striderule/calc/word"
)

// The entries of the form of an axis.
const (
	machineName = iota
	axisName
	kind
	as
	setting
	date
	fields
)

// edit opens the form with an axis; add with a new one.
func (p *Page) edit(a *kept.Axis) {
	key, text := a.Setting()
	p.form, p.problem = a, ""
	p.entries = [...]string{a.Text("machine"), a.Text("axisname"), a.Text("axis"), strings.TrimSuffix(key, "deg"), text, a.Text("set")}
	if p.entries[kind] == "" {
		p.entries[kind] = kinds[0][0]
	}
	if key == "" {
		p.entries[as] = conventions[0][0]
	}
	p.focus("axis-machine")
}

func (p *Page) add() {
	p.edit(&kept.Axis{Axis: machine.Axis{}.With("set", browser.Today())})
}

// typed makes the axis of what is typed, on what it was; problem says what is wrong in a field.
func (p *Page) typed(was machine.Axis) (a machine.Axis, field, problem string) {
	e := &p.entries
	key := e[as]
	if e[kind] == "rotary" {
		key += "deg"
	}
	page, _ := calc.PageOf(machine.Page)
	f := calc.NewForm(page)
	f.Set("axis", 0, e[kind])
	f.Set("as", 0, e[as])
	f.Set(key, 0, e[setting])
	_, text := f.Setting()
	switch says := f.ProblemAt(key, 0); {
	case strings.TrimSpace(e[machineName]) == "":
		return a, "axis-machine", nameIt
	case says != "":
		return a, "axis-setting", says
	case text == "":
		return a, "axis-setting", setIt
	case len(e[date]) != len("2026-11-29") || !logbook.IsDate(e[date]):
		return a, "axis-date", dateIt
	}
	a = was.With("machine", strings.TrimSpace(e[machineName]), "axisname", strings.TrimSpace(e[axisName]), "axis", strings.TrimPrefix(e[kind], kinds[0][0]))
	if like := kept.ReadMachines().Alike(a); like != nil && like.ID() != was.ID() && a.Title() != was.Title() {
		return a, "axis-machine", sameName.Fill("machine", like.Title())
	}
	return a.WithSetting(key, text, e[date]), "", ""
}

func (p *Page) saveForm(_ app.Context, e app.Event) {
	e.PreventDefault()
	var a machine.Axis
	if a, p.wrong, p.problem = p.typed(p.form.Axis); p.problem != "" {
		p.focus(p.wrong)
		return
	}
	own := p.form // as it stood when the form was opened: another tab may have changed it
	if own.ID() == "" {
		own = kept.ReadMachines().New(a)
	}
	own.Axis = a.With("id", own.ID())
	if !p.keep(own, saved.Fill("machine", a.Title())) {
		p.problem, p.said = p.said, "" // where the person looks
		return
	}
	p.form = nil
	p.focus("edit-" + own.ID())
}

// closeForm leaves what was typed, and goes back to where it was opened.
func (p *Page) closeForm() {
	from := "add-axis"
	if id := p.form.ID(); p.kept.Of(id) != nil {
		from = "edit-" + id
	}
	p.form = nil
	p.focus(from)
}

// formView is the form, or the button for a new one.
func (p *Page) formView() app.UI {
	switch {
	case !app.IsClient:
		return app.Text("")
	case p.form == nil:
		return frame.Button("add-axis", addMachine, p.add)
	}
	e := &p.entries
	return app.Form().Class("keep").ID("axis-form").NoValidate(true).DataSet("sheet", "axis").AutoComplete(false).Aria("label", formName).OnSubmit(p.saveForm).Body(
		p.field("axis-machine", machineLabel, "text", &e[machineName]),
		view.TextField("axis-name", axisLabel, "text", &e[axisName]),
		choice("axis-kind", kindLabel, kinds, &e[kind]),
		choice("axis-as", asLabel, conventions, &e[as]),
		p.field("axis-setting", settingLabel, "text", &e[setting]),
		p.field("axis-date", dateLabel, "date", &e[date]),
		p.problemAt(""),
		app.P().Class("hint").Text(moreFacts),
		app.Div().Class("share").Body(
			app.Button().Type("submit").ID("axis-save").Text(save),
			frame.Button("axis-cancel", cancel, p.closeForm),
		),
	)
}

// field is one of the form, with what is wrong with it.
func (p *Page) field(id, label, kind string, text *string) app.UI {
	return app.Div().Body(view.TextField(id, label, kind, text), p.problemAt(id))
}

// problemAt is what is wrong in a field, or with the whole where none is named.
func (p *Page) problemAt(field string) app.UI {
	return app.If(p.problem != "" && p.wrong == field, func() app.UI {
		return app.P().Class("problem").ID("axis-problem").Attr("role", "alert").Text(p.problem)
	})
}

func choice(id, label string, of word.Table, chosen *string) app.UI {
	var options []app.UI
	for _, o := range of {
		options = append(options, app.Option().Value(o[0]).Text(o[1]).Selected(o[0] == *chosen))
	}
	return app.Div().Class("field").Body(app.Label().For(id).Text(label), app.Select().ID(id).Name(id).Body(options...).
		OnChange(func(ctx app.Context, _ app.Event) { *chosen = ctx.JSSrc().Get("value").String() }, app.EventScope(id)))
}
