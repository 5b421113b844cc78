package language

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"github.com/leonelquinteros/gotext"
)

// Folder is where the languages are, a folder each, named by its tag (BCP 47): "de".
const Folder = "languages"

// wordsFile is a language's texts, as gettext has them.
const wordsFile = "words.po"

// A catalog has the texts of a language.
type catalog struct{ *gotext.Po }

// nothing has none: all stays in English.
var nothing = catalog{gotext.NewPo()}

// open reads the texts of a language of the module at root.
func open(root, tag string) (catalog, error) {
	file := filepath.Join(root, Folder, tag, wordsFile)
	content, err := os.ReadFile(file)
	if errors.Is(err, fs.ErrNotExist) {
		return catalog{}, fmt.Errorf("no %s/%s/%s: begin it with a copy of .build/words.pot, which has just been written", Folder, tag, wordsFile)
	}
	if err != nil {
		return catalog{}, err
	}
	po := gotext.NewPo()
	po.Parse(content)
	return catalog{po}, nil
}

// of is a text in the language, and whether it is there.
func (c catalog) of(t Text) (string, bool) {
	if !c.IsTranslatedC(t.Says, t.Room()) {
		return t.Says, false
	}
	return c.GetC(t.Says, t.Room()), true
}

var namedPart = regexp.MustCompile(`\$?\{\w+\}`)

// differs says how the parts of a translation differ from those of the text, empty if they do not.
func differs(text, translated string) string {
	parts := func(s string) []string {
		all := namedPart.FindAllString(s, -1)
		slices.Sort(all)
		return slices.Compact(all)
	}
	if has, wants := parts(translated), parts(text); !slices.Equal(has, wants) {
		return fmt.Sprintf("%q: its parts are %s, and in the translation %s", text, strings.Join(wants, " "), strings.Join(has, " "))
	}
	return ""
}

// quoted writes a text as catalogs have it.
var quoted = strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", `\n`, "\t", `\t`)

// catalogOf is a catalog of texts, translated by say; each once for each room, with the names
// that the code has for it.
func catalogOf(tag string, texts []Text, say func(string) string) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "msgid \"\"\nmsgstr \"\"\n\"Language: %s\\n\"\n\"Content-Type: text/plain; charset=UTF-8\\n\"\n", tag)
	type key struct{ room, says string }
	seen := map[key]bool{}
	for i, t := range texts {
		k := key{t.Room(), t.Says}
		if seen[k] {
			continue
		}
		seen[k] = true
		fmt.Fprintln(&b)
		for _, other := range texts[i:] {
			if other.Room() == k.room && other.Says == k.says {
				fmt.Fprintf(&b, "#: %s %s\n", other.File, other.Name)
			}
		}
		fmt.Fprintf(&b, "msgctxt \"%s\"\nmsgid \"%s\"\nmsgstr \"%s\"\n", k.room, quoted.Replace(k.says), quoted.Replace(say(t.Says)))
	}
	return b.Bytes()
}
