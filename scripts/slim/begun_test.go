package slim

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// startAsThePageDoes has node start a program with the lines by which web/start.js does.
func startAsThePageDoes(t *testing.T, program []byte) string {
	t.Helper()
	page, err := os.ReadFile(filepath.Join("..", "..", "web", "start.js"))
	require.NoError(t, err)
	run := regexp.MustCompile(`(?s)\n  function run\(.*?\n  }\n`).Find(page)
	require.NotEmpty(t, run, "web/start.js has no function run")
	root, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(t, err)
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "program.wasm"), program, 0o644))
	script := fmt.Sprintf(`
		const fs = require("fs");
		globalThis.window = globalThis;
		globalThis.striderule = {};
		require(%q);
		%s
		(async () => {
			const go = new Go();
			const { instance } = await WebAssembly.instantiate(fs.readFileSync(%q), go.importObject);
			const end = run(go, instance);
			await new Promise((r) => setTimeout(r, 10));
			striderule.start("hello");
			await end;
		})();`, filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"), run, filepath.Join(dir, "program.wasm"))
	out, err := exec.Command("node", "-e", script).CombinedOutput()
	require.NoError(t, err, string(out))
	return string(out)
}

// TestBegun starts one program that is begun and not, slimmed and not.
func TestBegun(t *testing.T) {
	was := build(t, "waits.go")
	slimmed, err := Program(was)
	require.NoError(t, err)
	for name, whole := range map[string][]byte{"as it was linked": was, "slimmed": slimmed} {
		begun, err := Begun(whole, "GOGC=800")
		require.NoError(t, err, name)
		again, err := Begun(whole, "GOGC=800")
		require.NoError(t, err, name)
		assert.Equal(t, begun, again, "the same each time")
		m, err := parse(begun)
		require.NoError(t, err)
		exports, err := m.exports()
		require.NoError(t, err)
		for _, e := range exports {
			assert.Contains(t, []string{"resume", "getsp", "mem", "testExport", "testExport0"}, e.name, name)
		}
		_, err = Begun(begun, "GOGC=800")
		assert.ErrorContains(t, err, "it was begun before", name)
		if _, err := exec.LookPath("node"); err != nil {
			t.Skip("the program is not run: there is no node (Debian: apt-get install nodejs)")
		}
		want := startAsThePageDoes(t, whole)
		assert.Equal(t, "went on with hello 3 3 1000 1\ntrue 2\n", want)
		assert.Equal(t, want, startAsThePageDoes(t, begun), name)
	}
}

// What a program asks for before it waits is told, as it would get nothing for it.
func TestBegunAsksForNothing(t *testing.T) {
	_, err := Begun(build(t, "asks.go"), "GOGC=800")
	assert.ErrorContains(t, err, `it asks for "document"`)
	_, err = Begun(build(t, "runtime.go"), "GOGC=800")
	assert.Error(t, err)
	for what, broken := range map[string][]byte{"nothing": nil, "text": []byte("<!doctype html>"), "head alone": []byte(magic)} {
		_, err := Begun(broken, "GOGC=800")
		assert.ErrorContains(t, err, "slim: ", what)
	}
}
