package link

// A Site is what the mender of links must know of the pages: it makes out by it what is
// a link and what is not.
type Site struct {
	Knows func(key string) bool  // whether a page has a field of this key, or a link this key
	Page  func(slug string) bool // whether there is such a page
}
