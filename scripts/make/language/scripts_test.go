package language

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
	".headline data", ".bar strong", // selectors with a name
	"Error", "Files", "Enter", "Escape", // names of the browser's own
}

// asking are calls whose strings are selectors, queries and rules of style.
var asking = []string{"querySelector", "querySelectorAll", "matches", "closest", "matchMedia", "replaceSync"}

var (
	plainPart = regexp.MustCompile(`^[a-z]+$`)
	gluedWord = regexp.MustCompile(`\bwords\.\w+(?:\([^()]*\))?\s*\+|\+\s*words\.`)
)

// faultsOfScript holds a script to what the words files are held to: its texts stand together
// at the top, as words, each whole. It returns those texts as well.
func faultsOfScript(name, script string) (faults, words []string) {
	texts := textsOfScript(script)
	from, to := wordsOfScript(script, texts)
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

func codeLines(script string) (n int) {
	for line := range strings.Lines(script) {
		if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "//") {
			n++
		}
	}
	return n
}

// TestWordsOfScripts is TestWords for the scripts of the page.
func TestWordsOfScripts(t *testing.T) {
	files, err := filepath.Glob(root + "web/*.js")
	require.NoError(t, err)
	list := &strings.Builder{}
	for _, file := range append(files, root+"app/pages/lost.js") {
		script, err := os.ReadFile(file)
		require.NoError(t, err)
		name := strings.TrimPrefix(filepath.ToSlash(file), root)
		faults, words := faultsOfScript(name, string(script))
		assert.Empty(t, faults)
		for _, text := range words {
			fmt.Fprintf(list, "%s\t%s\n", name, text)
		}
	}
	assert.Greater(t, strings.Count(list.String(), "\n"), 35)
	require.NoError(t, os.MkdirAll(root+".build", 0o755))
	require.NoError(t, os.WriteFile(root+".build/words-scripts.txt", []byte(list.String()), 0o644))
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
