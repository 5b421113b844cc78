package calc

import (
	"slices"
	"strings"
)

const (
	saysEncoded = "it was percent-encoded once too often"
	saysCommas  = "commas between values were percent-encoded"
	saysEntity  = "the code that web pages write for “&” is read as “&”"
	saysMicro   = "“µ” is read as “&micro”"
)

// knows reports whether a fragment has a key of a page with a value, and a
// version that ends where it should.
func knows(s string) bool {
	known := false
	for _, p := range Split(s) {
		if p.Cells == nil || !linkKeys()[p.Key] {
			continue
		}
		if p.Key == "v" && strings.ContainsAny(p.Cells[0], "&=") {
			return false
		}
		known = true
	}
	return known
}

// mendEncoding decodes a link whose own marks were encoded: as it stands there
// is no field in it, decoded there is.
func mendEncoding(s string) (string, string) {
	if strings.IndexByte(s, '%') < 0 || knows(s) {
		return s, ""
	}
	decoded := s
	for range 3 {
		if decoded = decode(decoded, anyByte); knows(decoded) {
			return decoded, saysEncoded
		}
	}
	return s, ""
}

// mendEntities takes back `&amp;` for `&`: a key begins with the rest of it.
func mendEntities(s string) (string, string) {
	pieces := strings.Split(s, "&")
	certain := false
	for i, raw := range pieces {
		cut := cutEntities(raw)
		key, _, _ := strings.Cut(cut, "=")
		certain = certain || cut != raw && i > 0 && linkKeys()[unescape(key)]
	}
	if !certain {
		return s, ""
	}
	for i, raw := range pieces[1:] {
		pieces[i+1] = cutEntities(raw)
	}
	return strings.Join(pieces, "&"), saysEntity
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
func mendMicro(s string) (string, string) {
	for _, micro := range []string{"µ", "%C2%B5", "%c2%b5"} {
		for i := 0; i < len(s); i++ {
			rest, found := strings.CutPrefix(s[i:], micro)
			if !found {
				continue
			}
			if key, _, ok := strings.Cut(rest, "="); ok && linkKeys()["micro"+key] {
				return s[:i] + "&micro" + rest, saysMicro
			}
		}
	}
	return s, ""
}

// mendKeys finds fields whose key, or the version, is hidden by encoded
// characters that no link has there. Such a change went over the whole link,
// which is then laid bare for mendCharacters.
func mendKeys(s string) (string, string) {
	pieces := strings.Split(s, "&")
	says, everywhere := "", false
	for i, raw := range pieces {
		key, list, found := strings.Cut(raw, "=")
		if !found {
			continue
		}
		was := unescape(key)
		if was == "v" {
			if plain, why := plainCharacters(list); why != "" && isDigits(plain) && !isDigits(unescape(list)) {
				says, everywhere = why, true
			}
		}
		if linkKeys()[was] {
			continue
		}
		plain, why := plainCharacters(key)
		if plain = strings.TrimSpace(plain); !linkKeys()[plain] {
			continue
		}
		pieces[i] = plain + "=" + list
		if why != "" && why != saysBlank {
			says, everywhere = why, true
		} else if says == "" {
			says = saysSpaces
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

// mendCommas decodes the commas of lists of figures, if somebody else than a
// page encoded the link: pages leave `:` and `/` and their like as they are.
func mendCommas(s string) (string, string) {
	foreign := false
	for i := 0; i+3 < len(s); i++ { // a page guards the last character
		c, ok := escaped(s[i:])
		foreign = foreign || ok && strings.IndexByte("-._~/:", c) >= 0
	}
	if !foreign {
		return s, ""
	}
	says := ""
	pieces := strings.Split(s, "&")
	for i, raw := range pieces {
		key, list, _ := strings.Cut(raw, "=")
		cells := strings.Split(decode(list, func(c byte) bool { return c == ',' }), ",")
		if strings.Contains(list, ",") || len(cells) < 2 || !areFigures(cells) {
			continue
		}
		pieces[i] = key + "=" + strings.Join(cells, ",")
		says = saysCommas
	}
	return strings.Join(pieces, "&"), says
}

// areFigures reports whether texts begin as figures do, or are empty.
func areFigures(cells []string) bool {
	return !slices.ContainsFunc(cells, func(c string) bool { return c != "" && !isFigure(c) })
}
