package main

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/calculator"
	"striderule/app/frame"
	"striderule/app/log"
	"striderule/app/machines"
	"striderule/app/method"
	"striderule/app/run"
	"striderule/app/site"
	"striderule/calc"
	"striderule/calc/sheet"
)

func init() { frame.Use(sitePages()) }

// sheetPage is a page over the sheets of calc.
func sheetPage(p sheet.Page, make func() app.Composer) site.Page {
	return site.Page{Path: site.PathOf(p.Slug), Menu: p.Menu, Title: site.TitleOf(p.Title), Description: about.Of(p.Slug), New: make}
}

// sitePages returns all pages: the start page, the calculators, the log, and the method.
func sitePages() []site.Page {
	pages := []site.Page{{
		Path: "/", Menu: startMenu, Title: siteTitle, Description: about.Of(""),
		New: func() app.Composer { return &startPage{} },
	}}
	for i, p := range calc.Pages {
		pages = append(pages, sheetPage(p, func() app.Composer { return calculator.New(p) }))
		if i == 0 { // behind the page of the same sheet
			pages = append(pages, sheetPage(calc.Run, func() app.Composer { return &run.Page{} }))
		}
	}
	return append(pages, site.Page{
		Path: site.MachinesPath, Menu: machines.Name, Title: site.TitleOf(machines.Name), Description: about.Of("machines"),
		New: func() app.Composer { return &machines.Page{} },
	}, site.Page{
		Path: site.LogPath, Menu: logMenu, Title: site.TitleOf(logName), Description: about.Of("log"),
		New: func() app.Composer { return &log.Page{} },
	}, site.Page{
		Path: site.MethodPath, Menu: method.Name, Title: site.TitleOf(method.Name), Description: about.Of("method"),
		New: func() app.Composer { return &method.Page{} },
	})
}
