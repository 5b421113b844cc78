package calculator

import (
	"slices"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/view"
	"striderule/calc/form"
	"striderule/calc/sheet"
)

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
	case ok && view.HasRadios(f, choice):
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
	about := c.besideOf(f, row)
	says := about.says()
	class, end := about.kind()
	input := app.Input().ID(id).Name(f.Key).Type("text").Class("typed").AutoComplete(false).
		Attr("autocapitalize", "off").Spellcheck(false).
		OnInput(c.typed(f.Key, row), app.EventScope(f.Key, strconv.Itoa(row))).
		OnChange(func(app.Context, app.Event) {
			c.typing = typing{}
			c.writeAddress()
		})
	if about.Problem != "" && !about.Past {
		input = input.Aria("invalid", "true")
	}
	var describedBy []string
	beside := c.unitBeside(f, row)
	if beside != "" {
		describedBy = append(describedBy, view.UnitID(f, row))
	}
	if says != "" && !about.Past {
		describedBy = append(describedBy, id+end)
	}
	if f.Hint != "" {
		describedBy = append(describedBy, view.HintID(f))
	}
	if f.Needed && f.Group == nil && len(f.Suggest) > 0 {
		input = input.List(view.SuggestID(f))
	}
	if describedBy != nil {
		input = input.Aria("describedby", strings.Join(describedBy, " "))
	}
	q := view.QuantityOf(f, row)
	if q != nil && q.Numeric() {
		input = input.Attr("inputmode", "decimal")
	}
	entry := app.Span().Class("entry").Body(input, app.Span().Class("unit").ID(view.UnitID(f, row)).Text(beside))
	if q != nil && q.Units() != nil {
		entry = app.Span().Class("entry chosen-unit").Body(input, c.unitChoice(f, row, q, beside))
	}
	return app.Div().Class(fieldClass(f)).Body(
		app.Label().For(id).Body(labelOf(c.letter(f.Key), f.Label)...),
		app.If(f.Hint != "" && f.Group == nil && !f.Needed, func() app.UI { return app.P().Class("hint").ID(view.HintID(f)).Text(view.Bound(f.Hint)) }),
		entry,
		c.was(f.Key, row),
		app.If(len(f.Suggest) > 0 && f.Group == nil, func() app.UI {
			if f.Needed {
				return suggested(f)
			}
			return c.suggestions(f, 0, f.Suggest)
		}),
		app.If(says != "", func() app.UI { return app.P().Class(class).ID(id + end).Text(view.Bound(says)) }),
		app.If(about.Which && !about.Past, c.whose.WhichSetting),
		app.If(about.Asked != "", func() app.UI { return c.suggestions(f, row, []string{about.Rather, about.Read}) }),
	)
}

// fieldClass tells a text that rows share from one that each has.
func fieldClass(f sheet.Field) string {
	if f.Group != nil && slices.Contains(f.Group.Shared, f.Key) {
		return "field shared"
	}
	return "field"
}

// suggested are the texts that a browser offers for a needed field: there is no room for buttons.
func suggested(f sheet.Field) app.UI {
	var options []app.UI
	for _, s := range f.Suggest {
		options = append(options, app.Option().Value(s))
	}
	return app.DataList().ID(view.SuggestID(f)).Body(options...)
}

// suggestions are texts that fill a field with one tap.
func (c *calculator) suggestions(f sheet.Field, row int, texts []string) app.UI {
	var buttons []app.UI
	for _, s := range texts {
		buttons = append(buttons, app.Button().Type("button").Class("suggest").Text(s).
			Aria("label", suggestion.Fill("field", f.Label, "text", s)).
			OnClick(func(ctx app.Context, e app.Event) {
				c.edit(func(typed *form.Form) { typed.Set(f.Key, row, s) })
				c.refill()
			}, app.EventScope(f.Key, strconv.Itoa(row), s)))
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
			options = append(options, app.P().Class("hint chosen").Text(view.Bound(chosenHint.Fill("option", o.Label, "hint", o.Hint))))
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
		if f.Needed { // a strip of short names
			o.Label, o.Hint = o.Said(), ""
		}
		options = append(options, view.Option(input, o, view.OptionID(f, o), o.Hint))
	}
	return c.optionSet(f, "checks", options)
}

func (c *calculator) optionSet(f sheet.Field, class string, options []app.UI) app.UI {
	problem := c.form.ProblemAt(f.Key, 0)
	return app.FieldSet().Class("choice "+class).ID("f-"+f.Key).TabIndex(-1).Body(
		app.Legend().Text(f.Label),
		app.If(f.Hint != "", func() app.UI { return app.P().Class("hint").Text(view.Bound(f.Hint)) }),
		app.Div().Class("options").Body(options...),
		c.was(f.Key, 0),
		app.If(problem != "", func() app.UI { return app.P().Class("problem").Text(view.Bound(problem)) }),
	)
}
