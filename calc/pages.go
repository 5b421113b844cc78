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
