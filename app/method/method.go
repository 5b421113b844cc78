package method

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/frame"
	"striderule/app/site"
)

// Page tells how the numbers come about and how links are made up. All of it is written when the
// site is built: the program keeps it as it came, and does not carry its texts.
type Page struct {
	app.Compo
	shown bool // the page as it came is this one
}

func (p *Page) OnNav(ctx app.Context) {
	frame.Arrived(ctx)
	ctx.PreventUpdate() // nothing of it shows
	if !frame.IsBuilding() && !browser.Has("formulas") {
		browser.LoadAgain() // from another page: this one comes from the host
	}
}

func (p *Page) Render() app.UI {
	if frame.IsBuilding() && browser.Has("formulas") {
		p.shown = true
		frame.Finish()
	}
	if p.shown {
		return frame.Kept()
	}
	return frame.Shell(site.MethodPath, Name, question, chapters()...)
}
