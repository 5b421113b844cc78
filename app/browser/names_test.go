package browser

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ofGoApp are the names that go-app itself asks the window for.
var ofGoApp = []string{"goappGetenv", "goappOnAppInstallChange", "goappUpdatedBeforeWasmLoaded"}

// tableOf are the names of a type in names.go: with the constants that Go says them by, or
// _ for what the trimmed go-app says itself.
func tableOf(t *testing.T, kind string) map[string]string {
	t.Helper()
	source, err := parser.ParseFile(token.NewFileSet(), "names.go", nil, 0)
	require.NoError(t, err)
	table := map[string]string{}
	ast.Inspect(source, func(n ast.Node) bool {
		spec, ok := n.(*ast.ValueSpec)
		if !ok || spec.Type == nil || spec.Type.(*ast.Ident).Name != kind {
			return true
		}
		name, err := strconv.Unquote(spec.Values[0].(*ast.BasicLit).Value)
		require.NoError(t, err)
		require.NotContains(t, table, name)
		table[name] = spec.Names[0].Name
		return true
	})
	require.NotEmpty(t, table)
	return table
}

// sourcesIn are the texts of the files below a folder that end so.
func sourcesIn(t *testing.T, dir, ending string) map[string]string {
	t.Helper()
	all := map[string]string{}
	require.NoError(t, filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ending) || strings.HasSuffix(path, "_test.go") {
			return err
		}
		text, err := os.ReadFile(path)
		all[path] = string(text)
		return err
	}))
	require.NotEmpty(t, all)
	return all
}

// filesWith are the files in which an expression with one group finds each name.
func filesWith(sources map[string]string, expression string) map[string][]string {
	found := map[string][]string{}
	for file, text := range sources {
		for _, m := range regexp.MustCompile(expression).FindAllStringSubmatch(text, -1) {
			if !slices.Contains(found[m[1]], file) {
				found[m[1]] = append(found[m[1]], file)
			}
		}
	}
	return found
}

// What Go asks of the page is what the scripts set, and the other way round; what the
// scripts have for each other is set in one of them and asked for in another.
func TestNames(t *testing.T) {
	scripts := sourcesIn(t, "../../web", ".js")
	set := filesWith(scripts, `\bstriderule\.(\w+) = `)
	said := filesWith(scripts, `\bstriderule\.(\w+)\b(?: = )?`)
	here := sourcesIn(t, ".", ".go")
	delete(here, "names.go")
	usedHere := filesWith(here, `\b(\w+)\.(?:call|set)\(`)
	trimmed := filesWith(sourcesIn(t, "../../scripts/make/trim/added", ".txt"), `(?:ours\(\)|Get\(ourName\))\.Call\("(\w+)"`)

	asked, offered := tableOf(t, "asked"), tableOf(t, "offered")
	for name, by := range asked {
		assert.Len(t, set[name], 1, "%s is set by one script", name)
		if by == "_" {
			assert.Contains(t, trimmed, name, "the trimmed go-app does not ask for it")
		} else {
			assert.Contains(t, usedHere, by, "nothing asks for it")
		}
	}
	for name, by := range offered {
		assert.Contains(t, said, name, "no script asks for it")
		assert.Contains(t, usedHere, by, "nothing sets it")
	}
	for name := range trimmed {
		assert.Contains(t, asked, name, "the trimmed go-app asks for what is in no table")
	}
	for name, files := range said {
		_, isAsked := asked[name]
		_, isOffered := offered[name]
		if isAsked || isOffered {
			continue
		}
		assert.Len(t, set[name], 1, "%s, said in %v", name, files)
		assert.Greater(t, len(files), 1, "%s is in no table, and no other script says it", name)
	}
	for name := range filesWith(scripts, `\bwindow\.(\w+) = `) {
		assert.Contains(t, append([]string{object}, ofGoApp...), name, "on the window")
	}
}

// Only this package knows the browser.
func TestNoWindowElsewhere(t *testing.T) {
	n := 0
	for file, text := range sourcesIn(t, "..", ".go") {
		if strings.HasPrefix(file, filepath.Join("..", "browser")) {
			n += strings.Count(text, "app.Window()")
			continue
		}
		assert.NotContains(t, text, "Window()", file)
		assert.NotContains(t, text, "syscall/js", file)
	}
	assert.Positive(t, n)
}
