package main

import (
	"os"
	"path"
	"slices"

	"striderule/scripts/make/squeeze"
)

// compressible are the kinds of files of which compressed copies lie beside.
var compressible = []string{".css", ".html", ".js", ".svg", ".wasm", ".webmanifest"}

// compress writes the .gz and .br of each file that gets smaller by it, for hosts
// that send those to browsers that take them. The page itself fetches and undoes
// the .gz of the program where a host compresses nothing, or not as well.
func (b *builder) compress() error {
	files, err := siteFiles(b.site)
	if err != nil {
		return err
	}
	for _, f := range files {
		if !slices.Contains(compressible, path.Ext(f)) {
			continue
		}
		content, err := os.ReadFile(b.path(f))
		if err != nil {
			return err
		}
		for end := range ways {
			small, err := b.squeezed(content, end)
			if err != nil {
				return err
			}
			if len(small) >= len(content) {
				continue
			}
			if err := os.WriteFile(b.path(f+end), small, 0o644); err != nil {
				return err
			}
		}
	}
	return b.kept.Tidy()
}

// squeezed returns the content compressed as a file with that end.
func (b *builder) squeezed(content []byte, end string) ([]byte, error) {
	return b.kept.Get(ways[end].name, content, ways[end].do)
}

var ways = map[string]struct {
	name string
	do   func([]byte) ([]byte, error)
}{
	".gz": {"2.gz", squeeze.Gzip},
	".br": {"1.br", squeeze.Brotli},
}
