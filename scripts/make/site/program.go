package main

import (
	"os"
	"path/filepath"

	"striderule/scripts/make/program"
)

// program compiles the app to WebAssembly.
func (b *builder) program() error {
	wasm := filepath.Join(b.site, "web", "app.wasm")
	if err := os.MkdirAll(filepath.Dir(wasm), 0o755); err != nil {
		return err
	}
	if err := program.Build(b.root, b.work, wasm, b.options); err != nil {
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
