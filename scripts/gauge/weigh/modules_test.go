package main

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The README of scripts/make/program gives each module of go.mod its reason and its bytes.
func TestEveryModuleHasItsReason(t *testing.T) {
	root := filepath.Join("..", "..", "..")
	guide, err := os.ReadFile(filepath.Join(root, "scripts", "make", "program", "README.md"))
	require.NoError(t, err)
	rows := map[string]int{}
	for _, m := range regexp.MustCompile(`(?m)^\| (\S+\.\S+/\S+) \| [^|]{10,} \| (?:–|[\d,]+) \| [\d,]+ \|$`).FindAllStringSubmatch(string(guide), -1) {
		rows[m[1]]++
	}
	modules, err := required(root)
	require.NoError(t, err)
	require.NotEmpty(t, modules)
	for _, m := range modules {
		assert.Equal(t, 1, rows[m], "%s: a row of its own in the table of dependencies", m)
		delete(rows, m)
	}
	assert.Empty(t, rows, "rows of modules that are not in go.mod")
}
