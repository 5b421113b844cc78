package calculator

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/file"
	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/app/site"
	"striderule/calc/logbook"
	"striderule/calc/sheet"
	"striderule/calc/word"
)

// A keeping is the small form that saves a sheet to the log.
type keeping struct {
	open, typed               bool // typed: something in it is the person's
	date, machine, axis, note string
	book                      *logbook.Book // as it was when the form was opened
	said                      string        // what came of it
	wrong                     string        // the ID of the field that is wrong
	problem                   string        // what is wrong with it
	refused                   kept.Refusal  // why the browser did not save it
}

// openKeep shows the form, with the machine and axis of the last time.
func (c *calculator) openKeep() {
	k := kept.Read()
	c.keep = keeping{open: true, date: browser.Now(), book: k.Book}
	last, _ := k.Book.Last(c.page.Slug)
	c.keep.machine, c.keep.axis = last.Machine, logbook.AxisFor(c.form, last)
	if name := c.form.MachineText("machine"); name != "" {
		c.keep.machine, c.keep.axis = name, c.form.MachineText("axisname")
	}
	c.ctx.Defer(func(app.Context) { browser.Focus("keep-machine") })
}

// noteKeep has the tab keep what was typed into the form.
func (c *calculator) noteKeep() {
	if k := &c.keep; k.open && k.typed {
		browser.NoteDraft(site.LinkTo(site.PathOf(c.page.Slug), c.address), k.machine, k.axis, k.note, k.date)
	}
}

// draftedKeep is the form as the tab has kept it.
func (c *calculator) draftedKeep() keeping {
	texts, ok := browser.DraftOf(site.LinkTo(site.PathOf(c.page.Slug), c.address), 4)
	if !ok {
		return keeping{}
	}
	return keeping{open: true, typed: true, machine: texts[0], axis: texts[1], note: texts[2], date: texts[3], book: kept.Read().Book}
}

// closeKeep hides the form and hands the focus on.
func (c *calculator) closeKeep(said string) {
	c.keep = keeping{said: said}
	browser.NoteDraft(site.LinkTo(site.PathOf(c.page.Slug), c.address))
	next := "keep"
	if said != "" {
		next = "kept"
	}
	c.ctx.Defer(func(app.Context) { browser.Focus(next) })
}

// keepSheet saves the sheet to the log.
func (c *calculator) keepSheet(app.Context, app.Event) {
	k := &c.keep
	k.wrong, k.problem, k.refused = "", "", ""
	e, ok := logbook.Of(c.form, k.date, k.machine, k.axis, k.note)
	switch {
	case !ok:
		return // the button is not there then
	case e.Machine == "":
		k.wrong, k.problem = "keep-machine", noMachine
	case !logbook.IsDate(e.Date):
		k.wrong, k.problem = "keep-date", noDate
	}
	if k.problem != "" {
		c.ctx.Defer(func(app.Context) { browser.Focus(k.wrong) })
		return
	}
	added := kept.Read().Book.Merge([]logbook.Entry{e}).Added
	if len(added) == 0 {
		c.closeKeep(savedAlready)
		return
	}
	if _, k.refused = kept.Put(kept.Items(added)); k.refused == "" {
		c.closeKeep(saved)
		return
	}
	c.ctx.Defer(func(app.Context) { browser.Focus("keep-refused") })
}

// keepAsFile saves the entry as a log of its own, where the browser refuses.
func (c *calculator) keepAsFile() {
	if e, ok := logbook.Of(c.form, c.keep.date, c.keep.machine, c.keep.axis, c.keep.note); ok {
		browser.SaveFile(kept.FileName("json"), logbook.WriteFile(logbook.NewBook(e).All()))
	}
}

// keepView is the form, or what came of it.
func (c *calculator) keepView() app.UI {
	k := &c.keep
	if !k.open {
		return app.P().ID("kept").Class("kept").TabIndex(-1).Attr("role", "status").Body(
			app.If(k.said != "", func() app.UI {
				return app.Span().Body(app.Text(k.said+" "), app.A().Href(site.LinkTo(site.LogPath, "")).Text(file.OpenTheLog), app.Text("."))
			}),
		)
	}
	return app.Form().Class("keep").ID("keep-form").NoValidate(true).DataSet("sheet", "keep").AutoComplete(false).Aria("label", saveToLog).OnSubmit(c.keepSheet).Body(
		app.H2().Text(saveToLog),
		app.P().Class("hint").Text(saveAbout),
		c.keepField("keep-machine", saveMachine, saveMachineTip, 60, &k.machine, k.book.Machines()),
		c.keepField("keep-axis", saveAxis, saveAxisTip, 60, &k.axis, axisNames(k.book.Axes(k.machine))),
		c.keepField("keep-note", saveNote, saveNoteTip, 200, &k.note, nil),
		c.keepDate(),
		app.If(k.refused != "", func() app.UI {
			return app.Div().Class("problems").ID("keep-refused").TabIndex(-1).Attr("role", "alert").Body(
				app.P().Text(word.Together(notSaved, k.refused.Says(), remedies.Of(string(k.refused)))),
				frame.Button("keep-file", saveItAsFile, c.keepAsFile),
			)
		}),
		app.Div().Class("share").Body(
			app.Button().Type("submit").ID("keep-do").Text(saveIt),
			frame.Button("keep-cancel", cancelSave, func() { c.closeKeep("") }),
		),
	)
}

// axisNames are what axes of the log are called.
func axisNames(keys []string) []string {
	var names []string
	for _, key := range keys {
		names = append(names, logbook.AxisName(key))
	}
	return names
}

// keepField is one text of the form; names from the log are offered.
func (c *calculator) keepField(id, name, hint string, most int, text *string, offered []string) app.UI {
	input := app.Input().Class("typed").ID(id).Name(id).Type("text").MaxLength(most).AutoComplete(false).Value(*text).Aria("describedby", id+"-hint").
		OnInput(c.keepInput(text))
	if len(offered) > 0 {
		input = input.List(id + "-names")
	}
	return c.keepCell(id, name, hint, input,
		app.If(len(offered) > 0, func() app.UI {
			var options []app.UI
			for _, name := range offered[:min(len(offered), sheet.MostRows)] {
				options = append(options, app.Option().Value(name))
			}
			return app.DataList().ID(id + "-names").Body(options...)
		}))
}

// keepDate is when it was.
func (c *calculator) keepDate() app.UI {
	k := &c.keep
	const id = "keep-date"
	return c.keepCell(id, saveDate, saveDateTip,
		app.Input().Class("typed").ID(id).Name(id).Type("datetime-local").Value(k.date).Aria("describedby", id+"-hint").
			OnInput(c.keepInput(&k.date)))
}

// keepInput takes over what is typed into a field of the form.
func (c *calculator) keepInput(text *string) app.EventHandler {
	return func(ctx app.Context, _ app.Event) {
		*text = ctx.JSSrc().Get("value").String()
		c.keep.typed = true
		c.noteKeep()
	}
}

func (c *calculator) keepCell(id, name, hint string, input app.HTMLInput, more ...app.UI) app.UI {
	body := []app.UI{app.Label().For(id).Text(name)}
	wrong := c.keep.wrong == id
	if wrong {
		input = input.Aria("invalid", "true").Aria("describedby", strings.Join([]string{id + "-hint", id + "-problem"}, " "))
	}
	body = append(body, input, app.Span().Class("hint").ID(id+"-hint").Text(hint))
	if wrong {
		body = append(body, app.P().Class("problem").ID(id+"-problem").Text(c.keep.problem))
	}
	return app.Div().Class("field").Body(append(body, more...)...)
}
