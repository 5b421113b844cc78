package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// technical are strings in scripts that are nobody's words.
var technical = []string{
	"use strict",
	"striderule ",                   // the beginning of a cache's name
	" or ",                          // between the units that an output may have
	".headline data", ".bar strong", // selectors with a name
	"Error", "Files", "Enter", "Escape", // names of the browser's own
}

// asking are calls whose strings are selectors, queries and rules of style.
var asking = []string{"querySelector", "querySelectorAll", "matches", "closest", "matchMedia", "replaceSync"}

// A scriptText is a string of a script.
type scriptText struct {
	at    int    // where it begins
	text  string // without its quotes; of a template string with its parts
	call  string // what it is handed to
	glued bool   // by + to something else
}

var (
	plainPart = regexp.MustCompile(`^[a-z]+$`)
	wordsFrom = regexp.MustCompile(`\b(?:const|var) words = {`)
	gluedWord = regexp.MustCompile(`\bwords\.\w+(?:\([^()]*\))?\s*\+|\+\s*words\.`)
	partOf    = regexp.MustCompile(`\${([^}]*)}`)
)

// faultsOfScript holds a script to what the words files are held to: its texts stand together
// at the top, as words, each whole. It returns those texts as well.
func faultsOfScript(name, script string) (faults, words []string) {
	texts := textsOfScript(script)
	from, to := 0, 0
	if at := wordsFrom.FindStringIndex(script); at != nil {
		from, to = at[0], at[1]+closing(script[at[1]:], texts, at[1])
	}
	say := func(at int, format string, args ...any) {
		faults = append(faults, fmt.Sprintf("%s:%d: ", name, 1+strings.Count(script[:at], "\n"))+fmt.Sprintf(format, args...))
	}
	if before := codeLines(script[:from]); before > 3 {
		say(from, "the words stand behind %d lines", before)
	}
	for _, t := range texts {
		inside := from < t.at && t.at < to
		if inside {
			words = append(words, t.text)
		}
		parts := partOf.FindAllStringSubmatch(t.text, -1)
		isSaid := said.MatchString(partOf.ReplaceAllString(t.text, "x")) && !slices.Contains(technical, t.text) && !slices.Contains(asking, t.call)
		if isSaid && !inside {
			say(t.at, "%q is said outside of the words", t.text)
		}
		if (isSaid || inside) && t.glued {
			say(t.at, "%q is glued to another text", t.text)
		}
		for _, p := range parts {
			if (isSaid || inside) && !plainPart.MatchString(p[1]) {
				say(t.at, "the part %q is not a name or a number", p[1])
			}
		}
	}
	for _, at := range gluedWord.FindAllStringIndex(script, -1) {
		say(at[0], "a text is glued to another")
	}
	return faults, words
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

func codeLines(script string) (n int) {
	for line := range strings.Lines(script) {
		if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "//") {
			n++
		}
	}
	return n
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

// TestWordsOfScripts is TestWords for the scripts of the page.
func TestWordsOfScripts(t *testing.T) {
	files, err := filepath.Glob("../web/*.js")
	require.NoError(t, err)
	list := &strings.Builder{}
	for _, file := range append(files, "pages/lost.js") {
		script, err := os.ReadFile(file)
		require.NoError(t, err)
		name := strings.TrimPrefix(filepath.ToSlash(file), "../")
		faults, words := faultsOfScript(name, string(script))
		assert.Empty(t, faults)
		for _, text := range words {
			fmt.Fprintf(list, "%s\t%s\n", name, text)
		}
	}
	assert.Greater(t, strings.Count(list.String(), "\n"), 35)
	require.NoError(t, os.MkdirAll("../.build", 0o755))
	require.NoError(t, os.WriteFile("../.build/words-scripts.txt", []byte(list.String()), 0o644))
}

func TestWordsOfScriptsFaults(t *testing.T) {
	faults, words := faultsOfScript("x.js", `"use strict";
(() => {
  const words = {
    whole: "It is whole.",
    long: (n) => `+"`It is ${n} long.`"+`,
    glued: "It is " + it,
    part: (n) => `+"`It is ${n > 1 ? \"very\" : \"\"} long.`"+`,
  };
  // "this is a remark"
  say("so it is", box.querySelector("input, select"), /not "a text"/.test(it));
  say(words.whole + " And so on.");
  say(`+"`${n} of ${m} a ${here}`"+`, "a-name" + it);
})();
`)
	assert.Equal(t, []string{"It is whole.", "It is ${n} long.", "It is ", "It is ${n > 1 ? \"very\" : \"\"} long."}, words)
	assert.Equal(t, []string{
		`x.js:6: "It is " is glued to another text`,
		`x.js:7: the part "n > 1 ? \"very\" : \"\"" is not a name or a number`,
		`x.js:10: "so it is" is said outside of the words`,
		`x.js:11: " And so on." is said outside of the words`,
		`x.js:11: " And so on." is glued to another text`,
		"x.js:12: \"${n} of ${m} a ${here}\" is said outside of the words",
		`x.js:11: a text is glued to another`,
	}, faults)
}
