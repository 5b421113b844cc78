package link

import (
	"slices"
	"strings"
)

// knows reports whether a fragment has a key of a page with a value, and a
// version that ends where it should.
func (site Site) knows(s string) bool {
	known := false
	for _, p := range Split(s) {
		if p.Cells == nil || !site.Knows(p.Key) {
			continue
		}
		if p.Key == "v" && strings.ContainsAny(p.Cells[0], "&=") {
			return false
		}
		known = true
	}
	return known
}

// mendStart takes off a “?” that stands where a link's “#” did.
func (site Site) mendStart(s string) (string, string) {
	if rest, found := strings.CutPrefix(s, "?"); found && site.knows(rest) {
		return rest, mendedStart
	}
	return s, ""
}

// mendSemicolons takes back “;” for “&”, where what stands between them is all of fields.
func (site Site) mendSemicolons(s string) (string, string) {
	mended := strings.ReplaceAll(s, ";", "&")
	if mended == s || strings.Contains(s, "&") {
		return s, ""
	}
	for _, p := range Split(mended) {
		if p.Cells == nil || !site.Knows(p.Key) {
			return s, ""
		}
	}
	return mended, mendedSemicolons
}

// mendEncoding decodes a link whose own marks were encoded, or all of whose
// characters were changed: as it stands there is no field in it, decoded there
// is.
func (site Site) mendEncoding(s string) (string, string) {
	if strings.IndexByte(s, '%') < 0 || site.knows(s) {
		return s, ""
	}
	decoded := s
	for range 3 {
		if decoded = decode(decoded, anyByte); site.knows(decoded) {
			return decoded, mendedEncoding
		}
	}
	bare := decode(s, isHighByte)
	if plain, last := plainCharacters(bare); site.knows(plain) {
		return bare, mendedCharacters[last]
	}
	return s, ""
}

// mendEntities takes back `&amp;` for `&`: a key begins with the rest of it.
func (site Site) mendEntities(s string) (string, string) {
	pieces := strings.Split(s, "&")
	certain := false
	for i, raw := range pieces {
		cut := cutEntities(raw)
		key, _, _ := strings.Cut(cut, "=")
		certain = certain || cut != raw && i > 0 && site.Knows(Unescape(key))
	}
	if !certain {
		return s, ""
	}
	for i, raw := range pieces[1:] {
		pieces[i+1] = cutEntities(raw)
	}
	return strings.Join(pieces, "&"), mendedEntity
}

func cutEntities(raw string) string {
	for {
		rest := raw
		for _, code := range []string{"amp;", "#38;", "#038;", "#x26;", "#X26;"} {
			rest = strings.TrimPrefix(rest, code)
		}
		if rest == raw {
			return raw
		}
		raw = rest
	}
}

// mendMicro undoes what web pages make of `&micro`, the start of some keys: it
// is their code for µ, also without a semicolon. A link has no `=` there else.
func (site Site) mendMicro(s string) (string, string) {
	says := ""
	for _, micro := range []string{"µ", "%C2%B5", "%c2%b5"} {
		parts := strings.Split(s, micro)
		for i := 1; i < len(parts); i++ {
			key, _, found := strings.Cut(parts[i], "=")
			if found && site.Knows("micro"+key) {
				parts[i], says = "&micro"+parts[i], mendedMicro
			} else {
				parts[i] = micro + parts[i]
			}
		}
		s = strings.Join(parts, "")
	}
	return s, says
}

// mendKeys finds fields whose key, or the version, is hidden by encoded
// characters that no link has there. Such a change went over the whole link,
// which is then laid bare for mendCharacters.
func (site Site) mendKeys(s string) (string, string) {
	pieces := strings.Split(s, "&")
	says, everywhere := "", false
	for i, raw := range pieces {
		key, list, found := strings.Cut(raw, "=")
		if !found {
			continue
		}
		was := Unescape(key)
		if was == "v" {
			if plain, last := plainCharacters(decode(list, anyByte)); last != notRaw && isDigits(plain) && !isDigits(Unescape(list)) {
				says, everywhere = mendedCharacters[last], true
			}
		}
		if site.Knows(was) {
			continue
		}
		plain, last := plainCharacters(decode(key, anyByte))
		plain = strings.Map(func(r rune) rune { // a broken line, perhaps of a quote
			if isPut(r) {
				return -1
			}
			return r
		}, plain)
		if !site.Knows(plain) {
			continue
		}
		pieces[i] = plain + "=" + list
		if last != notRaw && last != rawBlank {
			says, everywhere = mendedCharacters[last], true
		} else if says == "" {
			says = mendedSpaces
		}
	}
	if says == "" {
		return s, ""
	}
	s = strings.Join(pieces, "&")
	if everywhere {
		s = decode(s, isHighByte)
	}
	return s, says
}

func isDigits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

// mendCommas decodes the commas of lists of figures, if it was no page that
// encoded the link.
func mendCommas(s string) (string, string) {
	pieces := strings.Split(s, "&")
	if !slices.ContainsFunc(pieces, isRewrittenClaim) {
		return s, ""
	}
	says := ""
	for i, raw := range pieces {
		key, list, _ := strings.Cut(raw, "=")
		cells := strings.Split(decode(list, func(c byte) bool { return c == ',' }), ",")
		if strings.Contains(list, ",") || len(cells) < 2 || !areFigures(cells) {
			continue
		}
		pieces[i] = key + "=" + strings.Join(cells, ",")
		says = mendedCommas
	}
	return strings.Join(pieces, "&"), says
}

// isRewrittenClaim reports whether a piece is a sender's result whose colons
// were encoded. Pages leave them as they are.
func isRewrittenClaim(raw string) bool {
	claim, found := strings.CutPrefix(raw, ClaimKey+"=")
	return found && decode(claim, func(c byte) bool { return c == ':' }) != claim
}

// areFigures reports whether texts begin as figures do, or are empty.
func areFigures(cells []string) bool {
	return !slices.ContainsFunc(cells, func(c string) bool { return c != "" && !isFigure(c) })
}

// EncodedTwice reports whether every percent sign in a fragment is an encoded
// one that begins an escape. Somebody may have typed that: it is no certain
// sign of a link that was encoded twice.
func EncodedTwice(fragment string) bool {
	n := 0
	for i := range len(fragment) {
		c, ok := escaped(fragment[i:])
		if !ok {
			continue
		}
		if c != '%' {
			return false
		}
		if _, twice := escaped("%" + fragment[i+3:]); !twice {
			return false
		}
		n++
	}
	return n > 0
}
