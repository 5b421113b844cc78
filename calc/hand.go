package calc

// An entry fills one field of another page: its key and its texts, one a row.
type entry struct {
	key   string
	texts []string
}

func fill(key string, texts ...string) entry { return entry{key, texts} }

// fills fills several fields, with one text each.
func fills(keysAndTexts ...string) []entry {
	var all []entry
	for i := 0; i < len(keysAndTexts); i += 2 {
		all = append(all, fill(keysAndTexts[i], keysAndTexts[i+1]))
	}
	return all
}

// hand makes a link to another page, filled in; entries without text are left
// out. They stand in the order of that page's fields, so that the link is
// canonical.
func hand(text, slug string, entries ...entry) Link {
	pieces := []Piece{{"v", []string{Version}}}
	for _, e := range entries {
		n := len(e.texts)
		for n > 0 && e.texts[n-1] == "" {
			n--
		}
		if n > 0 {
			pieces = append(pieces, Piece{e.key, e.texts[:n]})
		}
	}
	if len(pieces) == 1 {
		pieces = nil // the link to an empty page is empty
	}
	return Link{text, slug, Join(pieces)}
}

// scaleVerified is how a page says to that of the flow that the setting is right.
const scaleVerified = "verified"
