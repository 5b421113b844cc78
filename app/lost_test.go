//go:build !wasm

package main

import (
	"crypto/sha256"
	"encoding/base64"
	"html"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/app/pages"
)

func TestLostPage(t *testing.T) {
	page, err := pages.LostHTML(sitePages(), "")
	require.NoError(t, err)
	script := regexp.MustCompile(`(?s)<script>(.*)</script>`).FindStringSubmatch(page)
	require.NotNil(t, script)
	sum := sha256.Sum256([]byte(script[1]))
	assert.Contains(t, html.UnescapeString(page), "script-src 'sha256-"+base64.StdEncoding.EncodeToString(sum[:])+"'", "else the browser refuses it")
	assert.Contains(t, page, `id="pages" hidden`, "no links that lead nowhere")
	for _, address := range addressesOf(t, page) {
		assert.Contains(t, []string{"#", "data:,"}, address, "a relative address is wrong at another depth")
	}

	// Where the address is known the links are there without the script.
	const site = "https://club.example/tools/striderule/"
	page, err = pages.LostHTML(sitePages(), site)
	require.NoError(t, err)
	assert.NotContains(t, page, `id="pages" hidden`)
	for _, p := range sitePages() {
		assert.Contains(t, page, `<a href="`+site+strings.TrimPrefix(p.Path, "/")+`" data-path`)
	}
}
