package calculator

import (
	"slices"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/view"
	"striderule/calc/lists"
	"striderule/calc/report"
	"striderule/calc/sheet"
)

// What stands above the answer: the fields without which there is none, and one line that
// says what else counts.

// lead are the caution, the picture, the needed fields and the line of what is assumed.
func (c *calculator) lead() []app.UI {
	r := c.settling.report
	var body []app.UI
	if r.Care != "" {
		body = append(body, app.P().Class("care").Body(app.Span().Class("care-mark").Aria("hidden", "true").Text("!"), app.Text(view.Bound(r.Care))))
	}
	if r.Picture != nil {
		body = append(body, &blockView{Block: *r.Picture, folds: c.folds})
	}
	needed := c.fieldsOf(func(f sheet.Field) bool { return f.Needed && f.Group == nil })
	if fields := c.section(needed); len(fields) > 0 {
		body = append(body, app.Div().Class("needs").Body(fields...))
	}
	body = append(body, c.section(c.fieldsOf(func(f sheet.Field) bool { return f.Needed && f.Group != nil }))...)
	return append(body, c.keptLine(), c.assumed(), c.setUp())
}

// fieldsOf are the fields of the form that are good, in order.
func (c *calculator) fieldsOf(good func(sheet.Field) bool) []sheet.Field {
	var fields []sheet.Field
	for _, f := range c.form.Fields() {
		if good(f) {
			fields = append(fields, f)
		}
	}
	return fields
}

// keptLine has the hints of the needed fields in one place, of which the one of the field in
// use shows: web/page.js lights it. So nothing stands between the fields, and nothing moves.
func (c *calculator) keptLine() app.UI {
	var hints []app.UI
	for _, f := range c.fieldsOf(func(f sheet.Field) bool { return f.Needed && c.inAnyRow(f) }) {
		if f.Hint != "" {
			hints = append(hints, app.P().Class("hint").ID(view.HintID(f)).DataSet("of", f.Key).Text(view.Bound(f.Hint)))
		}
	}
	if len(hints) == 0 {
		return app.Text("")
	}
	return app.Div().Class("hint-line").Body(hints...)
}

// assumed is one line of what counts beside the needed fields, each word a way to change it.
func (c *calculator) assumed() app.UI {
	words := c.form.Assumed()
	if len(words) == 0 {
		return app.Text("")
	}
	line := []app.UI{app.Span().Class("unseen").Text(assumedName)}
	for i, w := range words {
		if i > 0 {
			line = append(line, app.Text(" · "))
		}
		line = append(line, c.jump(w.Key, 0, w.Says))
	}
	return app.P().Class("assumed").Body(line...)
}

// setUpID is the fold with the fields behind that line.
const setUpID = "set-up"

// setUp holds the choices that the line names. It shows when it is open: the line stands for it.
func (c *calculator) setUp() app.UI {
	fields := c.fieldsOf(func(f sheet.Field) bool { return !f.Needed && !f.Section.Folded })
	if !slices.ContainsFunc(fields, func(f sheet.Field) bool { return c.form.Visible(f, 0) }) {
		return app.Text("")
	}
	return c.folds.View(view.Fold{ID: setUpID, Class: "set-up", Heading: app.Text(setUpTitle), Body: func() []app.UI { return c.section(fields) }})
}

// moreID is the fold with the optional sections.
const moreID = "more"

// more are the optional sections, in one fold that says what they hold.
func (c *calculator) more() []app.UI {
	fields := c.fieldsOf(func(f sheet.Field) bool { return !f.Needed && f.Section.Folded && c.inAnyRow(f) })
	fields = lists.Concat(lists.Keep(fields, func(f sheet.Field) bool { return f.Section.First }), lists.Keep(fields, func(f sheet.Field) bool { return !f.Section.First }))
	if len(fields) == 0 {
		return nil
	}
	return []app.UI{c.folds.View(view.Fold{ID: moreID, Class: "part", Heading: app.H2().Text(moreTitle), Brief: c.brief(fields), Body: func() []app.UI {
		var sections []app.UI
		for i := 0; i < len(fields); {
			end := i + 1
			for end < len(fields) && fields[end].Section == fields[i].Section {
				end++
			}
			sections = append(sections, app.FieldSet().Class("section").ID("section-"+fields[i].Key).Body(
				append([]app.UI{app.Legend().Text(fields[i].Section.Title)}, c.section(fields[i:end])...)...))
			i = end
		}
		return sections
	}})}
}

// brief is what folded fields hold, with a sign if something of it is wrong or in doubt.
func (c *calculator) brief(fields []sheet.Field) string {
	says := c.form.Holds(fields)
	if says == "" {
		says = nothingHeld
	}
	return c.marked(says, fields, anyRow)
}

const anyRow = -1

// marked is what a row of fields holds, with a sign if something of it is wrong or in doubt.
func (c *calculator) marked(says string, fields []sheet.Field, row int) string {
	switch wrong, doubt := c.form.Troubles(fields, row); {
	case wrong:
		return wrongHeld.Fill("held", says)
	case doubt:
		return doubtHeld.Fill("held", says)
	}
	return says
}

// foldOf is the fold that a cell lies in; empty if it is always in sight.
func (c *calculator) foldOf(f sheet.Field, row int) string {
	switch {
	case f.Needed && f.Group != nil && c.isStacked(f.Group) && c.form.Rows(f) > 1:
		return rowFoldID(f, row)
	case f.Needed:
		return ""
	case f.Section.Folded:
		return moreID
	}
	return setUpID
}

// letter is that of a field in the picture; empty if it is not drawn.
func (c *calculator) letter(key string) string {
	if g := c.settling.report.Picture; g != nil {
		return g.LetterOf(key)
	}
	return ""
}

// labelOf is a label's content: the letter in the picture, and the name.
func labelOf(letter, name string) []app.UI {
	if letter == "" {
		return []app.UI{app.Text(name)}
	}
	return []app.UI{app.Span().Class("letter").Aria("hidden", "true").Text(letter), app.Text(name)}
}

// folded is a part of a report as a fold.
func (c *calculator) folded(p report.Part) app.UI {
	class, brief := "part", p.Brief
	for _, b := range p.Blocks {
		if n, ok := b.(report.Note); ok && n.Kind == report.Doubt && !p.Guide {
			brief = doubtHeld.Fill("held", p.Brief)
		}
	}
	if p.Guide {
		class += " guide"
	}
	return c.folds.View(view.Fold{ID: "part-" + p.ID, Class: class, Heading: app.H2().Text(p.Title), Brief: brief, Body: func() []app.UI {
		var blocks []app.UI
		for _, b := range p.Blocks {
			blocks = append(blocks, c.liveBlock(b))
		}
		return blocks
	}})
}
