//go:build !wasm

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"striderule/app/pages"
)

func TestPagesAreTheSameEachTime(t *testing.T) {
	for _, p := range sitePages() {
		first, err := pages.HTML(p, "")
		require.NoError(t, err)
		for range 5 {
			again, err := pages.HTML(p, "")
			require.NoError(t, err)
			require.Equal(t, first, again, p.Path)
		}
	}
}

// Each address of each page leads to a page, or to a file that the build adds.
func TestAddressesLeadSomewhere(t *testing.T) {
	out := t.TempDir()
	require.NoError(t, pages.Generate(sitePages(), out, ""))
	made := []string{"web/app.wasm"}
	for _, p := range sitePages() {
		page, err := os.ReadFile(filepath.Join(out, filepath.FromSlash(p.Path), "index.html"))
		require.NoError(t, err)
		addresses := addressesOf(t, string(page))
		require.NotEmpty(t, addresses)
		for _, address := range addresses {
			assert.NotRegexp(t, "^(https?:)?//", address, "%s: nothing may come from elsewhere", p.Path)
			assert.False(t, strings.HasPrefix(address, "/"), "%s: %s works at the root of a host alone", p.Path, address)
			file, _, _ := strings.Cut(address, "#")
			file, _, _ = strings.Cut(file, "?")
			if file == "" {
				continue
			}
			target := filepath.ToSlash(filepath.Join(strings.TrimPrefix(p.Path, "/"), file))
			if strings.HasSuffix(file, "/") {
				assert.FileExists(t, filepath.Join(out, target, "index.html"), "%s: %s", p.Path, address)
				continue
			}
			known := false
			for _, m := range made {
				known = known || m == target
			}
			if !known {
				source := filepath.Join("..", "web", strings.TrimPrefix(target, "web/"))
				assert.FileExists(t, source, "%s: %s", p.Path, address)
			}
		}
	}
}

// addressesOf returns all addresses in a page that aren't for reading only.
func addressesOf(t *testing.T, page string) []string {
	t.Helper()
	doc, err := html.Parse(strings.NewReader(page))
	require.NoError(t, err)
	var found []string
	for n := range doc.Descendants() {
		for _, a := range n.Attr {
			external := n.Data == "a" && strings.HasPrefix(a.Val, "http")
			if (a.Key == "href" || a.Key == "src" || a.Key == "data-program") && !external {
				found = append(found, a.Val)
			}
		}
	}
	return found
}
