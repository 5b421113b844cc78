package trim

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// kept out of the browser: each would come in by way of go-app, or by an import
// in app/ or calc/ that was not thought through.
var unwanted = regexp.MustCompile(`^(net/.*|crypto/.*|regexp|encoding/.*|html|(html|text)/template|database/sql.*|` +
	`fmt|internal/fmtsort|log(/.*)?|os(/exec)?|io/fs|path(/filepath)?|internal/poll|sort|unique|math/rand|time|context|syscall|internal/godebug|runtime/debug|github.com/google/.*)$`)

func moduleRoot(t *testing.T) string {
	t.Helper()
	out, err := exec.Command("go", "env", "GOMOD").Output()
	require.NoError(t, err)
	return filepath.Dir(strings.TrimSpace(string(out)))
}

// copyOfModule makes a module that has only go.mod and go.sum of this one, so
// that a test leaves the copy alone that a build may be using.
func copyOfModule(t *testing.T, root string) string {
	t.Helper()
	dir := t.TempDir()
	for _, f := range []string{"go.mod", "go.sum"} {
		content, err := os.ReadFile(filepath.Join(root, f))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(dir, f), content, 0o644))
	}
	return dir
}

func dependencies(t *testing.T, dir string, args ...string) []string {
	t.Helper()
	list := exec.Command("go", append([]string{"list", "-deps"}, args...)...)
	list.Dir = dir
	list.Env = append(os.Environ(), WasmEnv...)
	list.Stderr = os.Stderr
	out, err := list.Output()
	require.NoError(t, err)
	return strings.Fields(string(out))
}

func TestTrimmedAppHasNoServerParts(t *testing.T) {
	root := moduleRoot(t)
	require.NoError(t, os.MkdirAll(filepath.Join(root, ".build"), 0o755))
	dir, err := os.MkdirTemp(filepath.Join(root, ".build"), "trim-test-")
	require.NoError(t, err)
	t.Cleanup(func() { _ = os.RemoveAll(dir) })
	modfile, err := Write(root, dir)
	require.NoError(t, err)

	found := func(deps []string) (hits []string) {
		for _, d := range deps {
			if unwanted.MatchString(d) {
				hits = append(hits, d)
			}
		}
		return hits
	}
	trimmed := dependencies(t, root, "-modfile="+modfile, "./app")
	assert.Contains(t, trimmed, goApp.path+"/pkg/app", "the check would see nothing")
	assert.Empty(t, found(trimmed))
	assert.NotEmpty(t, found(dependencies(t, root, "./app")), "the untouched go-app has none either: trimming does nothing any more")
}

func TestEditsFailLoudly(t *testing.T) {
	for _, c := range []struct {
		name string
		edit edit
		says string
	}{
		{"no file", drop{"gone.go"}, "gone.go is gone"},
		{"no anchor", replace{"a.go", "func b", ""}, "0 times"},
		{"two anchors", replace{"a.go", "func ", ""}, "2 times"},
		{"no function", keep{"a.go", []string{"one", "three"}}, "has 1 of the functions"},
	} {
		t.Run(c.name, func(t *testing.T) {
			err := c.edit.apply(tree{"a.go": []byte("package a\n\nfunc one() {}\n\nfunc two() {}\n")})
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.says)
		})
	}
}

func TestKeepTakesTheImportsAlong(t *testing.T) {
	files := tree{"a.go": []byte("package a\n\nimport (\n\t\"net/http\"\n\t\"strings\"\n)\n\nfunc one() bool { return strings.HasPrefix(\"\", \"\") }\n\nfunc two(http.Handler) {}\n")}
	require.NoError(t, keep{"a.go", []string{"one"}}.apply(files))
	assert.Equal(t, "package a\n\nimport \"strings\"\n\nfunc one() bool { return strings.HasPrefix(\"\", \"\") }\n", string(files["a.go"]))
}

func TestModfileNamesTheCopy(t *testing.T) {
	root := copyOfModule(t, moduleRoot(t))
	modfile, err := Write(root, filepath.Join(root, ".build", "trim"))
	require.NoError(t, err)
	mod, err := os.ReadFile(modfile)
	require.NoError(t, err)
	assert.Contains(t, string(mod), "replace "+goApp.path+" => ./.build/trim/go-app\n")
	assert.FileExists(t, filepath.Join(root, ".build", "trim", "go-app", "LICENSE"), "a copy goes with its licence")
}
