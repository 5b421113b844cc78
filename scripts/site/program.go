package main

import (
	"compress/gzip"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"striderule/scripts/trim"
)

// program compiles the app to WebAssembly, plain and compressed: the compressed
// one is undone by the page itself, so that hosts that compress nothing are quick
// as well; the plain one is for browsers that can't.
func (b *builder) program() error {
	wasm := filepath.Join(b.site, "web", "app.wasm")
	if err := os.MkdirAll(filepath.Dir(wasm), 0o755); err != nil {
		return err
	}
	args := []string{"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-o", wasm}
	// Pages, views, texts and codes are sentences more than sums: without inlining
	// they are a tenth of the whole program smaller, and no slower to speak of.
	for _, wordy := range []string{"striderule/calc", "striderule/calc/logbook", "striderule/calc/unit", "striderule/app", "rsc.io/qr/...", "github.com/maxence-charriere/go-app/v10/..."} {
		args = append(args, "-gcflags="+wordy+"=-l")
	}
	if !b.plain {
		modfile, err := trim.Write(b.root, filepath.Join(b.work, "trim"))
		if err != nil {
			return err
		}
		args = append(args, "-modfile="+modfile)
	}
	build := exec.Command("go", append(args, "./app")...)
	build.Dir = b.root
	build.Env = append(os.Environ(), trim.WasmEnv...)
	build.Stdout, build.Stderr = os.Stderr, os.Stderr
	if err := build.Run(); err != nil {
		return fmt.Errorf("go build: %w", err)
	}
	if err := os.Chmod(wasm, 0o644); err != nil { // a page asks for it, nobody runs it
		return err
	}
	if err := compress(wasm, wasm+".gz"); err != nil {
		return err
	}
	return b.support()
}

// support copies the toolchain's own bridge between Go and the browser: it must
// be that of the compiler.
func (b *builder) support() error {
	env := exec.Command("go", "env", "GOROOT")
	env.Dir = b.root
	goroot, err := env.Output()
	if err != nil {
		return err
	}
	return copyFile(
		filepath.Join(strings.TrimSpace(string(goroot)), "lib", "wasm", "wasm_exec.js"),
		filepath.Join(b.site, "web", "wasm_exec.js"))
}

// compress writes a gzip file without name and time, which would differ by build.
func compress(from, to string) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.Create(to)
	if err != nil {
		return err
	}
	defer out.Close()
	z, err := gzip.NewWriterLevel(out, gzip.BestCompression)
	if err != nil {
		return err
	}
	if _, err := io.Copy(z, in); err != nil {
		return err
	}
	if err := z.Close(); err != nil {
		return err
	}
	return out.Close()
}
