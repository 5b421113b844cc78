package link

import (
	"slices"
	"strings"
	"unicode/utf8"

	"striderule/calc/word"
)

// Links are changed on their way: by mail that wraps lines, by forums that
// encode what is encoded, by word processors that like long dashes. Mend takes
// back what certainly was no part of the link. The evidence is what no page
// ever writes: a raw character outside the links' alphabet, a field's key that
// the change hides, a broken mark of the version; and the sum that a link says of its
// entries (see sum.go). Without such evidence the
// text stays, and is shown as the problem that it is.

// A repair returns a fragment as it was before one sort of change, and says
// in a sentence what was done; it says nothing if it did nothing.
type repair func(site Site, fragment string) (mended, says string)

var repairs = []repair{
	Site.mendStart, Site.mendSemicolons, anywhere(mendRaw), anywhere(mendSpaces), Site.mendEncoding, Site.mendEntities, Site.mendMicro, Site.mendKeys,
	anywhere(mendCommas), Site.mendEnd,
}

// anywhere is a repair that needs to know of no page.
func anywhere(mend func(fragment string) (mended, says string)) repair {
	return func(_ Site, fragment string) (string, string) { return mend(fragment) }
}

// mostMend is the length in bytes up to which a text is looked through. A link
// that was encoded several times is longer than MostLink.
const mostMend = 8 * MostLink

// Mend returns a link's fragment as it was before it was changed on its way,
// and what was mended, a sentence each. Without such a sentence it returns the
// fragment as it is; mending again what was mended changes nothing.
func (site Site) Mend(text string) (fragment string, said []string) {
	if text == "" || len(text) > mostMend {
		return text, nil
	}
	fragment = text
	for again := true; again; {
		again = false
		for _, mend := range repairs {
			mended, says := mend(site, fragment)
			if says == "" {
				continue
			}
			fragment, again = mended, true
			if !slices.Contains(said, says) {
				said = append(said, says)
			}
		}
	}
	if said != nil {
		fragment = Printable(fragment)
	}
	for _, damaged := range []string{fragment, text} {
		if restored, says := restore(damaged); says != "" {
			return restored, append(said, says)
		}
	}
	if plain := Printable(decode(fragment, isMark)); !isWhole(fragment) && isWhole(plain) {
		return plain, append(said, mendedEncoding)
	}
	return fragment, said
}

// MendedNotice tells what Mend did.
func MendedNotice(said []string) string {
	first := mendedFirst
	if said[0] == FromPost {
		first = ""
	}
	return word.Together(first, word.Together(said...), mendedLast)
}

// inFragment are the marks that may stand in a fragment beside letters and
// digits (RFC 3986, 3.5). Others are escaped by some readers, and then all
// that was escaped before is decoded with them.
const inFragment = "-._~!$&'()*+,;=:@/?"

// Printable escapes what an address cannot hold as it is, the sign of a broken escape
// included.
func Printable(fragment string) string {
	var b strings.Builder
	s := fragment
	for i := range len(s) {
		_, isEscape := escaped(s[i:])
		if isEscape || isAlnum(s[i]) || strings.IndexByte(inFragment, s[i]) >= 0 {
			b.WriteByte(s[i])
		} else {
			writeEscape(&b, s[i])
		}
	}
	return b.String()
}

// decode decodes the escapes of some bytes and leaves everything else.
func decode(s string, some func(byte) bool) string {
	if strings.IndexByte(s, '%') < 0 {
		return s
	}
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		if c, ok := escaped(s[i:]); ok && some(c) {
			b.WriteByte(c)
			i += 2
		} else {
			b.WriteByte(s[i])
		}
	}
	return b.String()
}

func anyByte(byte) bool { return true }

func isControlByte(c byte) bool { return c < ' ' || c == 0x7F }

func isHighByte(c byte) bool { return c >= utf8.RuneSelf }

// escaped reads the percent escape at the front of a text.
func escaped(s string) (byte, bool) {
	if len(s) < 3 || s[0] != '%' {
		return 0, false
	}
	hi, lo := strings.IndexByte(hex, upper(s[1])), strings.IndexByte(hex, upper(s[2]))
	return byte(hi<<4 | lo), hi >= 0 && lo >= 0
}
