package site

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/calc/link"
)

// Page is one page of the site.
type Page struct {
	Path        string // "/", "/measure/"
	Menu        string // its name in the menu
	Title       string // document title
	Description string // meta description
	New         func() app.Composer
}

// Paths of pages that are no calculators.
const (
	LogPath      = "/log/"
	MethodPath   = "/method/"
	MachinesPath = "/machines/"
)

// PathOf is the path of a calculator.
func PathOf(slug string) string { return "/" + slug + "/" }

// Root is the path of the folder that the site lies in, as it stands in addresses,
// without a last slash; empty while pages are generated, where links are made
// relative afterwards.
func Root() string { return strings.TrimSuffix(app.Getenv("GOAPP_STATIC_RESOURCES_URL"), "/web") }

// NamesOf are the paths that hosts have for the page at a path.
func NamesOf(path string) []string {
	names := []string{path, path + "index.html"}
	if path != "/" {
		names = append(names, strings.TrimSuffix(path, "/"))
	}
	return names
}

// LinkTo is the address of a page with a fragment, which may be empty. One out of the log
// may be anything, and go-app goes to no address with a broken escape.
func LinkTo(path, fragment string) string {
	if fragment != "" {
		path += "#" + link.Printable(fragment)
	}
	return Root() + path
}

// TitleOf is what a browser calls a page, by the page's own name.
func TitleOf(page string) string { return titled.Fill("page", page) }
