package main

import (
	"compress/gzip"
	"io"
	"os"
	"path/filepath"

	"striderule/scripts/program"
)

// program compiles the app to WebAssembly, plain and compressed: the compressed
// one is undone by the page itself, so that hosts that compress nothing are quick
// as well; the plain one is for browsers that can't.
func (b *builder) program() error {
	wasm := filepath.Join(b.site, "web", "app.wasm")
	if err := os.MkdirAll(filepath.Dir(wasm), 0o755); err != nil {
		return err
	}
	if err := program.Build(b.root, b.work, wasm, program.Options{Plain: b.plain}); err != nil {
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
	goroot, err := program.GoEnv(b.root, "GOROOT")
	if err != nil {
		return err
	}
	return copyFile(
		filepath.Join(goroot, "lib", "wasm", "wasm_exec.js"),
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
