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
)

// rooms are the packages of the app in storeys: one imports from lower storeys only.
var rooms = [][]string{
	{"app/browser", "app/markup", "app/site"},
	{"app/view"},
	{"app/frame", "app/kept", "app/pages"},
	{"app/log"},
	{"app"},
}

// A view is handed what it shows, and a frame knows no calculator.
func TestRooms(t *testing.T) {
	storey := func(room string) int {
		return slices.IndexFunc(rooms, func(r []string) bool { return slices.Contains(r, room) })
	}
	out, err := exec.Command("go", "list", "-f", `{{.ImportPath}} {{.Dir}} {{join .GoFiles ","}} {{join .Imports ","}}`, "./...").CombinedOutput()
	require.NoError(t, err, string(out))
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
		p := strings.Split(line, " ")
		room, files := strings.TrimPrefix(p[0], "striderule/"), strings.Split(p[2], ",")
		require.NotEqual(t, -1, storey(room), room)
		for _, path := range strings.Split(p[3], ",") {
			below := strings.TrimPrefix(path, "striderule/")
			if strings.HasPrefix(below, "app") {
				assert.Less(t, storey(below), storey(room), "%s imports %s", room, below)
			}
			if room == "app/view" {
				assert.NotContains(t, []string{"app/browser", "app/frame", "calc"}, below, "a view knows only what it is handed")
			}
		}
		lines := 0
		for _, file := range files {
			source, err := os.ReadFile(filepath.Join(p[1], file))
			require.NoError(t, err)
			lines += strings.Count(string(source), "\n")
		}
		assert.LessOrEqual(t, len(files), 25, room)
		assert.LessOrEqual(t, lines, 2800, room)
	}
}
