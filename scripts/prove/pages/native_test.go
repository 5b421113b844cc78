package pages

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	build "striderule/scripts/make/program"
	"striderule/scripts/prove/browser"
)

// figureTests print every figure of the reference vectors and of the old links.
const figureTests = "^(TestVectors|TestOldLinksOpen)$"

var portableOnce struct {
	sync.Once
	figures []string
}

// portableFigures are those of nativeFigures, worked out once for all tests.
func portableFigures(t *testing.T) []string {
	t.Helper()
	portableOnce.Do(func() { portableOnce.figures = nativeFigures(t, true) })
	if portableOnce.figures == nil {
		t.Skip("there are no native figures to compare with")
	}
	return portableOnce.figures
}

// nativeFigures returns what the figure tests print natively. Portable has them
// compiled without the assembler that Go's math has for exp, log and hypot on this
// processor, and for no other in a browser's: it rounds otherwise, now and then.
func nativeFigures(t *testing.T, portable bool) []string {
	t.Helper()
	// On others the compiler melts a product and a sum into one step, rounded once.
	if runtime.GOARCH != "amd64" {
		t.Skipf("figures of %s may differ from WebAssembly's in the last bit", runtime.GOARCH)
	}
	root := filepath.Dir(browser.Dist(t))
	args := []string{"test", "-vet=off", "-count=1", "-run=" + figureTests, "-v"}
	if portable {
		args = append(args, "-overlay="+withoutAssembler(t, root))
	}
	native := exec.Command("go", append(args, "./calc")...)
	native.Dir = root
	native.Env = append(os.Environ(), "VECTORS_FIGURES=1", "VECTORS_DIR=")
	out, err := native.CombinedOutput()
	require.NoError(t, err, string(out))
	return figuresAmong(strings.Split(string(out), "\n"))
}

// figuresAmong sorts them: pages come in any order.
func figuresAmong(lines []string) (figures []string) {
	for _, line := range lines {
		if strings.HasPrefix(line, "figure ") {
			figures = append(figures, line)
		}
	}
	slices.Sort(figures)
	return figures
}

// withoutAssembler writes an overlay for go build, in which Go's math has its
// portable functions on every processor.
func withoutAssembler(t *testing.T, root string) string {
	t.Helper()
	goroot, err := build.GoEnv(root, "GOROOT")
	require.NoError(t, err)
	dir, replace := t.TempDir(), map[string]string{}
	for _, name := range []string{"exp", "hypot", "log"} {
		const gone = ""
		files, err := filepath.Glob(filepath.Join(goroot, "src", "math", name+"_*"))
		require.NoError(t, err)
		portable := 0
		for _, file := range files {
			base := strings.TrimPrefix(filepath.Base(file), name)
			switch base {
			case "_asm.go", "_amd64.go", "_amd64.s":
				replace[file] = gone
			case "_noasm.go", "_stub.go":
				portable++
				source, err := os.ReadFile(file)
				require.NoError(t, err)
				everywhere := regexp.MustCompile(`(?m)^//go:build .*$`).ReplaceAll(source, nil)
				require.NotEqual(t, source, everywhere)
				replace[file] = filepath.Join(dir, name+".go")
				require.NoError(t, os.WriteFile(replace[file], everywhere, 0o644))
			}
		}
		require.Equal(t, 1, portable, "Go's math has %s in other files now: %v", name, files)
	}
	text, err := json.Marshal(map[string]any{"Replace": replace})
	require.NoError(t, err)
	overlay := filepath.Join(dir, "overlay.json")
	require.NoError(t, os.WriteFile(overlay, text, 0o644))
	return overlay
}
