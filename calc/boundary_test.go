package calc_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The suite is a library on its own: it knows no screen and no network.
func TestNoBrowserBelowCalc(t *testing.T) {
	out, err := exec.Command("go", "list", "-deps", "./...").CombinedOutput()
	require.NoError(t, err, string(out))
	deps := strings.Fields(string(out))
	assert.Contains(t, deps, "striderule/calc/drive", "the list is what it should be")
	for _, d := range deps {
		assert.NotContains(t, d, "go-app")
		assert.NotContains(t, []string{"syscall/js", "net/http", "striderule/app"}, d)
	}
}

// A page says the same of the same sheet on every visit and in every browser: its lots come
// from a source with a seed, none from Go's own.
func TestNoRandomNumbersOfGosOwn(t *testing.T) {
	used := regexp.MustCompile(`\brand\.([A-Z]\w*)`)
	seen := 0
	for _, folder := range []string{".", "*", "page/*", "../app"} {
		files, err := filepath.Glob(folder + "/*.go")
		require.NoError(t, err)
		for _, file := range files {
			if strings.HasSuffix(file, "_test.go") {
				continue
			}
			source, err := os.ReadFile(file)
			require.NoError(t, err)
			for _, use := range used.FindAllSubmatch(source, -1) {
				assert.Contains(t, []string{"New", "NewPCG", "Rand"}, string(use[1]), file)
				seen++
			}
		}
	}
	assert.Positive(t, seen, "the draws of calc/simulation are seen")
}
