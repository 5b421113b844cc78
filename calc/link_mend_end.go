package calc

import (
	"strings"
	"unicode/utf8"
)

// endMarks are what sentences and markup put behind a link. A page encodes
// them where a link of its own would end in one.
const endMarks = ".,;:!?)]}>\"'»”’…*"

// mendEnd cuts off what stands behind a link without a space between.
func mendEnd(s string) (string, string) {
	end := markupEnd(s)
	if end == len(s) {
		end = marksEnd(s)
	}
	if end == len(s) {
		return cutClaim(s)
	}
	return s[:end], saysBehind(s[end:])
}

func saysBehind(text string) string { return quote(clip(text, 40)) + " behind it is left out" }

// clip shortens a text that is told to most characters.
func clip(text string, most int) string {
	text = OneLine(strings.TrimSpace(text))
	if utf8.RuneCountInString(text) > most {
		return string([]rune(text)[:most]) + "…"
	}
	return text
}

// markupEnd returns where a link ends that runs into markup: at a bracket that
// closes what was opened before the link, and the like. It does not end where
// the link goes on behind.
func markupEnd(s string) int {
	for i := range len(s) {
		ends := strings.IndexByte(`<>"`, s[i]) >= 0 || strings.HasPrefix(s[i:], "[/") ||
			isClosing(s[i]) && strings.Count(s[:i], opening(s[i])) <= strings.Count(s[:i], s[i:i+1])
		if ends && !goesOn(s[i:]) {
			return i
		}
	}
	return len(s)
}

func isClosing(c byte) bool { return c == ')' || c == ']' || c == '}' }

func opening(c byte) string {
	if c == ')' {
		return "("
	}
	return string(rune(c - 2)) // [ ] and { } stand two apart
}

// goesOn reports whether a text holds another field of the link before it.
func goesOn(s string) bool {
	s, _, _ = strings.Cut(s, "#")
	_, s, found := strings.Cut(s, "&")
	return found && knows(s)
}

// marksEnd returns where a link ends before the marks behind it. A bracket
// that was opened in the link belongs to it.
func marksEnd(s string) int {
	key, _, _ := strings.Cut(s[strings.LastIndexByte(s, '&')+1:], "=")
	known := linkKeys()[key] // a field ends in no empty cell, but others may
	end := len(s)
	for end > 0 {
		r, size := utf8.DecodeLastRuneInString(s[:end])
		if !strings.ContainsRune(endMarks, r) || r == utf8.RuneError || r == ',' && !known {
			break
		}
		if isClosing(s[end-1]) && strings.Count(s[:end], opening(s[end-1])) >= strings.Count(s[:end], s[end-1:end]) {
			break
		}
		end -= size
	}
	for _, code := range []string{"&quot;", "&gt;", "&lt;", "&#39;", "&#34;", "&nbsp;"} {
		// Its semicolon is the last mark.
		if before, found := strings.CutSuffix(s[:end], code[:len(code)-1]); found && end < len(s) && s[end] == ';' {
			end = len(before)
		}
	}
	return end
}

// cutClaim cuts marks off a sender's result at the end, encoded ones too: the
// result is written in letters and digits.
func cutClaim(s string) (string, string) {
	i := strings.LastIndexByte(s, '&') + 1
	key, list, found := strings.Cut(s[i:], "=")
	if !found || key != claimKey {
		return s, ""
	}
	claim := decode(list, anyByte)
	cut := strings.TrimRight(claim, endMarks)
	if cut == claim || cut == "" {
		return s, ""
	}
	return s[:i] + key + "=" + escape(cut), saysBehind(claim[len(cut):])
}
