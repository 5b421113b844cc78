package machines

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/frame"
	"striderule/app/kept"
	"striderule/calc/machine"
	"striderule/calc/sheet"
)

// broughtView is the list that came with a link.
func (p *Page) broughtView() app.UI {
	switch {
	case !app.IsClient || p.address == "":
		return app.Text("")
	case len(p.brought) == 0:
		return app.P().Class("problems").ID("brought-none").Text(noneInLink)
	}
	var items []app.UI
	toTake := 0
	for i, a := range p.brought {
		says, can := p.knownAs(a)
		var acts []app.UI
		if can == withAll {
			toTake++
		}
		if can != never {
			acts = append(acts, frame.Button("take-"+strconv.Itoa(i), saveOne, func() { p.take(p.brought[i:i+1], onlyIt) }))
		}
		items = append(items, item("brought-"+strconv.Itoa(i), a, says, acts))
	}
	return app.Section().Class(p.onScreen("part")).ID("brought").Body(
		app.H2().Text(fromLink),
		app.P().Class("hint").Text(aboutLink),
		app.Ul().Class("machines").Body(items...),
		app.If(p.left > 0, func() app.UI { return app.P().Class("hint").ID("brought-left").Text(leftOut.Fill(p.left)) }),
		app.If(toTake > 1, func() app.UI { return frame.Button("take-all", saveAll, func() { p.take(p.brought, withAll) }) }),
	)
}

// Whether an axis of a link can be saved.
type saving int

const (
	never  saving = iota
	onlyIt        // by its own button: it may be one that is here already
	withAll
)

// knownAs says what this device has of an axis of the link, and whether it can be saved.
func (p *Page) knownAs(a machine.Axis) (says string, can saving) {
	key, text := a.Setting()
	field, _ := p.checks.Field(key)
	if err := field.Cells.At(0).Set(text); err != nil {
		return badSetting.Fill("problem", sheet.ProblemWith(field, 0, err).Says), never
	}
	if own := p.kept.Of(a.ID()); own != nil {
		if own.Shown() == a.Shown() {
			return sameHere, never
		}
		return otherHere.Fill("setting", own.Since()), never
	}
	if like := p.kept.Alike(a); like != nil {
		return likeHere.Fill("machine", like.Title()), onlyIt
	}
	return "", withAll
}

// take saves axes of the link, less what they would send to a machine and nobody here has accepted.
func (p *Page) take(axes []machine.Axis, least saving) {
	n := 0
	for _, a := range axes {
		p.kept = kept.ReadMachines()
		if _, can := p.knownAs(a); can < least {
			continue
		}
		if !p.keep(p.kept.New(kept.Accepted(a)), "") {
			return
		}
		n++
	}
	p.said = savedFromLink.Fill(n)
	p.focus("machines-said")
}
