package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"

	"striderule/scripts/gauge/stock"
	"striderule/scripts/make/squeeze"
)

// buildStock returns the folder of the stock site, with .gz (gzip -9) and .br
// (brotli 11) beside its files as beside ours.
func buildStock(root string) (string, error) {
	dir, _, err := stock.Program(root)
	if err != nil {
		return "", err
	}
	site := filepath.Join(dir, stock.Site)
	for from, to := range map[string]string{"icon.svg": "icon.svg", "icon-192.png": "icon.png"} {
		content, err := os.ReadFile(filepath.Join(root, "web", from))
		if err != nil {
			return "", err
		}
		if err := os.WriteFile(filepath.Join(site, "web", to), content, 0o644); err != nil {
			return "", err
		}
	}
	pages := exec.Command("go", "run", ".")
	pages.Dir = dir
	if out, err := pages.CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w: %s", err, out)
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
