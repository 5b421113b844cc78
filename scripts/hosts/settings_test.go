package hosts

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// settings are the blocks of HOSTING.md.
type settings struct {
	apache         string // as .htaccess
	http, location string // of nginx
}

var block = regexp.MustCompile("(?s)```(\\w+)\n(.*?)```")

func readSettings(t *testing.T) settings {
	t.Helper()
	doc, err := os.ReadFile("HOSTING.md")
	require.NoError(t, err)
	blocks := map[string][]string{}
	for _, m := range block.FindAllStringSubmatch(string(doc), -1) {
		blocks[m[1]] = append(blocks[m[1]], m[2])
	}
	require.Len(t, blocks["apache"], 1)
	require.Len(t, blocks["nginx"], 2)
	return settings{blocks["apache"][0], blocks["nginx"][0], blocks["nginx"][1]}
}

// layWith returns what unpacks the zip and lays a file beside it.
func layWith(t *testing.T, name, content string) func(site string) {
	return func(site string) {
		t.Helper()
		lay(t)(site)
		require.NoError(t, os.WriteFile(filepath.Join(site, name), []byte(content), 0o644))
	}
}

// withoutBrotli is the nginx that has not the module.
func withoutBrotli(location string) string {
	return strings.Replace(location, "brotli_static on;\n", "", 1)
}
