package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
)

const root = "../../.."

// Every picture is shown, light to whom reads on light, with a text instead of
// it; nothing else lies there, and all of it together is soon loaded.
func TestReadme(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(root, "README.md"))
	require.NoError(t, err)
	readme := string(text)
	var files []string
	alts := map[string]string{}
	for _, s := range shots {
		dark, light := ".pictures/"+s.name+"-dark.png", ".pictures/"+s.name+"-light.png"
		files = append(files, dark, light)
		shown := regexp.MustCompile(`<picture>\s*<source media="\(prefers-color-scheme: dark\)" srcset="` + regexp.QuoteMeta(dark) + `">\s*<img src="` + regexp.QuoteMeta(light) + `" width="\d+" alt="([^"]+)">\s*</picture>`)
		found := shown.FindStringSubmatch(readme)
		require.NotNil(t, found, s.name)
		alts[s.name] = found[1]
	}
	assert.Equal(t, len(files), strings.Count(readme, ".pictures/"))
	there, err := filepath.Glob(filepath.Join(root, ".pictures", "*"))
	require.NoError(t, err)
	var names []string
	var bytes int64
	for _, f := range there {
		names = append(names, ".pictures/"+filepath.Base(f))
		info, err := os.Stat(f)
		require.NoError(t, err)
		bytes += info.Size()
	}
	assert.ElementsMatch(t, files, names)
	assert.Less(t, bytes, int64(600_000))

	// What the texts quote is what the pages say.
	answer := calc.Load(page("measure"), page("measure").Example).Report().Answer
	said, _, _ := strings.Cut(answer.Verdict.Says.String(), ". ")
	assert.Contains(t, alts["measure-phone"], answer.String())
	assert.Contains(t, alts["measure-phone"], answer.Verdict.Title+": "+strings.ToLower(said[:1])+said[1:])
	for _, c := range calc.Coverages {
		assert.Contains(t, readme, fmt.Sprintf("| %d | %.1f%% | %.1f%% |\n", c.Runs, c.Shown, c.Guide))
	}
	run, _ := calc.PageOf(calc.Run.Slug)
	assert.Contains(t, readme, "| "+run.Menu+" |")
	for _, p := range calc.Pages {
		assert.Contains(t, readme, "| "+p.Menu+" |")
	}
}
