package main

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/calculator"
	"striderule/app/frame"
	"striderule/app/log"
	"striderule/app/machines"
	"striderule/app/method"
	"striderule/app/site"
	"striderule/calc"
)

func init() { frame.Use(sitePages()) }

// sitePages returns all pages: the start page, the calculators, the log, and the method.
func sitePages() []site.Page {
	pages := []site.Page{{
		Path: "/", Menu: startMenu, Title: siteTitle, Description: siteAbout,
		New: func() app.Composer { return &startPage{} },
	}}
	for _, p := range calc.Pages {
		pages = append(pages, site.Page{
			Path: site.PathOf(p.Slug), Menu: p.Menu, Title: site.TitleOf(p.Title), Description: p.About,
			New: func() app.Composer { return calculator.New(p) },
		})
	}
	return append(pages, site.Page{
		Path: site.MachinesPath, Menu: machines.Name, Title: site.TitleOf(machines.Name), Description: machines.About,
		New: func() app.Composer { return &machines.Page{} },
	}, site.Page{
		Path: site.LogPath, Menu: logMenu, Title: site.TitleOf(logName), Description: logAbout,
		New: func() app.Composer { return &log.Page{} },
	}, site.Page{
		Path: site.MethodPath, Menu: method.Name, Title: site.TitleOf(method.Name), Description: method.About,
		New: func() app.Composer { return &method.Page{} },
	})
}
