package main

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/calc"
)

// sitePages returns all pages: the start page, the calculators, the log, and the method.
func sitePages() []sitePage {
	pages := []sitePage{{
		Path: "/", Menu: "Start", Title: siteName + ": motion scale put right after a hardware change",
		Description: "Free calculators for 3D printers and small machines: correct steps per mm or travel per motor turn from a measurement, convert between them, and see what a swapped part changes.",
		New:         func() app.Composer { return &startPage{} },
	}}
	for _, p := range calc.Pages {
		pages = append(pages, sitePage{
			Path: pathOf(p.Slug), Menu: p.Menu, Title: p.Title + " · " + siteName, Description: p.About,
			New: func() app.Composer { return &calculator{page: p} },
		})
	}
	return append(pages, sitePage{
		Path: logPath, Menu: "Log", Title: "Machine log · " + siteName,
		Description: "What you kept of your machines' calibrations, on this device alone: a list, how each result changes with time, and files to take along.",
		New:         func() app.Composer { return &logPage{} },
	}, sitePage{
		Path: "/method/", Menu: "Method", Title: "Method and cautions · " + siteName,
		Description: "The formulas with their sources, a worked example, the keys of links, the cautions and a glossary.",
		New:         func() app.Composer { return &methodPage{} },
	})
}
