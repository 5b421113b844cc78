package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"

	"striderule/scripts/make/squeeze"
	"striderule/scripts/make/trim"
)

// stock is the smallest site of the untouched go-app, as its own generator writes
// it. Icons are its own files: left out, they would be fetched from elsewhere.
const stock = `package main

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

// buildStock returns the folder of the stock site, with .gz (gzip -9) and .br
// (brotli 11) beside its files as beside ours.
func buildStock(root string) (string, error) {
	dir := filepath.Join(root, ".build", "stock")
	if err := os.RemoveAll(dir); err != nil {
		return "", err
	}
	site := filepath.Join(dir, "site")
	if err := os.MkdirAll(filepath.Join(site, "web"), 0o755); err != nil {
		return "", err
	}
	if err := os.WriteFile(filepath.Join(dir, "main.go"), []byte(stock), 0o644); err != nil {
		return "", err
	}
	for from, to := range map[string]string{"icon.svg": "icon.svg", "icon-192.png": "icon.png"} {
		content, err := os.ReadFile(filepath.Join(root, "web", from))
		if err != nil {
			return "", err
		}
		if err := os.WriteFile(filepath.Join(site, "web", to), content, 0o644); err != nil {
			return "", err
		}
	}
	for _, c := range []struct {
		env  []string
		args []string
	}{
		{append(trim.WasmEnv[:len(trim.WasmEnv):len(trim.WasmEnv)], "GOEXPERIMENT="), []string{"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-o", filepath.Join(site, "web", "app.wasm"), "."}},
		{nil, []string{"run", "."}},
	} {
		command := exec.Command("go", c.args...)
		command.Dir = dir
		command.Env = append(os.Environ(), c.env...)
		if out, err := command.CombinedOutput(); err != nil {
			return "", fmt.Errorf("%w: %s", err, out)
		}
	}
	return site, beside(site, filepath.Join(root, ".build", "stock-squeezed"))
}

func beside(site, keep string) error {
	kept, err := squeeze.Keep(keep)
	if err != nil {
		return err
	}
	return filepath.WalkDir(site, func(path string, d os.DirEntry, err error) error {
		if err != nil || !slices.Contains([]string{".html", ".js", ".css", ".wasm", ".svg", ".webmanifest"}, filepath.Ext(path)) {
			return err
		}
		content, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		for end, do := range map[string]func([]byte) ([]byte, error){".gz": squeeze.Gzip, ".br": squeeze.Brotli} {
			small, err := kept.Get("1"+end, content, do)
			if err != nil {
				return err
			}
			if err := os.WriteFile(path+end, small, 0o644); err != nil {
				return err
			}
		}
		return nil
	})
}
