package calc_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"striderule/calc"

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

// rooms are the packages of calc in storeys: one imports from lower storeys only. What is
// in none of them is a calculator, which imports no other.
var rooms = [][]string{
	{"calc/lists", "calc/unit"},
	{"calc/drive", "calc/measure", "calc/word"},
	{"calc/report"},
	{"calc/link", "calc/sheet"},
	{"calc/form", "calc/page/axis"},
	{"calc/page/trial"},
	{"calculators"},
	{"calc"},
	{"calc/calctest", "calc/logbook"},
}

const (
	mostFiles = 25
	mostLines = 2800
)

func TestRooms(t *testing.T) {
	storey := func(room string) int {
		for i, rooms := range rooms {
			if slices.Contains(rooms, room) {
				return i
			}
		}
		require.True(t, strings.HasPrefix(room, "calc/page/"), "%s is in no storey", room)
		return slices.IndexFunc(rooms, func(r []string) bool { return r[0] == "calculators" })
	}
	out, err := exec.Command("go", "list", "-f", `{{.ImportPath}} {{.Dir}} {{join .GoFiles ","}} {{join .Imports ","}}`, "./...").CombinedOutput()
	require.NoError(t, err, string(out))
	calculators := 0
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
		p := strings.Split(line, " ")
		room, files := strings.TrimPrefix(p[0], "striderule/"), strings.Split(p[2], ",")
		for _, path := range strings.Split(p[3], ",") {
			if below, own := strings.CutPrefix(path, "striderule/"); own {
				assert.Less(t, storey(below), storey(room), "%s imports %s", room, below)
			}
		}
		if rooms[storey(room)][0] == "calculators" {
			calculators++
		}
		lines := 0
		for _, file := range files {
			source, err := os.ReadFile(filepath.Join(p[1], file))
			require.NoError(t, err)
			lines += strings.Count(string(source), "\n")
		}
		assert.LessOrEqual(t, len(files), mostFiles, room)
		assert.LessOrEqual(t, lines, mostLines, room)
	}
	assert.Len(t, calc.Pages, calculators, "a folder is a page")
}

// The program is begun when the site is built: Go's own random numbers would be the same
// on each visit. Those of a source with a seed are meant to be.
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
	assert.Positive(t, seen, "the draws of calc/measure are seen")
}
