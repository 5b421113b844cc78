//go:build !wasm

package main

import (
	"bytes"
	"image/png"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"striderule/app/pages"
)

// metas are a document's meta elements by name or property.
func metas(t *testing.T, page string) map[string]string {
	t.Helper()
	doc, err := html.Parse(strings.NewReader(page))
	require.NoError(t, err)
	found := map[string]string{}
	for n := range doc.Descendants() {
		if n.Data != "meta" {
			continue
		}
		at := map[string]string{}
		for _, a := range n.Attr {
			at[a.Key] = a.Val
		}
		found[at["name"]+at["property"]] = at["content"]
	}
	return found
}

// Each page says of itself to readers of links what it is, with a picture of its
// own that is there and as large as it is said to be.
func TestPreviews(t *testing.T) {
	if testing.Short() {
		t.Skip("pictures take their time")
	}
	for _, address := range []string{"", "https://club.example/tools/striderule/"} {
		out := t.TempDir()
		require.NoError(t, pages.Generate(sitePages(), out, address))
		seen := map[string]string{}
		for _, p := range sitePages() {
			page, err := os.ReadFile(filepath.Join(out, p.Path, "index.html"))
			require.NoError(t, err)
			m := metas(t, string(page))
			assert.Equal(t, p.Title, m["og:title"], p.Path)
			assert.Equal(t, p.Description, m["og:description"], p.Path)
			assert.Equal(t, m["description"], m["og:description"], p.Path)
			assert.Equal(t, "website", m["og:type"], p.Path)
			assert.NotEmpty(t, m["og:image:alt"], p.Path)
			for _, text := range []string{m["og:title"], m["og:description"], m["og:image:alt"]} {
				assert.Empty(t, seen[text], "%s says the same as %s", p.Path, seen[text])
				seen[text] = p.Path
			}
			assert.LessOrEqual(t, len([]rune(p.Title)), 70, p.Path)
			assert.Regexp(t, `^.{70,200}[.]$`, p.Description, p.Path)

			here := "https://elsewhere.example/a/b" + p.Path
			if address != "" {
				here = address + strings.TrimPrefix(p.Path, "/")
				assert.Equal(t, here, m["og:url"], p.Path)
				assert.True(t, strings.HasPrefix(m["og:image"], address), m["og:image"])
			} else {
				assert.NotContains(t, m, "og:url", p.Path)
			}
			base, err := url.Parse(here)
			require.NoError(t, err)
			picture, err := base.Parse(m["og:image"])
			require.NoError(t, err)
			root := strings.TrimSuffix(base.Path, strings.TrimPrefix(p.Path, "/"))
			content, err := os.ReadFile(filepath.Join(out, strings.TrimPrefix(picture.Path, root)))
			require.NoError(t, err, p.Path)
			assert.Less(t, len(content), 40_000, p.Path)
			size, err := png.DecodeConfig(bytes.NewReader(content))
			require.NoError(t, err)
			assert.Equal(t, [2]string{"1200", "630"}, [2]string{m["og:image:width"], m["og:image:height"]})
			assert.Equal(t, [2]int{1200, 630}, [2]int{size.Width, size.Height})
			assert.Empty(t, seen[string(content)], "%s has the picture of %s", p.Path, seen[string(content)])
			seen[string(content)] = p.Path
			again, err := pages.PreviewOf(sitePages(), p, string(page))
			require.NoError(t, err)
			assert.True(t, bytes.Equal(content, again), "%s: the same each time", p.Path)
		}
	}
}

func TestAddressOfTheSite(t *testing.T) {
	for _, good := range []string{"", "https://club.example/", "http://club.example/tools/striderule/"} {
		assert.NoError(t, pages.CheckAddress(good))
	}
	for _, bad := range []string{"club.example/tools/", "https://club.example/tools", "/tools/", "https:///x/", "https://club.example/?a=/", "ftp://club.example/"} {
		assert.ErrorContains(t, pages.CheckAddress(bad), "write one like", bad)
	}
}
