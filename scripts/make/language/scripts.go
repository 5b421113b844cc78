package language

import (
	"regexp"
	"slices"
	"strings"
)

// A scriptText is a string of a script.
type scriptText struct {
	at    int    // where it begins
	text  string // without its quotes; of a template string with its parts
	call  string // what it is handed to
	glued bool   // by + to something else
}

var (
	wordsFrom = regexp.MustCompile(`\b(?:const|var) words = {`)
	partOf    = regexp.MustCompile(`\${([^}]*)}`)
)

// wordsOfScript is where the words of a script of these texts stand: they are one object, at its top.
func wordsOfScript(script string, texts []scriptText) (from, to int) {
	if at := wordsFrom.FindStringIndex(script); at != nil {
		from, to = at[0], at[1]+closing(script[at[1]:], texts, at[1])
	}
	return from, to
}

// closing is where the brace ends that a script begins behind.
func closing(script string, texts []scriptText, offset int) int {
	depth := 1
	for i := 0; i < len(script); i++ {
		if k := slices.IndexFunc(texts, func(t scriptText) bool { return t.at == offset+i }); k >= 0 {
			i += len(texts[k].text) + 1
			continue
		}
		switch script[i] {
		case '{':
			depth++
		case '}':
			if depth--; depth == 0 {
				return i
			}
		}
	}
	return len(script)
}

// textsOfScript finds the strings of a script, past its remarks and patterns.
func textsOfScript(script string) (texts []scriptText) {
	var calls []string // that are open, by name
	name, last := "", byte('(')
	for i := 0; i < len(script); i++ {
		c := script[i]
		switch {
		case strings.HasPrefix(script[i:], "//"):
			i += strings.IndexByte(script[i:]+"\n", '\n')
			continue
		case strings.HasPrefix(script[i:], "/*"):
			i += strings.Index(script[i:]+"*/", "*/") + 1
			continue
		case c == '/' && strings.IndexByte("(,=:[!&|?{};", last) >= 0: // a pattern
			for i++; i < len(script) && script[i] != '/'; i++ {
				switch script[i] {
				case '\\':
					i++
				case '[':
					for ; script[i] != ']'; i++ {
						if script[i] == '\\' {
							i++
						}
					}
				}
			}
		case c == '"' || c == '\'' || c == '`':
			from := i
			for i++; i < len(script) && script[i] != c; i++ {
				if script[i] == '\\' {
					i++
				}
			}
			t := scriptText{at: from, text: script[from+1 : min(i, len(script))]}
			if len(calls) > 0 {
				t.call = calls[len(calls)-1]
			}
			t.glued = last == '+' || strings.HasPrefix(strings.TrimLeft(script[min(i+1, len(script)):], " \n"), "+")
			texts = append(texts, t)
		case c == '(':
			calls = append(calls, name)
		case c == ')' && len(calls) > 0:
			calls = calls[:len(calls)-1]
		}
		switch isName := c == '_' || c == '$' || 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || '0' <= c && c <= '9'; {
		case isName:
			name += string(c)
		case c != '(':
			name = ""
		}
		if c == '(' {
			name = ""
		}
		if c != ' ' && c != '\n' {
			last = c
		}
	}
	return texts
}
