// Package stock makes the smallest site of the untouched go-app, as its users do, which what we
// make is held against.
package stock

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"

	"striderule/scripts/make/trim"
)

// Its icons are its own files: left out, they would be fetched from elsewhere.
const source = `package main

import "github.com/maxence-charriere/go-app/v10/pkg/app"

type hello struct{ app.Compo }

func (h *hello) Render() app.UI { return app.H1().Text("Hello World!") }

func main() {
	app.Route("/", func() app.Composer { return &hello{} })
	app.RunWhenOnBrowser()
	err := app.GenerateStaticWebsite("site", &app.Handler{
		Name: "Hello", Title: "Hello", Description: "A hello world.", Lang: "en",
		Icon: app.Icon{Default: "/web/icon.png", Large: "/web/icon.png", SVG: "/web/icon.svg", Maskable: "/web/icon.png"},
	})
	if err != nil {
		panic(err)
	}
}
`

// Site is the folder of its pages below that of its source.
const Site = "site"

// Program writes its source into a folder, always the same one, whose name is in the program, and
// builds it into Site/web/app.wasm with our flags and the collector that Go has.
func Program(root string) (dir, wasm string, err error) {
	dir = filepath.Join(root, ".build", "stock")
	wasm = filepath.Join(dir, Site, "web", "app.wasm")
	if err := os.RemoveAll(dir); err != nil {
		return "", "", err
	}
	if err := os.MkdirAll(filepath.Dir(wasm), 0o755); err != nil {
		return "", "", err
	}
	if err := os.WriteFile(filepath.Join(dir, "main.go"), []byte(source), 0o644); err != nil {
		return "", "", err
	}
	build := exec.Command("go", "build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-o", wasm, ".")
	build.Dir = dir
	build.Env = append(append(os.Environ(), trim.WasmEnv...), "GOEXPERIMENT=")
	if out, err := build.CombinedOutput(); err != nil {
		return "", "", fmt.Errorf("stock hello world: %w: %s", err, out)
	}
	return dir, wasm, nil
}
