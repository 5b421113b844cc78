package language

import (
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// toy is a module with a sentence of each kind.
func toy(t *testing.T) (root string) {
	root = t.TempDir()
	for file, content := range map[string]string{
		"go.mod": "module toy\n\ngo 1.26\n",
		"go.sum": "",
		"app/site/words.go": `package site

const Language = "en"

type field struct{ Key, Label string }

var fields = []field{{"rest", "Remaining"}, {Key: "fed", Label: "Fed “{length}”"}}

const (
	stop = "M0"
	save = "Save"
)
`,
		"app/site/code.go":         "package site\n\nconst notMine = \"Said outside\"\n",
		"calc/words.go":            "package calc\n\nconst save = \"Save\"\n",
		"web/page.js":              "const words = {\n  copied: \"Copied.\",\n  saved: (file) => `Saved as ${file}.`,\n};\nsay(\"not mine\");\n",
		"web/manifest.webmanifest": `{"name": "Toy", "description": "It's a toy.", "lang": "en"}`,
		"web/icon.svg":             "<svg/>",
	} {
		require.NoError(t, writeFile(filepath.Join(root, file), []byte(content)))
	}
	return root
}

func TestTexts(t *testing.T) {
	sources, err := read(toy(t))
	require.NoError(t, err)
	all := textsOf(sources)
	var said []string
	for _, x := range all {
		said = append(said, x.File+" "+x.Name+": "+x.Says)
	}
	assert.Equal(t, []string{
		"app/site/words.go Label: Remaining",
		"app/site/words.go Label: Fed “{length}”",
		"app/site/words.go save: Save",
		"calc/words.go save: Save",
		"web/manifest.webmanifest description: It's a toy.",
		"web/page.js copied: Copied.",
		"web/page.js saved: Saved as ${file}.",
	}, said)
}

const german = `msgid ""
msgstr ""
"Language: de\n"
"Content-Type: text/plain; charset=UTF-8\n"

msgctxt "app/site"
msgid "Save"
msgstr "Sichern"

msgctxt "app/site"
msgid "Fed “{length}”"
msgstr "„{length}“ \"gefördert\""

msgctxt "web"
msgid "Copied."
msgstr "\"Kopiert\"."

msgctxt "web"
msgid "Saved as ${file}."
msgstr "Als ${file} gesichert."
`

func TestWrite(t *testing.T) {
	root := toy(t)
	_, err := Write(root, "de")
	require.ErrorContains(t, err, "languages/de/words.po")
	pot, err := os.ReadFile(filepath.Join(root, ".build", "words.pot"))
	require.NoError(t, err)
	assert.Contains(t, string(pot), "#: app/site/words.go save\nmsgctxt \"app/site\"\nmsgid \"Save\"\nmsgstr \"\"\n")

	require.NoError(t, writeFile(filepath.Join(root, Folder, "de", wordsFile), []byte(german)))
	copied, err := Write(root, "de")
	require.NoError(t, err)
	read := func(file string) string {
		content, err := os.ReadFile(filepath.Join(copied, file))
		require.NoError(t, err)
		return string(content)
	}
	words := read("app/site/words.go")
	assert.Contains(t, words, `Language = "de"`)
	assert.Contains(t, words, `{"rest", "Remaining"}, {Key: "fed", Label: "„{length}“ \"gefördert\""}`)
	assert.Contains(t, words, `stop = "M0"`)
	assert.Contains(t, words, `save = "Sichern"`)
	_, err = parser.ParseFile(token.NewFileSet(), "words.go", words, 0)
	require.NoError(t, err)
	assert.Contains(t, read("calc/words.go"), `save = "Save"`, "another room has its own")
	assert.Equal(t, "const words = {\n  copied: \"\\\"Kopiert\\\".\",\n  saved: (file) => `Als ${file} gesichert.`,\n};\nsay(\"not mine\");\n", read("web/page.js"))
	assert.Equal(t, `{"name": "Toy", "description": "It's a toy.", "lang": "de"}`, read("web/manifest.webmanifest"))
	assert.Equal(t, "<svg/>", read("web/icon.svg"))

	for _, lost := range []string{"„{length}“", "Als ${file}"} {
		require.NoError(t, writeFile(filepath.Join(root, Folder, "de", wordsFile), []byte(strings.Replace(german, lost, "nichts", 1))))
		_, err = Write(root, "de")
		require.ErrorContains(t, err, "its parts are")
	}
}

// A language that translates nothing is English: nothing but the tag differs.
func TestEnglishIsTheSame(t *testing.T) {
	module, err := filepath.Abs(root)
	require.NoError(t, err)
	sources, err := read(module)
	require.NoError(t, err)
	for _, s := range sources {
		said, _, err := s.in(nothing)
		require.NoError(t, err)
		assert.Equal(t, string(s.content), string(said), s.file)
	}
}

func TestPseudo(t *testing.T) {
	assert.Equal(t, "«Féédíng {length} ànd <b>möré</b> ööööö öööö»", pseudo("Feeding {length} and <b>more</b>"))
	assert.Equal(t, ",", pseudo("."))
	for _, says := range []string{"Save", "{n} runs", "Saved as ${file}.", "It is {length} long, and \"so\" on.\n"} {
		assert.Empty(t, differs(says, pseudo(says)))
		assert.GreaterOrEqual(t, 3*len([]rune(pseudo(says))), 4*len([]rune(says)))
	}
}

// All that the calculators work out, of every sheet that is kept and every reference case, is the
// same in another language.
func TestFiguresInAnotherLanguage(t *testing.T) {
	module, err := filepath.Abs(root)
	require.NoError(t, err)
	sources, err := read(module)
	require.NoError(t, err)
	all := textsOf(sources)
	assert.Greater(t, len(all), 2500)
	assert.True(t, slices.ContainsFunc(all, func(t Text) bool { return strings.HasPrefix(t.File, "web/") }))
	copied, err := writeTo(module, Pseudo, t.TempDir())
	require.NoError(t, err)
	test := exec.Command("go", "test", "-trimpath", "-count=1", "-v", "-run", "^(TestFiguresStay|TestVectors|TestHandedOverLinksOpen)$", "./calc")
	test.Dir = copied
	log, err := test.CombinedOutput()
	require.NoError(t, err, string(log))
	assert.Contains(t, string(log), "--- PASS: TestFiguresStay")
	assert.Contains(t, string(log), "--- PASS: TestVectors ")
}
