package calc

import (
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/page/calibrate"
	"striderule/calc/page/convert"
	"striderule/calc/page/flow"
	"striderule/calc/page/parts"
	"striderule/calc/page/plan"
	"striderule/calc/page/rate"
	"striderule/calc/page/swap"
	"striderule/calc/sheet"
)

// Pages are the calculators, in the order of the menu. A new one is a folder
// in page and a line here.
var Pages = []sheet.Page{
	calibrate.Page,
	convert.Page,
	swap.Page,
	parts.Page,
	plan.Page,
	rate.Page,
	flow.Page,
}

// Run is Calibrate one card at a time: a page over the same sheet, with the same keys, and so no
// calculator of its own.
var Run = runPage()

func runPage() sheet.Page {
	p := calibrate.Page
	p.Slug, p.Menu, p.Title, p.Question, p.Tasks = "run", runMenu, runTitle, runQuestion, runTasks
	return p
}

// PageOf returns the page with a slug.
func PageOf(slug string) (sheet.Page, bool) {
	for _, p := range Pages {
		if p.Slug == slug {
			return p, true
		}
	}
	return Run, slug == Run.Slug
}

// site is what the mender of links knows of the pages.
var site = link.Site{Knows: isLinkKey, Page: func(slug string) bool { _, ok := PageOf(slug); return ok }}

// NewForm returns a page's form with nothing typed.
func NewForm(p sheet.Page) *form.Form { return form.Read(site, p, "") }

// Load returns the form that a link's fragment describes; see form.Read.
func Load(p sheet.Page, fragment string) *form.Form { return form.Read(site, p, fragment) }

// LoadWhole is Load for a fragment that was written here: of such a sheet nothing is cut off,
// however long it is.
func LoadWhole(p sheet.Page, fragment string) *form.Form { return form.ReadWhole(site, p, fragment) }

// Mend returns a link's fragment as it was before it was changed on its way; see link.Site.Mend.
func Mend(fragment string) (mended string, said []string) { return site.Mend(fragment) }

// ReadPost reads a sheet back from the plain text of its post; see form.ReadPost. Said tells that it
// was, and what in it was not understood.
func ReadPost(text string) (slug, fragment string, said []string, ok bool) {
	for _, p := range Pages {
		if f, said := form.ReadPost(p, text); f != nil {
			return p.Slug, f.Fragment(), said, true
		}
	}
	return "", "", nil, false
}

// ReadAddress finds page and fragment in a pasted link; see link.Site.ReadAddress.
func ReadAddress(text string) (slug, fragment string, said []string, ok bool) {
	return site.ReadAddress(text)
}
