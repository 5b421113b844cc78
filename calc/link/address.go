package link

import "strings"

// ReadAddress finds page and fragment in a pasted link, wherever it is hosted,
// or in a text with such a link in it. The fragment comes mended; said tells
// what was done, as from Mend.
func (site Site) ReadAddress(text string) (slug, fragment string, said []string, ok bool) {
	text = strings.TrimSpace(text)
	if len(text) > mostMend {
		text = text[:mostMend]
		said = append(said, "of a text as long as this only the first part is read")
	}
	for range 4 {
		if slug, rest, found := site.findLink(text); found {
			link, more := site.cutLink(rest)
			fragment, mended := site.Mend(link)
			return slug, Printable(fragment), append(append(said, more...), mended...), true
		}
		decoded := decode(text, anyByte)
		if decoded == text {
			break
		}
		text = decoded
		said = append(said[:0], saysEncoded)
	}
	return "", "", nil, false
}

// findLink returns the page of the first link in a text, and what follows its
// `#`. A text without one may be an address to a page alone.
func (site Site) findLink(text string) (slug, rest string, ok bool) {
	for at := 0; ; {
		i := strings.IndexByte(text[at:], '#')
		if i < 0 {
			break
		}
		i += at
		if slug, ok = site.slugOf(text[at:i]); ok {
			return slug, strings.TrimLeft(text[i:], "#"), true
		}
		at = i + 1
	}
	slug, ok = site.slugOf(text)
	return slug, "", ok
}

// mostAddress is how much before a `#` is looked at.
const mostAddress = 300 // bytes

// slugOf returns the page at the end of an address, which words and a redirect
// may stand before.
func (site Site) slugOf(before string) (string, bool) {
	before = before[max(0, len(before)-mostAddress):]
	joined, _ := plainCharacters(before) // it may be broken within the address
	for _, text := range []string{before, joined} {
		whole := text[strings.LastIndexAny(text, " \r\n\t<>\"'[]()")+1:]
		whole, _ = plainCharacters(decode(whole, anyByte))
		address, _, _ := strings.Cut(whole, "?")
		for _, a := range []string{address, whole} {
			a = strings.TrimSuffix(strings.TrimSuffix(a, "index.html"), "/")
			slug := a[strings.LastIndexByte(a, '/')+1:]
			if site.Page(slug) {
				return slug, true
			}
		}
	}
	return "", false
}

// cutLink takes a link out of the text that it begins. A space ends it, unless
// what follows is certainly more of the link. Where that is not certain the
// line is kept whole: it shows as a problem what belongs to no field.
func (site Site) cutLink(text string) (link string, said []string) {
	for from := 0; ; {
		i := strings.IndexFunc(text[from:], isBlank)
		if i < 0 {
			return text, said
		}
		i += from
		rest := strings.TrimLeftFunc(text[i:], isBlank)
		next := rest
		if end := strings.IndexFunc(rest, isBlank); end >= 0 {
			next = rest[:end]
		}
		gap := text[i : len(text)-len(rest)]
		switch {
		case rest == "":
			return text[:i], said
		case site.belongs(text[:i], next):
			if i > 0 && !strings.ContainsFunc(gap, isBreak) && !isMark(text[i-1]) && !isMark(next[0]) && !endsInEscape(text[:i]) {
				said = append(said, "spaces within values are left as they are")
			}
			from = len(text) - len(rest)
		case mayBelong(text[:i], next):
			line, _, _ := strings.Cut(rest, "\n")
			return text[:i] + " " + line, append(said, "where it ends is not certain, so the rest of its line is kept")
		default:
			return text[:i], append(said, saysBehind(rest))
		}
	}
}

// belongs reports whether the next word is certainly more of a link.
func (site Site) belongs(link, next string) bool {
	return next[0] == '&' || site.goesOn(next) || strings.HasSuffix(link, "&") && site.knows(next)
}

// mayBelong reports whether the next word may be more of a link: it is a figure or
// a mark, or the link before it ends where none does.
func mayBelong(link, next string) bool {
	return isFigure(next) || next[0] == ',' || next[0] == '%' || endsInEscape(link) || strings.HasSuffix(link, "=")
}

// isFigure reports whether a text begins as a figure does.
func isFigure(text string) bool {
	text = strings.TrimLeft(text, "-.")
	return text != "" && text[0] >= '0' && text[0] <= '9'
}
