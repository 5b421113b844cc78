package main

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/frame"
	"striderule/app/log"
	"striderule/app/site"
	"striderule/calc"
)

func init() { frame.Use(sitePages()) }

// sitePages returns all pages: the start page, the calculators, the log, and the method.
func sitePages() []site.Page {
	pages := []site.Page{{
		Path: "/", Menu: "Start", Title: site.Name + ": motion scale put right after a hardware change",
		Description: "Free calculators for 3D printers and small machines: correct steps per mm or travel per motor turn from a measurement, convert between them, and see what a swapped part changes.",
		New:         func() app.Composer { return &startPage{} },
	}}
	for _, p := range calc.Pages {
		pages = append(pages, site.Page{
			Path: site.PathOf(p.Slug), Menu: p.Menu, Title: p.Title + " · " + site.Name, Description: p.About,
			New: func() app.Composer { return &calculator{page: p} },
		})
	}
	return append(pages, site.Page{
		Path: site.LogPath, Menu: "Log", Title: "Machine log · " + site.Name,
		Description: "What you kept of your machines' calibrations, on this device alone: a list, how each result changes with time, and files to take along.",
		New:         func() app.Composer { return &log.Page{} },
	}, site.Page{
		Path: "/method/", Menu: "Method", Title: "Method and cautions · " + site.Name,
		Description: "The formulas with their sources, a worked example, the keys of links, the cautions and a glossary.",
		New:         func() app.Composer { return &methodPage{} },
	})
}
