package pages

import (
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	build "striderule/scripts/make/program"
	"striderule/scripts/prove/browser"
)

// runTests has a page run a program of tests, and keeps what it prints in lines.
const runTests = `"use strict";
window.lines = [];
console.log = (line) => lines.push(line);
const go = new Go();
go.argv = ["tests", "-test.run=` + figureTests + `", "-test.v"];
go.env = {VECTORS_FIGURES: "1"};
go.exit = (code) => { window.exitCode = code; };
WebAssembly.instantiateStreaming(fetch("tests.wasm"), go.importObject).then(({instance}) => go.run(instance));`

// pageFigures has the browser run the figure tests: the calculator's own packages,
// compiled and slimmed as for the site. The tests hold in the page, or it fails.
func pageFigures(t *testing.T) []string {
	t.Helper()
	root, dir := filepath.Dir(browser.Dist(t)), t.TempDir()
	require.NoError(t, build.Tests(root, "./calc", filepath.Join(dir, "tests.wasm")))
	goroot, err := build.GoEnv(root, "GOROOT")
	require.NoError(t, err)
	support, err := os.ReadFile(filepath.Join(goroot, "lib", "wasm", "wasm_exec.js"))
	require.NoError(t, err)
	for name, content := range map[string]string{
		"wasm_exec.js": string(support), "run.js": runTests,
		"index.html": `<!DOCTYPE html><head><title>Tests</title><link rel="icon" href="data:,"><script src="wasm_exec.js"></script><script src="run.js"></script>`,
	} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(content), 0o644))
	}
	p := browser.NewSiteAt(t, dir, "/").NewPage(t)
	p.Allow("already exited") // a timer of the runtime's, of a program that ends
	p.Load("/")
	p.WaitFor(5*time.Minute, `"exitCode" in window`)
	lines := browser.Eval[[]string](p, `lines`)
	require.Zero(t, browser.Eval[int](p, `exitCode`), "the tests hold in the page: %s", strings.Join(lines, "\n"))
	return figuresAmong(lines)
}

// All reference vectors hold in the page, and every figure of theirs has the same
// bits as natively, without the assembler of Go's math.
func TestVectorsToTheLastBit(t *testing.T) {
	browser.Alongside(t)
	want, got := portableFigures(t), pageFigures(t)
	require.Greater(t, len(want), 3000)
	require.Len(t, got, len(want))
	for i := range want {
		assert.Equal(t, want[i], got[i])
	}
	t.Logf("%s: %d figures of vectors and links are the same to the last bit", browser.Name(), len(got))
}

// With it, a native program's figures are others now and then, in the last bits.
func TestVectorsWithAssembler(t *testing.T) {
	browser.Alongside(t)
	want, assembled, differ, most := portableFigures(t), nativeFigures(t, false), 0, 0.0
	require.Len(t, assembled, len(want))
	last := regexp.MustCompile(`\S+$`)
	for i := range assembled {
		if assembled[i] == want[i] {
			continue
		}
		differ++
		a, errA := strconv.ParseFloat(last.FindString(assembled[i]), 64)
		b, errB := strconv.ParseFloat(last.FindString(want[i]), 64)
		if assert.NoError(t, errA) && assert.NoError(t, errB) && assert.InEpsilon(t, a, b, 1e-13, want[i]) {
			most = max(most, a/b-1, b/a-1)
		}
	}
	t.Logf("%d of %d figures differ, by %.1g of their value at most", differ, len(want), most)
}
