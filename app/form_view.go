package main

import (
	"slices"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/view"
	"striderule/calc/form"
	"striderule/calc/sheet"
	"striderule/calc/word"
)

// entries are the form's sections in order.
func (c *calculator) entries() []app.UI {
	var sections []app.UI
	fields := c.form.Fields()
	for i := 0; i < len(fields); {
		end := i + 1
		for end < len(fields) && fields[end].Section == fields[i].Section {
			end++
		}
		if body := c.section(fields[i:end]); len(body) > 0 {
			sections = append(sections, c.sectionFrame(fields[i:end], body))
		}
		i = end
	}
	return sections
}

// sectionFrame puts the heading around a section. A folded one is open from
// the start if the link fills something in.
func (c *calculator) sectionFrame(fields []sheet.Field, body []app.UI) app.UI {
	s := fields[0].Section
	if !s.Folded {
		return app.FieldSet().Class("section").Body(append([]app.UI{app.Legend().Text(s.Title)}, body...)...)
	}
	filled := slices.ContainsFunc(fields, c.form.Filled)
	return c.folds.Fold("section-"+fields[0].Key, "section", filled, app.Text(s.Title), body...)
}

// section is what is visible of neighbouring fields.
func (c *calculator) section(fields []sheet.Field) []app.UI {
	var body []app.UI
	for i := 0; i < len(fields); {
		f := fields[i]
		if f.Group == nil {
			if c.form.Visible(f, 0) {
				body = append(body, &fieldView{State: c.cellState(f, 0), of: c})
			}
			i++
			continue
		}
		end := i
		for end < len(fields) && fields[end].Group == f.Group {
			end++
		}
		body = append(body, c.group(f.Group, fields[i:end])...)
		i = end
	}
	return body
}

func (c *calculator) single(f sheet.Field) app.UI {
	if checks, ok := f.Cells.(*sheet.Checks); ok {
		return c.checks(f, checks)
	}
	choice, ok := view.ValueOf[*sheet.Choice](f, 0)
	switch {
	case ok && len(choice.Options()) <= view.MostRadios:
		return c.radios(f, choice)
	case ok:
		return c.pulldown(f, 0, choice)
	}
	return c.cell(f, 0)
}

// cell is a text field with its label, hint, quick texts and problem. Its text
// is not part of what is rendered: a rendering can lag behind by a key, and
// would take that key back. refill puts texts in that were not typed.
func (c *calculator) cell(f sheet.Field, row int) app.UI {
	id := view.CellID(f, row)
	problem := c.form.ProblemAt(f.Key, row)
	input := app.Input().ID(id).Name(f.Key).Type("text").Class("typed").AutoComplete(false).
		Attr("autocapitalize", "off").Spellcheck(false).
		OnInput(c.typed(f.Key, row), app.EventScope(f.Key, strconv.Itoa(row))).
		OnChange(func(app.Context, app.Event) { c.writeAddress() })
	describedBy := ""
	if f.Hint != "" {
		describedBy = view.HintID(f)
	}
	if problem != "" {
		describedBy = id + "-problem " + describedBy
		input = input.Aria("invalid", "true")
	}
	if describedBy != "" {
		input = input.Aria("describedby", describedBy)
	}
	if q, ok := f.Cells.At(row).(view.Quantity); ok && q.Numeric() {
		input = input.Attr("inputmode", "decimal")
	}
	return app.Div().Class("field").Body(
		app.Label().For(id).Text(f.Label),
		app.If(f.Hint != "" && f.Group == nil, func() app.UI { return app.P().Class("hint").ID(view.HintID(f)).Text(f.Hint) }),
		app.Span().Class("entry").Body(input, app.Span().Class("unit").Aria("hidden", "true").Text(c.unitBeside(f, row))),
		app.If(len(f.Suggest) > 0 && f.Group == nil, func() app.UI { return c.suggestions(f) }),
		app.If(problem != "", func() app.UI { return app.P().Class("problem").ID(id + "-problem").Text(problem) }),
	)
}

// unitBeside is the unit that a text without one is read in.
func (c *calculator) unitBeside(f sheet.Field, row int) string {
	if q, ok := f.Cells.At(row).(view.Quantity); ok && !form.NamesUnit(c.form.Text(f.Key, row)) {
		return q.Unit()
	}
	return ""
}

func (c *calculator) typed(key string, row int) app.EventHandler {
	return func(ctx app.Context, e app.Event) {
		text := ctx.JSSrc().Get("value").String()
		c.editByKey(ctx, func(f *form.Form) { f.Set(key, row, text) })
	}
}

// suggestions are texts that fill a field with one tap.
func (c *calculator) suggestions(f sheet.Field) app.UI {
	var buttons []app.UI
	for _, s := range f.Suggest {
		buttons = append(buttons, app.Button().Type("button").Class("suggest").Text(s).
			Aria("label", f.Label+": "+s).
			OnClick(func(ctx app.Context, e app.Event) {
				c.edit(func(typed *form.Form) { typed.Set(f.Key, 0, s) })
				c.refill()
			}, app.EventScope(f.Key, s)))
	}
	return app.Div().Class("suggestions").Body(buttons...)
}

// radios are the options of a choice.
func (c *calculator) radios(f sheet.Field, choice *sheet.Choice) app.UI {
	var options []app.UI
	for _, o := range choice.Options() {
		input := app.Input().Type("radio").ID(view.OptionID(f, o)).Name(f.Key).Value(o.Word).Checked(choice.Word == o.Word).
			OnChange(func(ctx app.Context, e app.Event) {
				c.edit(func(typed *form.Form) { typed.Set(f.Key, 0, o.Word) })
				c.refill()
			}, app.EventScope(f.Key, o.Word))
		options = append(options, view.Option(input, o, view.OptionID(f, o), ""))
	}
	for _, o := range choice.Options() {
		if o.Word == choice.Word && o.Hint != "" {
			options = append(options, app.P().Class("hint chosen").Text(word.Capital(o.Hint)+"."))
		}
	}
	return c.optionSet(f, "radios", options)
}

// checks are the options of a list to tick off.
func (c *calculator) checks(f sheet.Field, checks *sheet.Checks) app.UI {
	var options []app.UI
	for _, o := range checks.Options() {
		input := app.Input().Type("checkbox").ID(view.OptionID(f, o)).Name(f.Key).Value(o.Word).Checked(checks.Has(o.Word)).
			OnChange(func(ctx app.Context, e app.Event) {
				on := ctx.JSSrc().Get("checked").Bool()
				c.edit(func(typed *form.Form) { typed.Tick(f.Key, o.Word, on) })
				c.refill()
			}, app.EventScope(f.Key, o.Word))
		options = append(options, view.Option(input, o, view.OptionID(f, o), o.Hint))
	}
	return c.optionSet(f, "checks", options)
}

func (c *calculator) optionSet(f sheet.Field, class string, options []app.UI) app.UI {
	problem := c.form.ProblemAt(f.Key, 0)
	return app.FieldSet().Class("choice "+class).ID("f-"+f.Key).TabIndex(-1).Body(
		app.Legend().Text(f.Label),
		app.If(f.Hint != "", func() app.UI { return app.P().Class("hint").Text(f.Hint) }),
		app.Div().Class("options").Body(options...),
		app.If(problem != "", func() app.UI { return app.P().Class("problem").Text(problem) }),
	)
}
