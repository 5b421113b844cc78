package main

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/calc"
	"striderule/calc/link"
)

// sitePage is one page of the site.
type sitePage struct {
	Path        string // "/", "/measure/"
	Menu        string // its name in the menu
	Title       string // document title
	Description string // meta description
	New         func() app.Composer
}

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

const siteName = "Striderule"

const logPath = "/log/"

func pathOf(slug string) string { return "/" + slug + "/" }

// root is the path of the folder that the site lies in, as it stands in addresses,
// without a last slash; empty while pages are generated, where links are made
// relative afterwards.
func root() string { return strings.TrimSuffix(app.Getenv("GOAPP_STATIC_RESOURCES_URL"), "/web") }

// namesOf are the paths that hosts have for the page at a path.
func namesOf(path string) []string {
	names := []string{path, path + "index.html"}
	if path != "/" {
		names = append(names, strings.TrimSuffix(path, "/"))
	}
	return names
}

// linkTo is the address of a page with a fragment, which may be empty. One out of the log
// may be anything, and go-app goes to no address with a broken escape.
func linkTo(path, fragment string) string {
	if fragment != "" {
		path += "#" + link.Printable(fragment)
	}
	return root() + path
}
