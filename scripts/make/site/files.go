package main

import (
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
)

// atRoot are the files of web/ that must lie beside the start page: a worker
// and a manifest speak for the folder that they lie in. All others go to web/.
var atRoot = []string{"sw.js", "manifest.webmanifest"}

// pages has the app write its pages.
func (b *builder) pages() error {
	// Nothing of go-app is quick enough inlined to make up for its compiler taking twice as long.
	gen := exec.Command("go", "run", "-gcflags=github.com/maxence-charriere/go-app/v10/...=-l", "./app", "-out", b.site, "-address", b.address)
	gen.Dir = b.root
	// A person's own settings must not show in what is made.
	gen.Env = append(os.Environ(), "GOFLAGS=-mod=readonly", "GOWORK=off", "GOEXPERIMENT=")
	gen.Stdout, gen.Stderr = os.Stderr, os.Stderr
	return gen.Run()
}

// assets copies web/ as it is.
func (b *builder) assets() error {
	from := filepath.Join(b.root, "web")
	return filepath.WalkDir(from, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		rel, err := filepath.Rel(from, path)
		if err != nil {
			return err
		}
		to := filepath.Join(b.site, "web", rel)
		if slices.Contains(atRoot, rel) {
			to = filepath.Join(b.site, rel)
		}
		if _, err := os.Stat(to); err == nil {
			return fmt.Errorf("web/%s would overwrite what the build made", filepath.ToSlash(rel))
		}
		return copyFile(path, to)
	})
}

// modes lets every web host read the site, whatever the builder's own umask says.
func (b *builder) modes() error {
	return filepath.WalkDir(b.site, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir():
			return os.Chmod(path, 0o755)
		}
		return os.Chmod(path, 0o644)
	})
}

func copyFile(from, to string) error {
	content, err := os.ReadFile(from)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
		return err
	}
	return os.WriteFile(to, content, 0o644)
}

// siteFiles lists the files below dir by slash-separated path, in order.
func siteFiles(dir string) ([]string, error) {
	var files []string
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		rel, err := filepath.Rel(dir, path)
		files = append(files, filepath.ToSlash(rel))
		return err
	})
	slices.Sort(files)
	return files, err
}
