package frame

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/site"
)

// all are the pages of the site.
var all []site.Page

// Use has these pages in the menu.
func Use(pages []site.Page) { all = pages }

// Shell is the frame around every page: one line of head, which has its name and the menu, and
// the question that it answers.
func Shell(path, title, question string, content ...app.UI) app.UI {
	return app.Div().ID(pageID).Class("page").Body(
		app.A().Class("skip").Href("#main").Text(skipToContent),
		&topView{Path: path, Title: title},
		app.Main().ID("main").Body(append([]app.UI{app.P().Class("question").Text(question)}, content...)...),
		&footView{},
	)
}

const pageID = "page"

// Kept is the page as it shows already: see web/start.js.
func Kept() app.UI { return app.Div().ID(pageID).Class("page").DataSet("kept", pageID) }

func header(path, title string) app.UI {
	return app.Header().Class("top").Body(
		app.A().Class("brand").Href(site.Root()+"/").Aria("label", toStart.Fill("site", site.Name)).Body(
			app.Img().Class("mark").Src("/web/icon.svg").Alt("").Aria("hidden", "true").Width(28).Height(28).
				Attr("loading", "lazy"),
		),
		app.H1().ID("title").TabIndex(-1).Text(title),
		menu(path),
	)
}

// menu is closed until it is asked for: web/page.js closes it again.
func menu(path string) app.UI {
	var items []app.UI
	for _, p := range all {
		a := app.A().Href(site.Root() + p.Path).Text(p.Menu)
		if p.Path == path {
			a = a.Aria("current", "page")
		}
		items = append(items, app.Li().Body(a))
	}
	return app.Details().ID("menu").Class("menu").Body(
		app.Summary().Text(menuName),
		app.Nav().Aria("label", pagesName).Body(app.Ul().Body(items...)),
	)
}

func footer() app.UI {
	return app.Footer().Class("foot").Body(
		app.P().Text(nothingLeaves),
		app.P().Text(manualFirst),
	)
}

// A topView is the head of every page.
type topView struct {
	app.Compo
	Path, Title string
}

func (v *topView) Render() app.UI {
	Yield()
	return header(v.Path, v.Title)
}

// A footView is the foot of every page, and the last of its components.
type footView struct{ app.Compo }

func (v *footView) Render() app.UI {
	Finish()
	return footer()
}
