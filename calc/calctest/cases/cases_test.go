package cases

import (
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every package with properties has this one.
func TestAllPropertiesHaveTheirCases(t *testing.T) {
	const root = "../../.."
	properties, seeded := map[string]bool{}, map[string]bool{}
	require.NoError(t, filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() && entry.Name() == "node_modules" {
			return fs.SkipDir
		}
		if !strings.HasSuffix(path, "_test.go") {
			return nil
		}
		text, err := os.ReadFile(path)
		if strings.Contains(string(text), "\t\"pgregory.net/rapid\"\n") {
			properties[filepath.Dir(path)] = true
		}
		if strings.Contains(string(text), "\t_ \"striderule/calc/calctest/cases\"") {
			seeded[filepath.Dir(path)] = true
		}
		return err
	}))
	require.NotEmpty(t, properties)
	assert.Equal(t, properties, seeded)
}

func TestSameCasesEachTime(t *testing.T) {
	want := seed
	if os.Getenv("STRIDERULE_FULL") != "" {
		want = "0" // as it comes
	}
	assert.Equal(t, want, flag.Lookup("rapid.seed").Value.String())
}
