package link

import (
	"slices"
	"strings"

	"striderule/calc/lists"
)

// ReadAddress finds page and fragment in a pasted link, wherever it is hosted,
// or in a text with such a link in it. The fragment comes mended; said tells
// what was done, as from Mend.
func (site Site) ReadAddress(text string) (slug, fragment string, said []string, ok bool) {
	text = unquoted(strings.TrimSpace(text))
	if len(text) > mostMend {
		text = text[:mostMend]
		said = append(said, firstPart)
	}
	for range 4 {
		if slug, rest, found := site.findLink(text); found {
			fragment, more := site.mendLink(rest)
			return slug, Printable(fragment), append(said, more...), true
		}
		decoded := decode(text, anyByte)
		if decoded == text {
			break
		}
		text = decoded
		said = append(said[:0], mendedEncoding)
	}
	return "", "", nil, false
}

// mostWords is how many words are looked at for the rest of a link.
const mostWords = 12

// mendLink takes the link out of the text that it begins, and mends it. What belongs to it, the
// sum of its entries tells better than anything else.
func (site Site) mendLink(text string) (fragment string, said []string) {
	link, more := site.cutLink(text)
	fragment, said = site.Mend(link)
	if _, _, sum := sums(fragment); sum != "" && !isWhole(fragment) {
		end := 0
		for range mostWords {
			rest := strings.TrimLeftFunc(text[end:], isBlank)
			if rest == "" {
				break
			}
			end = len(text) - len(rest)
			if next := strings.IndexFunc(rest, isBlank); next >= 0 {
				end += next
			} else {
				end = len(text)
			}
			if longer, says := site.Mend(text[:end]); isWhole(longer) {
				return longer, says
			}
		}
	}
	if slices.Contains(said, mendedText) || slices.Contains(said, mendedSpaces) {
		more = lists.Keep(more, func(s string) bool { return s != spacesLeft })
	}
	return fragment, append(more, said...)
}

// unquoted takes off the marks that a reply puts before the lines that it quotes.
func unquoted(text string) string {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		if strings.HasPrefix(line, ">") {
			lines[i] = strings.TrimLeft(line, "> \t")
		}
	}
	return strings.Join(lines, "\n")
}

// findLink returns the page of the first link in a text, and what follows its
// `#`, or a `?` in its place. A text without one may be an address to a page alone.
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
	for i := range len(text) {
		query, _, _ := strings.Cut(text[i:], "#")
		if text[i] == '?' && site.knows(query[1:]) {
			if slug, ok = site.slugOf(text[:i]); ok {
				return slug, text[i:], true
			}
		}
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
				said = append(said, spacesLeft)
			}
			from = len(text) - len(rest)
		case mayBelong(text[:i], next):
			line, _, _ := strings.Cut(rest, "\n")
			return text[:i] + " " + line, append(said, openEnd)
		default:
			return text[:i], append(said, saysBehind(rest))
		}
	}
}

// belongs reports whether the next word is certainly more of a link.
func (site Site) belongs(link, next string) bool {
	key, _, found := strings.Cut(next, "=")
	return next[0] == '&' || site.goesOn(next) || strings.HasSuffix(link, "&") && site.knows(next) ||
		found && site.Knows(link[strings.LastIndexByte(link, '&')+1:]+key)
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
