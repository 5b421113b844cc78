package language

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
)

// Write writes the module at root in another language into a folder of .build, and returns that
// folder. What is not translated stays in English, and is counted. It writes .build/words.pot too,
// which has all texts and no translation: where a new language begins.
func Write(root, tag string) (copied string, err error) {
	return writeTo(root, tag, filepath.Join(root, ".build"))
}

func writeTo(root, tag, build string) (copied string, err error) {
	sources, err := read(root)
	if err != nil {
		return "", err
	}
	all := textsOf(sources)
	if err := writeFile(filepath.Join(build, "words.pot"), catalogOf("", all, func(string) string { return "" })); err != nil {
		return "", err
	}
	from := root
	if tag == Pseudo {
		from = filepath.Join(build, "pseudo")
		if err := writeFile(filepath.Join(from, Folder, tag, wordsFile), catalogOf(tag, all, pseudo)); err != nil {
			return "", err
		}
	}
	words, err := open(from, tag)
	if err != nil {
		return "", err
	}
	copied = filepath.Join(build, Folder, tag)
	if err := os.RemoveAll(copied); err != nil {
		return "", err
	}
	var faults []error
	missing := 0
	for _, s := range sources {
		said, left, err := s.in(words)
		faults, missing = append(faults, err), missing+left
		if err := writeFile(filepath.Join(copied, s.file), tagged(s.file, said, tag)); err != nil {
			return "", err
		}
	}
	for _, file := range []string{"go.mod", "go.sum"} {
		content, err := os.ReadFile(filepath.Join(root, file))
		if err != nil {
			return "", err
		}
		if err := writeFile(filepath.Join(copied, file), content); err != nil {
			return "", err
		}
	}
	if missing > 0 {
		fmt.Printf("%s: %d of %d texts are not translated\n", tag, missing, len(all))
	}
	return copied, errors.Join(faults...)
}

// in is the file in a language, and how many of its texts are not translated.
func (s source) in(words catalog) (said []byte, missing int, err error) {
	var faults []error
	at := 0
	for _, t := range s.texts {
		says, ok := words.of(t)
		if !ok {
			missing++
			continue
		}
		if wrong := differs(t.Says, says); wrong != "" {
			faults = append(faults, fmt.Errorf("%s: %s", t.File, wrong))
		}
		said = append(said, s.content[at:t.from]...)
		said = append(said, written(s, t, says)...)
		at = t.to
	}
	return append(said, s.content[at:]...), missing, errors.Join(faults...)
}

// written is a text as its file writes it.
func written(s source, t Text, says string) string {
	switch filepath.Ext(s.file) {
	case ".go":
		return strconv.Quote(says)
	case ".js":
		quote := string(s.content[t.from-1])
		return strings.ReplaceAll(says, quote, `\`+quote)
	}
	return strings.Trim(strconv.Quote(says), `"`)
}

// english is where a file says which language it is in.
var english = map[string]*regexp.Regexp{
	"app/site/words.go":        regexp.MustCompile(`(Language += ")en(")`),
	"web/manifest.webmanifest": regexp.MustCompile(`("lang": ")en(")`),
}

func tagged(file string, content []byte, tag string) []byte {
	if says := english[file]; says != nil {
		return says.ReplaceAll(content, []byte("${1}"+tag+"${2}"))
	}
	return content
}

func writeFile(file string, content []byte) error {
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		return err
	}
	return os.WriteFile(file, content, 0o644)
}
