package run

import (
	"strings"
	"unicode/utf8"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/kept"
	"striderule/app/whose"
	"striderule/calc/logbook"
	"striderule/calc/run"
	"striderule/calc/word"
)

// enter takes what was typed, key by key.
func (p *Page) enter(text string) {
	p.test.Enter(p.card, text)
	p.problem, p.doubt, p.instead = "", "", ""
	p.write()
	p.keep(p.began)
}

// press is a key of the pad; the empty one takes the last sign away.
func (p *Page) press(key string) {
	text := p.test.Text(p.card)
	if key == "" {
		_, last := utf8.DecodeLastRuneInString(text)
		text = text[:len(text)-last]
	}
	p.enter(text + key)
	p.refill()
}

// choose takes an option, and goes on.
func (p *Page) choose(word string) {
	p.test.Enter(p.card, word)
	p.next()
}

// next is what the main button does: with what was typed looked at, the card behind this one.
func (p *Page) next() {
	if p.test.Key(p.card) != "" && p.test.Options(p.card) == nil && !p.isFine() {
		return
	}
	p.test.Done(p.card)
	p.goTo(p.test.Next(p.card))
}

// isFine looks at what was typed: what is no number is not taken, what is unlikely is asked about
// once.
func (p *Page) isFine() bool {
	key, text := p.test.Key(p.card), strings.TrimSpace(p.test.Text(p.card))
	if text == "" {
		text = p.test.Usual(p.card)
		p.test.Enter(p.card, text)
	}
	says, instead := p.test.Doubts(p.card, text)
	switch {
	case says != "" && p.doubt == "":
		p.doubt, p.instead = says, instead
		p.Focus("run-doubt")
		return false
	case text == "":
		p.problem = typeIt.Fill("field", p.form.Label(key))
	default:
		p.problem = p.form.ProblemAt(key, p.card.Row())
	}
	if p.problem != "" {
		p.Focus(entryID)
	}
	return p.problem == ""
}

// takeInstead takes the reading that was meant, most likely.
func (p *Page) takeInstead() {
	text := p.instead
	if strings.Contains(p.test.Text(p.card), ",") {
		text = strings.Replace(text, ".", ",", 1)
	}
	p.enter(text)
	p.next()
}

// sent begins to count.
func (p *Page) sent() {
	browser.AllowSign()
	p.signed, p.since = false, browser.Clock()
	p.sentLines += sent(p.card)
	p.keep(browser.Milliseconds())
	p.tick()
}

// sent is a card as one of those whose lines were sent.
func sent(c run.Card) string { return "," + c.String() + "," }

// again makes the run of a card again, from another one on: its lines are to be sent again.
func (p *Page) again(of, from run.Card) {
	for of.Step = run.Zero; of.Step <= run.Down; of.Step++ {
		p.sentLines = strings.ReplaceAll(p.sentLines, sent(of), "")
	}
	p.goTo(from)
}

// left is how many seconds the move of the card still takes, with the moment to settle.
func (p *Page) left() float64 {
	return p.test.Seconds(p.card) + run.Settle - max(0, browser.Milliseconds()-p.began)/1000
}

// isCounting reports whether a move has begun whose time is known.
func (p *Page) isCounting() bool { return p.began > 0 && p.test.Seconds(p.card) > 0 }

// tick shows the time that is left, twice a second, and says when it is over. The browser's clock
// goes on while the device sleeps; the next tick comes when it wakes.
func (p *Page) tick() {
	if p.ticking || !p.isCounting() {
		return
	}
	p.ticking = true
	browser.After(500, func() {
		p.ctx.Dispatch(func(app.Context) {
			p.ticking = false
			if !p.Mounted() || !p.isCounting() {
				return
			}
			if p.left() > 0 {
				p.tick()
				return
			}
			if !p.signed && kept.IsSignOn() {
				browser.Sign()
			}
			p.signed = true
		})
	})
}

// setIt makes the answer the machine's setting, where the device has that.
func (p *Page) setIt() {
	if p.whose.CanSet() && !p.whose.SetIt() {
		return
	}
	p.next()
}

// saveIt saves the sheet to the log.
func (p *Page) saveIt() {
	m := p.machine()
	name, axis := m.Text("machine"), m.Text("axisname")
	if name == "" {
		name = strings.TrimSpace(p.saveAs)
	}
	if axis == "" {
		axis = logbook.AxisFor(p.form, logbook.Entry{})
	}
	if name == "" {
		p.problem = nameIt
		p.Focus("run-name")
		return
	}
	e, ok := logbook.Of(p.form, browser.Now(), name, axis, "")
	if !ok {
		p.problem = notSaved // there is nothing in the sheet, or more than a link holds
		return
	}
	if refused := whose.KeepOnce(e); refused != "" {
		p.problem = word.Together(notSaved, refused.Says())
		return
	}
	p.problem, p.saved = "", true
	kept.Run{}.Keep()
	p.Focus("run-saved")
}
