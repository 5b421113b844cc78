package link

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// A sort is one of the sorts of raw characters that links do not have.
type sort int

const (
	notRaw sort = iota // no such character
	rawBreak
	rawInvisible
	rawWide
	rawDash
	rawBlank
)

// mendRaw is mendCharacters as a repair.
func mendRaw(s string) (string, string) {
	mended, mends := mendCharacters(s)
	return mended, mendedCharacters[mends]
}

// mendCharacters takes raw characters back that links do not have: line
// breaks, also encoded ones, for no page writes them; what cannot be seen; wide
// letters and digits; long dashes. It takes back one sort at a time.
func mendCharacters(s string) (mended string, mends sort) {
	s = decode(s, isControlByte)
	var b strings.Builder
	for i := 0; i < len(s); {
		r, size := utf8.DecodeRuneInString(s[i:])
		to, is := plainRune(r, s[i+size:])
		if isBlank(r) {
			// A break goes with the spaces around it: lines are indented.
			blank := s[i : len(s)-len(strings.TrimLeftFunc(s[i:], isBlank))]
			if strings.ContainsFunc(blank, isBreak) {
				size, to, is = len(blank), "", rawBreak
			}
		}
		if mends == notRaw {
			mends = is
		}
		if is == notRaw || is != mends {
			to = s[i : i+size]
		}
		b.WriteString(to)
		i += size
	}
	return b.String(), mends
}

// plainRune returns what a raw character before next stands for, and of which sort it is;
// of none if it stands for itself.
func plainRune(r rune, next string) (to string, is sort) {
	switch {
	case isBreak(r):
		return "", rawBreak
	case unicode.Is(unicode.Cf, r):
		return "", rawInvisible
	case r > '~' && unicode.IsSpace(r):
		return " ", rawBlank
	case r >= '！' && r <= '～': // the wide forms stand in the order of ASCII
		return string(r - '！' + '!'), rawWide
	case (r >= '‐' && r <= '―' || r == '−') && next != "" && isAlnum(next[0]):
		return "-", rawDash
	}
	return "", notRaw
}

func isBreak(r rune) bool { return unicode.IsControl(r) || r == '\u2028' || r == '\u2029' }

func isBlank(r rune) bool { return isBreak(r) || unicode.IsSpace(r) }

// mendSpaces takes raw spaces out where no link has one: at its ends, beside
// its marks and in an escape. Within a value they may have been typed.
func mendSpaces(s string) (string, string) {
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		if s[i] == ' ' {
			before, after := b.String(), strings.TrimLeft(s[i:], " ")
			if before == "" || after == "" || isMark(before[len(before)-1]) || isMark(after[0]) || endsInEscape(before) {
				continue
			}
		}
		b.WriteByte(s[i])
	}
	if b.Len() == len(s) {
		return s, ""
	}
	return b.String(), mendedSpaces
}

func isMark(c byte) bool { return c == '&' || c == '=' || c == ',' }

// endsInEscape reports whether a text ends amid a percent escape.
func endsInEscape(s string) bool {
	return strings.HasSuffix(s, "%") || len(s) > 1 && s[len(s)-2] == '%' && strings.IndexByte(hex, upper(s[len(s)-1])) >= 0
}

// plainCharacters takes all raw characters of a text back, and returns which sort was
// the last.
func plainCharacters(s string) (plain string, last sort) {
	for {
		mended, mends := mendCharacters(s)
		if mends == notRaw {
			return s, last
		}
		s, last = mended, mends
	}
}
