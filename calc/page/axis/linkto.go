package axis

import (
	"striderule/calc/link"
	"striderule/calc/report"
)

// An Filling fills one field of another page: its key and its texts, one a row.
type Filling struct {
	Key   string
	texts []string
}

// Fill fills one field, with a text a row.
func Fill(key string, texts ...string) Filling { return Filling{key, texts} }

// Fills fills several fields, with one text each.
func Fills(keysAndTexts ...string) []Filling {
	var all []Filling
	for i := 0; i < len(keysAndTexts); i += 2 {
		all = append(all, Fill(keysAndTexts[i], keysAndTexts[i+1]))
	}
	return all
}

// LinkTo makes a link to another page, filled in; entries without text are left
// out. They stand in the order of that page's fields, so that the link is
// canonical.
func LinkTo(text, slug string, entries ...Filling) report.Link {
	pieces := []link.Piece{{Key: "v", Cells: []string{link.Version}}}
	for _, e := range entries {
		n := len(e.texts)
		for n > 0 && e.texts[n-1] == "" {
			n--
		}
		if n > 0 {
			pieces = append(pieces, link.Piece{Key: e.Key, Cells: e.texts[:n]})
		}
	}
	if len(pieces) == 1 {
		pieces = nil // the link to an empty page is empty
	}
	return report.Link{Text: text, Slug: slug, Fragment: link.Join(pieces)}
}

// ScaleVerified is how a page says to that of the flow that the setting is right.
const ScaleVerified = "verified"
