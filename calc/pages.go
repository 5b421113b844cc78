package calc

// Pages are the calculators, in the order of the menu. A new one is a file
// beside this and a name here.
var Pages = []Page{
	measurePage,
	convertPage,
	swapPage,
	partsPage,
	planPage,
	ratePage,
	flowPage,
}

// PageOf returns the page with a slug.
func PageOf(slug string) (Page, bool) {
	for _, p := range Pages {
		if p.Slug == slug {
			return p, true
		}
	}
	return Page{}, false
}

// site is what the mender of links knows of the pages.
var site = Site{Knows: isLinkKey, Page: func(slug string) bool { _, ok := PageOf(slug); return ok }}

// NewForm returns a page's form with nothing typed.
func NewForm(p Page) *Form { return ReadForm(site, p, "") }

// Load returns the form that a link's fragment describes; see ReadForm.
func Load(p Page, fragment string) *Form { return ReadForm(site, p, fragment) }

// LoadWhole is Load for a fragment that was written here: of such a sheet nothing is cut off,
// however long it is.
func LoadWhole(p Page, fragment string) *Form { return ReadWholeForm(site, p, fragment) }

// Mend returns a link's fragment as it was before it was changed on its way; see Site.Mend.
func Mend(fragment string) (mended string, said []string) { return site.Mend(fragment) }

// ReadAddress finds page and fragment in a pasted link; see Site.ReadAddress.
func ReadAddress(text string) (slug, fragment string, said []string, ok bool) {
	return site.ReadAddress(text)
}
