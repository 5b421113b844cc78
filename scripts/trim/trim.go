// Package trim makes a copy of go-app without the parts that only a server
// needs, for the WebAssembly build alone.
//
// go-app is one package for server and browser, so its browser build carries an
// HTTP client, TLS, regular expressions and a JSON codec that this site never
// calls: more than 40 % of the compressed program that a phone must fetch.
// Go's overlay can't change files of the module cache, hence a copy and a
// second go.mod (for -modfile) whose replace directive names it. Tests, the page
// generator and the project's own go.mod stay with the untouched module.
//
// Every edit must fit exactly once. After an update of go-app that moved the
// code, the build fails and says which edit to look at; it never guesses.
package trim

import (
	"embed"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// Module is the import path of the module that is trimmed.
const Module = "github.com/maxence-charriere/go-app/v10"

//go:embed added
var added embed.FS

// Write puts the trimmed copy and its go.mod into dir, which must lie inside the
// module at root, and returns the path of the go.mod to build with.
func Write(root, dir string) (modfile string, err error) {
	src, err := moduleDir(root)
	if err != nil {
		return "", err
	}
	tree, err := read(src)
	if err != nil {
		return "", err
	}
	if err := tree.trim(); err != nil {
		return "", err
	}
	if err := os.RemoveAll(dir); err != nil {
		return "", err
	}
	if err := tree.write(filepath.Join(dir, "go-app")); err != nil {
		return "", err
	}
	return writeMod(root, dir)
}

// moduleDir returns the folder of the untouched module, fetching it if need be.
func moduleDir(root string) (string, error) {
	fetch := exec.Command("go", "mod", "download", Module)
	fetch.Dir = root
	if out, err := fetch.CombinedOutput(); err != nil {
		return "", fmt.Errorf("%s could not be fetched: %w: %s", Module, err, out)
	}
	list := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", Module)
	list.Dir = root
	list.Stderr = os.Stderr
	out, err := list.Output()
	if err != nil {
		return "", fmt.Errorf("%s is not among the modules of go.mod: %w", Module, err)
	}
	return strings.TrimSpace(string(out)), nil
}

// tree is a module's files by slash-separated path.
type tree map[string][]byte

// read loads what the app imports, without tests and generators.
func read(dir string) (tree, error) {
	t := tree{}
	for _, part := range []string{"go.mod", "go.sum", "LICENSE", "pkg/app", "pkg/errors"} {
		err := filepath.WalkDir(filepath.Join(dir, part), func(path string, d fs.DirEntry, err error) error {
			switch {
			case err != nil:
				return err
			case d.IsDir() && d.Name() == "gen":
				return filepath.SkipDir
			case d.IsDir(), strings.HasSuffix(path, "_test.go"):
				return nil
			}
			rel, err := filepath.Rel(dir, path)
			if err != nil {
				return err
			}
			t[filepath.ToSlash(rel)], err = os.ReadFile(path)
			return err
		})
		if err != nil {
			return nil, err
		}
	}
	return t, nil
}

// trim applies all edits of edits.go and adds the files below added.
func (t tree) trim() error {
	for _, e := range edits {
		if err := e.apply(t); err != nil {
			return fmt.Errorf("trimming go-app: %w\n"+
				"It has changed since scripts/trim/edits.go was written: compare the two, mend the edit,\n"+
				"or build with the untouched module by scripts/build -plain", err)
		}
	}
	return fs.WalkDir(added, "added", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name := strings.TrimSuffix(strings.TrimPrefix(path, "added/"), ".txt")
		if _, there := t[name]; there {
			return fmt.Errorf("trimming go-app: it has a file %s of its own now: rename ours", name)
		}
		t[name], err = added.ReadFile(path)
		return err
	})
}

func (t tree) write(dir string) error {
	for name, content := range t {
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(path, content, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// writeMod copies go.mod and go.sum of root into dir and adds the replacement.
func writeMod(root, dir string) (string, error) {
	rel, err := filepath.Rel(root, filepath.Join(dir, "go-app"))
	if err != nil {
		return "", err
	}
	mod, err := os.ReadFile(filepath.Join(root, "go.mod"))
	if err != nil {
		return "", err
	}
	sum, err := os.ReadFile(filepath.Join(root, "go.sum"))
	if err != nil {
		return "", err
	}
	mod = fmt.Appendf(mod, "\nreplace %s => ./%s\n", Module, filepath.ToSlash(rel))
	modfile := filepath.Join(dir, "trimmed.mod")
	if err := os.WriteFile(modfile, mod, 0o644); err != nil {
		return "", err
	}
	return modfile, os.WriteFile(filepath.Join(dir, "trimmed.sum"), sum, 0o644)
}

// WasmEnv is the environment of a WebAssembly build. Whatever else could change
// the program's bytes is set, so that a person's own settings don't.
var WasmEnv = []string{"GOOS=js", "GOARCH=wasm", "GOWASM=", "GOFLAGS=-mod=readonly", "GOWORK=off", "CGO_ENABLED=0"}
