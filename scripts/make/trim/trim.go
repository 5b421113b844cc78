// Package trim makes a copy of go-app without the parts that this site never
// calls, for the WebAssembly build only.
//
// go-app is one package for server and browser, so its browser build carries an
// HTTP client, TLS, regular expressions and a JSON codec, a type for every element
// with methods that the linker can't drop, and whatever formats by reflection: more
// than half of the compressed program that a phone must fetch. Of the QR codes only
// the formatting goes.
//
// Go's overlay can't change files of the module cache, hence copies and a
// second go.mod (for -modfile) whose replace directives name them. Tests, the page
// generator and the project's own go.mod stay with the untouched modules.
//
// Every edit must fit exactly once. After an update of a module that moved the
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

	"striderule/scripts/make/slim"
)

// A module is what is copied of one, and changed in the copy.
type module struct {
	path  string // what it is imported by
	name  string // the copy's folder, and that of what is added to it
	parts []string
	edits []edit
}

const goAppPath = "github.com/maxence-charriere/go-app/v10"

var goApp = module{
	path:  goAppPath,
	name:  "go-app",
	parts: []string{"go.mod", "go.sum", "LICENSE", "pkg/app", "pkg/errors"},
	edits: goAppEdits,
}

var qr = module{
	path:  "rsc.io/qr",
	name:  "qr",
	parts: []string{"go.mod", "LICENSE", "coding/qr.go", "gf256"},
	edits: qrEdits,
}

//go:embed added
var added embed.FS

// Write puts the trimmed copies and their go.mod into dir, which must lie inside
// the module at root, and returns the path of the go.mod to build with.
func Write(root, dir string) (modfile string, err error) {
	if err := os.RemoveAll(dir); err != nil {
		return "", err
	}
	modules := []module{goApp, qr}
	for _, m := range modules {
		src, err := m.dir(root)
		if err != nil {
			return "", err
		}
		t, err := m.read(src)
		if err != nil {
			return "", err
		}
		if err := m.trim(t); err != nil {
			return "", err
		}
		if err := t.write(filepath.Join(dir, m.name)); err != nil {
			return "", err
		}
	}
	return writeMod(root, dir, modules...)
}

// dir returns the folder of the untouched module, fetching it if need be.
func (m module) dir(root string) (string, error) {
	fetch := exec.Command("go", "mod", "download", m.path)
	fetch.Dir = root
	if out, err := fetch.CombinedOutput(); err != nil {
		return "", fmt.Errorf("%s could not be fetched: %w: %s", m.path, err, out)
	}
	list := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", m.path)
	list.Dir = root
	list.Stderr = os.Stderr
	out, err := list.Output()
	if err != nil {
		return "", fmt.Errorf("%s is not among the modules of go.mod: %w", m.path, err)
	}
	return strings.TrimSpace(string(out)), nil
}

// tree is a module's files by slash-separated path.
type tree map[string][]byte

// read loads what the app imports, without tests and generators.
func (m module) read(dir string) (tree, error) {
	t := tree{}
	for _, part := range m.parts {
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

// trim applies all edits and adds the files below added.
func (m module) trim(t tree) error {
	for _, e := range m.edits {
		if err := e.apply(t); err != nil {
			return fmt.Errorf("trimming %s: %w\n"+
				"It has changed since the edits in scripts/make/trim were written: compare the two, mend the edit,\n"+
				"or build with the untouched module by scripts/build -plain", m.name, err)
		}
	}
	from := "added/" + m.name
	if _, err := fs.Stat(added, from); err != nil {
		return nil // none
	}
	return fs.WalkDir(added, from, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name := strings.TrimSuffix(strings.TrimPrefix(path, from+"/"), ".txt")
		if _, there := t[name]; there {
			return fmt.Errorf("trimming %s: it has a file %s of its own now: rename ours", m.name, name)
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

// writeMod copies go.mod and go.sum of root into dir and adds the replacements.
func writeMod(root, dir string, modules ...module) (string, error) {
	mod, err := os.ReadFile(filepath.Join(root, "go.mod"))
	if err != nil {
		return "", err
	}
	sum, err := os.ReadFile(filepath.Join(root, "go.sum"))
	if err != nil {
		return "", err
	}
	for _, m := range modules {
		rel, err := filepath.Rel(root, filepath.Join(dir, m.name))
		if err != nil {
			return "", err
		}
		mod = fmt.Appendf(mod, "\nreplace %s => ./%s\n", m.path, filepath.ToSlash(rel))
	}
	modfile := filepath.Join(dir, "trimmed.mod")
	if err := os.WriteFile(modfile, mod, 0o644); err != nil {
		return "", err
	}
	return modfile, os.WriteFile(filepath.Join(dir, "trimmed.sum"), sum, 0o644)
}

// WasmEnv is the environment of a WebAssembly build. Whatever else could change
// the program's bytes is set, so that a person's own settings don't.
var WasmEnv = []string{"GOOS=js", "GOARCH=wasm", "GOWASM=", "GOEXPERIMENT=nogreenteagc", "GOFLAGS=-mod=readonly", "GOWORK=off", "CGO_ENABLED=0", "GOTOOLCHAIN=" + slim.Toolchain}
