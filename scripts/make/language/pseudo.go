package language

import (
	"regexp"
	"strings"
	"unicode/utf8"
)

// Pseudo is the tag of a language that nobody speaks: what is not said in it has been forgotten,
// and what it does not fit into is too narrow.
const Pseudo = "xx"

var (
	accents = strings.NewReplacer("a", "à", "e", "é", "i", "í", "o", "ö", "u", "ü", "y", "ý", "A", "Å", "E", "Ë", "I", "Ï", "O", "Ø", "U", "Û", "Y", "Ý")
	asIs    = regexp.MustCompile(`\$?\{\w+\}|<[^<>]*>`)
)

// pseudo is a text in it: in brackets, its vowels with accents, and longer by a third.
func pseudo(says string) string {
	if says == "." { // the decimal mark
		return ","
	}
	var b strings.Builder
	b.WriteString("«")
	rest := says
	for rest != "" {
		at := asIs.FindStringIndex(rest)
		if at == nil {
			at = []int{len(rest), len(rest)}
		}
		b.WriteString(accents.Replace(rest[:at[0]]) + rest[at[0]:at[1]])
		rest = rest[at[1]:]
	}
	more := (utf8.RuneCountInString(says) + 2) / 3
	for i := range more {
		if i%6 == 0 {
			b.WriteString(" ")
		} else {
			b.WriteString("ö")
		}
	}
	b.WriteString("»")
	return b.String()
}
