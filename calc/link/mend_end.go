package link

import (
	"strings"
	"unicode/utf8"

	"striderule/calc/word"
)

// endMarks are what sentences and markup put behind a link. A page encodes
// them where a link of its own would end in one.
const endMarks = ".,;:!?)]}>\"'»”’…*"

// mendEnd cuts off what stands behind a link without a space between.
func (site Site) mendEnd(s string) (string, string) {
	end := site.markupEnd(s)
	if end == len(s) {
		end = site.marksEnd(s)
	}
	if end == len(s) {
		return cutClaim(s)
	}
	return s[:end], saysBehind(s[end:])
}

func saysBehind(text string) string {
	return behindDropped.Fill("text", word.Clip(text, 40))
}

// mostMarks is how many places are looked at for the end of a link.
const mostMarks = 50

// markupEnd returns where a link ends that runs into markup: at a bracket that
// closes what was opened before the link, and the like. It does not end where
// the link goes on behind.
func (site Site) markupEnd(s string) int {
	tried := 0
	var open [1 << 8]int // brackets, by what closes them
	for i := range len(s) {
		c := s[i]
		ends := c == '<' || c == '>' || c == '"' || strings.HasPrefix(s[i:], "[/")
		switch c {
		case '(':
			open[')']++
		case '[', '{':
			open[c+2]++
		case ')', ']', '}':
			ends = open[c] == 0
			open[c] = max(0, open[c]-1)
		}
		if !ends {
			continue
		}
		if tried++; !site.goesOn(s[i:]) {
			return i
		}
		if tried == mostMarks {
			break
		}
	}
	return len(s)
}

func isClosing(c byte) bool { return c == ')' || c == ']' || c == '}' }

// goesOn reports whether a text holds another field of the link before it.
func (site Site) goesOn(s string) bool {
	s, _, _ = strings.Cut(s, "#")
	_, s, found := strings.Cut(s, "&")
	return found && site.knows(s)
}

// marksEnd returns where a link ends before the marks behind it. Brackets are
// markupEnd's: one that is still there was opened in the link.
func (site Site) marksEnd(s string) int {
	key, _, _ := strings.Cut(s[strings.LastIndexByte(s, '&')+1:], "=")
	known := site.Knows(key) // a field ends in no empty cell, but others may
	end := len(s)
	for end > 0 {
		if before, found := cutCode(s[:end]); found {
			end = len(before)
			continue
		}
		if key != ClaimKey && shortened(s[:end]) {
			break
		}
		r, size := utf8.DecodeLastRuneInString(s[:end])
		if !strings.ContainsRune(endMarks, r) || r == utf8.RuneError || isClosing(s[end-1]) || r == ',' && !known {
			break
		}
		end -= size
	}
	return end
}

// shortened reports whether a link may have been cut short: there are dots right
// behind it, and no other mark between. They stay, and what they stand in is a
// problem, where the rest of it would be another figure.
func shortened(s string) bool {
	before, found := strings.CutSuffix(s, "…")
	if !found {
		before, found = strings.CutSuffix(s, "..")
		before = strings.TrimRight(before, ".")
	}
	last, _ := utf8.DecodeLastRuneInString(before)
	return found && before != "" && (last == ',' || !strings.ContainsRune(endMarks, last))
}

// cutCode cuts off what web pages write for a mark.
func cutCode(s string) (before string, found bool) {
	for _, code := range []string{"&quot;", "&gt;", "&lt;", "&#39;", "&#34;", "&nbsp;"} {
		if before, found = strings.CutSuffix(s, code); found {
			return before, true
		}
	}
	return s, false
}

// cutClaim cuts marks off a sender's result at the end, encoded ones too: the
// result is written in letters and digits.
func cutClaim(s string) (string, string) {
	i := strings.LastIndexByte(s, '&') + 1
	key, list, found := strings.Cut(s[i:], "=")
	if !found || key != ClaimKey {
		return s, ""
	}
	claim := decode(list, anyByte)
	cut := strings.TrimRight(claim, endMarks)
	if cut == claim || cut == "" {
		return s, ""
	}
	return s[:i] + key + "=" + Escape(cut), saysBehind(claim[len(cut):])
}
