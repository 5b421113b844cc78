package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
)

// rooms are the packages of calc and of the app in storeys: one imports from lower storeys
// only. What is in calc/page and in no storey is a calculator, which imports no other.
var rooms = [][]string{
	{"calc/calctest/cases", "calc/lists", "calc/word"},
	{"calc/distribution", "calc/unit"},
	{"calc/drive", "calc/measure"},
	{"calc/simulation"},
	{"calc/report"},
	{"calc/link", "calc/sheet"},
	{"calc/form", "calc/page/axis"},
	{"calc/page/trial"},
	{"calculators"},
	{"calc"},
	{"calc/calctest", "calc/logbook"},
	{"calc/machine", "calc/run"},
	{"app/browser", "app/markup", "app/site"},
	{"app/view"},
	{"app/frame", "app/kept", "app/pages"},
	{"app/file", "app/log", "app/machines", "app/method", "app/whose"},
	{"app/calculator", "app/run"},
	{"app"},
}

const (
	mostFiles = 25
	mostLines = 2900
)

func TestRooms(t *testing.T) {
	calculators := slices.IndexFunc(rooms, func(storey []string) bool { return storey[0] == "calculators" })
	storey := func(room string) int {
		if at := slices.IndexFunc(rooms, func(storey []string) bool { return slices.Contains(storey, room) }); at >= 0 {
			return at
		}
		require.True(t, strings.HasPrefix(room, "calc/page/"), "%s is in no storey", room)
		return calculators
	}
	out, err := exec.Command("go", "list", "-f", `{{.ImportPath}} {{.Dir}} {{join .GoFiles ","}} {{join .Imports ","}}`, "striderule/calc/...", "striderule/app/...").CombinedOutput()
	require.NoError(t, err, string(out))
	pages := 0
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
		p := strings.Split(line, " ")
		room, files := strings.TrimPrefix(p[0], "striderule/"), strings.Split(p[2], ",")
		for _, path := range strings.Split(p[3], ",") {
			below, own := strings.CutPrefix(path, "striderule/")
			if !own {
				continue
			}
			assert.Less(t, storey(below), storey(room), "%s imports %s", room, below)
			if room == "app/view" {
				assert.NotContains(t, []string{"app/browser", "calc"}, below, "a view knows only what it is handed")
			}
		}
		if storey(room) == calculators {
			pages++
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
	assert.Len(t, calc.Pages, pages, "a folder is a page")
}

// What is behind scripts lies in three rooms: what makes the site, what proves it, what gauges
// it. One imports from those before it only, and nobody outside of them imports any.
func TestRoomsOfScripts(t *testing.T) {
	order := []string{"make", "prove", "gauge"}
	room := func(path string) int {
		rest, ok := strings.CutPrefix(path, "striderule/scripts/")
		if !ok {
			return -1
		}
		name, _, _ := strings.Cut(rest, "/")
		at := slices.Index(order, name)
		require.GreaterOrEqual(t, at, 0, "%s is in no room", path)
		return at
	}
	out, err := exec.Command("go", "list", "-f", `{{.ImportPath}} {{join .Imports ","}},{{join .TestImports ","}},{{join .XTestImports ","}}`, "striderule/...").CombinedOutput()
	require.NoError(t, err, string(out))
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
		of, imports, _ := strings.Cut(line, " ")
		for _, path := range strings.Split(imports, ",") {
			assert.LessOrEqual(t, room(path), room(of), "%s imports %s", of, path)
		}
	}
}
