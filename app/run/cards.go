package run

import (
	"math"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/app/site"
	"striderule/app/view"
	"striderule/calc"
	"striderule/calc/machine"
	"striderule/calc/page/axis"
	"striderule/calc/report"
	"striderule/calc/run"
)

// entryID is the field of the card that shows.
const entryID = "run-entry"

// A look is what stands on a card, and what can be done, the main thing last.
type look struct {
	page *Page
	with string // what it has, for the style sheet
	body []app.UI
	acts []app.UI
}

func (l *look) add(ui ...app.UI) { l.body = append(l.body, ui...) }

func (l *look) text(class, text string) {
	if text != "" {
		l.add(app.P().Class(class).Text(view.Bound(text)))
	}
}

func (l *look) block(b report.Block) { l.add(view.Block(b, nil)) }

// twice is within what time a second tap is one that slipped, in ms.
const twice = 250

// button does nothing when the card has only just come: the tap was for the one before.
func (l *look) button(id, text string, do func()) app.HTMLButton {
	return frame.Button(id, text, func() {
		if browser.Clock()-l.page.since > twice {
			do()
		}
	})
}

func (l *look) act(id, text string, do func()) { l.acts = append(l.acts, l.button(id, text, do)) }

func (l *look) main(text string, do func()) {
	l.act("run-back", back, browser.GoBack)
	l.acts = append(l.acts, l.button("run-next", text, do).Class("run-main"))
}

func (p *Page) machine() machine.Axis { return machine.Axis(p.form.Machine()) }

func (p *Page) Render() app.UI {
	if !app.IsClient {
		return p.shell(p.overview())
	}
	l := look{page: p}
	title := p.test.Says(p.card)
	l.text("hint", p.test.Hint(p.card))
	if says := p.content(&l); title == "" {
		title = says
	}
	where := p.test.Head(p.card)
	if title := p.machine().Title(); title != "" {
		where = ofMachine.Fill("machine", title, "where", where)
	}
	return p.shell(app.Section().Class("run").ID("card").DataSet("card", p.card.String()).DataSet("with", l.with).Aria("labelledby", "card-says").Body(
		app.Div().Class("run-top").Body(
			app.Span().Text(where),
			app.A().ID("to-sheet").Href(p.toSheet()).Text(toTheSheet),
		),
		app.Div().Class("run-card").Body(append([]app.UI{app.H2().ID("card-says").TabIndex(-1).Text(view.Bound(title))}, l.body...)...),
		app.Div().Class("run-do").Body(l.acts...),
	))
}

func (p *Page) shell(content app.UI) app.UI { return frame.Shell(path, calc.Run.Menu, "", content) }

// overview is the page before the program is there.
func (p *Page) overview() app.UI {
	return app.Section().Class("part").Body(
		app.P().Class("ask").Text(beforeStart),
		view.Block(report.StepsOf(steps...), nil),
		app.A().Class("to-machines").Href(site.LinkTo(site.PathOf(machine.Page), "")).Text(toTheSheet),
	)
}

// content puts on a card what it has, and returns its title where the report has that.
func (p *Page) content(l *look) (title string) {
	c := p.card
	for _, n := range p.test.Cautions(c) {
		l.block(n)
	}
	switch key := p.test.Key(c); {
	case p.test.Options(c) != nil:
		p.options(l)
		return ""
	case key != "":
		p.entry(l, key)
		return ""
	case p.test.Lines(c) != nil:
		p.move(l)
		return ""
	}
	switch c.Step {
	case run.Ready:
		var points report.Sentences
		for _, point := range p.test.Points(c) {
			points = append(points, report.Text(view.Bound(point)))
		}
		l.block(report.Points{Items: points})
		l.main(allSeen, p.next)
	case run.Care:
		l.main(iAmReady, p.next)
	case run.Mark:
		p.picture(l)
		l.main(done, p.next)
	case run.After:
		return p.after(l)
	case run.Result:
		return p.result(l)
	case run.Set:
		return p.setting(l)
	case run.Save:
		p.record(l)
	default:
		_, blocks := p.test.Trouble(c)
		for _, b := range blocks {
			l.block(b)
		}
		l.main(tryAgain, func() { p.again(c, p.test.Next(c)) })
	}
	return ""
}

// picture is the drawing of the test.
func (p *Page) picture(l *look) {
	if d := p.form.Report().Picture; d != nil && !p.card.Check { // which is of the runs before
		l.block(*d)
	}
}

// options are those of a choice: a tap takes one and goes on. Before all of them stand the test that
// is being made already, and the machines of this device.
func (p *Page) options(l *look) {
	var all, links []app.UI
	link := func(id, fragment, text string) {
		links = append(links, app.A().ID(id).Href(site.LinkTo(path, fragment)).Text(text))
	}
	if p.form.Fragment() == "" {
		if r := kept.ReadRun(); r.IsBegun() {
			link("run-again", r.Fragment, takeUpAgain)
		}
		for _, a := range kept.ReadMachines().First(4) {
			link("run-machine-"+a.ID(), a.Fragment(), a.Title())
		}
	}
	if links != nil {
		l.add(app.Div().Class("run-options").Body(links...))
		l.text("hint", orAnother)
	}
	for _, o := range p.test.Options(p.card) {
		if o.Word != axis.OwnTool { // which asks for more
			all = append(all, l.button("option-"+o.Word, view.Bound(o.Label), func() { p.choose(o.Word) }))
		}
	}
	l.with = "options"
	l.add(app.Div().Class("run-options").Body(all...))
	l.act("run-back", back, browser.GoBack)
}

// entry is the field, and the pad for it. The system's keyboard does not come up while the pad is
// there; keys that somebody has go into the field.
func (p *Page) entry(l *look, key string) {
	p.picture(l)
	mode, text := "none", p.test.Text(p.card)
	if p.keyboard {
		mode = "decimal"
	}
	f, _ := p.form.Field(key)
	input := app.Input().ID(entryID).Class("typed").Type("text").Attr("inputmode", mode).AutoComplete(false).
		Aria("labelledby", "card-says").Aria("describedby", "run-problem").Aria("invalid", strconv.FormatBool(p.problem != "")).
		OnInput(func(ctx app.Context, _ app.Event) { p.enter(ctx.JSSrc().Get("value").String()) }).
		OnKeyDown(func(_ app.Context, e app.Event) {
			if browser.IsEnter(e) {
				e.PreventDefault()
				p.next()
			}
		})
	l.add(app.Div().Class("run-read").Body(input, app.Span().Class("unit").Text(view.QuantityOf(f, 0).Unit())),
		app.P().ID("run-problem").Class("problem-line").Attr("role", "alert").Text(p.problem))
	if !p.keyboard {
		p.pad(l)
	}
	if p.doubt == "" {
		p.troubles(l)
	}
	switch usual := p.test.Usual(p.card); {
	case p.doubt != "":
		yes := yesItIs.Fill("reading", text)
		l.acts = append(l.acts, app.Div().ID("run-doubt").Class("note doubt").TabIndex(-1).Attr("role", "alert").Text(view.Bound(p.doubt)))
		if p.instead == "" {
			l.main(yes, p.next)
			return
		}
		l.act("run-yes", yes, p.next)
		l.main(thatIsIt.Fill("reading", p.instead), p.takeInstead)
	case text == "" && usual != "":
		l.main(useUsual.Fill("value", usual), p.next)
	default:
		l.main(goOn, p.next)
	}
}

// keys of the pad: a point stands for the mark of the person's language.
const keys = "789456123.0"

func (p *Page) pad(l *look) {
	var all []app.UI
	for _, k := range keys {
		id, sign := "pad-"+string(k), string(k)
		if k == '.' {
			sign = browser.DecimalMark()
		}
		all = append(all, frame.Button(id, sign, func() { p.press(sign) }))
	}
	all = append(all, frame.Button("pad-erase", "⌫", func() { p.press("") }).Aria("label", erase))
	l.with = "pad"
	l.add(app.Div().Class("pad").Attr("role", "group").Aria("label", padName).Body(all...))
}

// troubles are what else may have happened, and the other keyboard.
func (p *Page) troubles(l *look) {
	names := [...]string{nothingMoved, otherWay, markWentIn}
	var all []app.UI
	for _, c := range p.test.Troubles(p.card) {
		all = append(all, frame.Button("trouble-"+c.Step.String(), names[c.Step-run.Still], func() { p.goTo(c) }))
	}
	text := useKeyboard
	if p.keyboard {
		text = usePad
	}
	all = append(all, frame.Button("run-keyboard", text, func() {
		p.keyboard = !p.keyboard
		p.Focus(entryID)
	}))
	l.add(app.Div().Class("run-chips").Body(all...))
}

// move is what to send, and the time that it takes.
func (p *Page) move(l *look) {
	p.picture(l)
	l.with = "lines"
	l.block(report.Code{ID: "send", Label: linesLabel, Text: strings.Join(p.test.Lines(p.card), "\n")})
	if p.test.Seconds(p.card) > 0 {
		text := signOff
		if kept.IsSignOn() {
			text = signOn
		}
		l.act("run-sign", text, func() { kept.KeepSign(!kept.IsSignOn()) })
	}
	left := p.left()
	switch {
	case p.began == 0 && strings.Contains(p.sentLines, sent(p.card)):
		l.text("hint", sentBefore)
		l.act("run-sent", iHaveSent, p.sent)
		l.main(goOn, p.next)
	case p.began == 0:
		l.text("hint", thenTap)
		if p.dims && p.card.N == 0 {
			l.text("hint", mayDim)
		}
		l.main(iHaveSent, p.sent)
	case !p.isCounting():
		l.text("hint", stay)
		l.main(itStopped, p.next)
	case left > 0:
		s := int(math.Ceil(left))
		l.add(app.P().ID("run-count").Class("run-count").Attr("role", "timer").Text(leftToWait.Fill("minutes", strconv.Itoa(s/60), "seconds", strconv.Itoa(s/10%6)+strconv.Itoa(s%10))))
		l.text("hint", stay)
		l.main(itStopped, p.next)
	default:
		l.text("run-count", itIsOver)
		l.main(goOn, p.next)
	}
}
