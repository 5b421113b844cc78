package link

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

const (
	saysBreaks    = "line breaks are taken out"
	saysInvisible = "characters that cannot be seen are taken out"
	saysWide      = "wide letters and digits are read as plain ones"
	saysDash      = "a long dash is read as a minus"
	saysBlank     = "special spaces are read as plain ones"
	saysSpaces    = "spaces are taken out"
)

// mendCharacters takes raw characters back that links do not have: line
// breaks, also encoded ones, for no page writes them; what cannot be seen; wide
// letters and digits; long dashes. It takes back one sort at a time.
func mendCharacters(s string) (string, string) {
	s = decode(s, isControlByte)
	var b strings.Builder
	says := ""
	for i := 0; i < len(s); {
		r, size := utf8.DecodeRuneInString(s[i:])
		to, why := plainRune(r, s[i+size:])
		if isBlank(r) {
			// A break goes with the spaces around it: lines are indented.
			blank := s[i : len(s)-len(strings.TrimLeftFunc(s[i:], isBlank))]
			if strings.ContainsFunc(blank, isBreak) {
				size, to, why = len(blank), "", saysBreaks
			}
		}
		if says == "" {
			says = why
		}
		if why == "" || why != says {
			to = s[i : i+size]
		}
		b.WriteString(to)
		i += size
	}
	return b.String(), says
}

// plainRune returns what a raw character before next stands for, and why; why
// is empty if it stands for itself.
func plainRune(r rune, next string) (to, why string) {
	switch {
	case isBreak(r):
		return "", saysBreaks
	case unicode.Is(unicode.Cf, r):
		return "", saysInvisible
	case r > '~' && unicode.IsSpace(r):
		return " ", saysBlank
	case r >= '！' && r <= '～': // the wide forms stand in the order of ASCII
		return string(r - '！' + '!'), saysWide
	case (r >= '‐' && r <= '―' || r == '−') && next != "" && isAlnum(next[0]):
		return "-", saysDash
	}
	return "", ""
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
	return b.String(), saysSpaces
}

func isMark(c byte) bool { return c == '&' || c == '=' || c == ',' }

// endsInEscape reports whether a text ends amid a percent escape.
func endsInEscape(s string) bool {
	return strings.HasSuffix(s, "%") || len(s) > 1 && s[len(s)-2] == '%' && strings.IndexByte(hex, upper(s[len(s)-1])) >= 0
}

// plainCharacters takes all raw characters of a text back, and says what was
// done last.
func plainCharacters(s string) (plain, says string) {
	for {
		mended, why := mendCharacters(s)
		if why == "" {
			return s, says
		}
		s, says = mended, why
	}
}
