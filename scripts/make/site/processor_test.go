package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Pages and pictures are the same bytes whatever the builder's processor: others melt a
// product and a sum into one step, rounded once.
func TestPagesOfOtherProcessors(t *testing.T) {
	if os.Getenv("STRIDERULE_FULL") == "" {
		t.Skip("compiles the app for two other processors: scripts/test full does")
	}
	root, err := moduleRoot()
	require.NoError(t, err)
	pages := func(env string, emulator ...string) (string, error) {
		dir := t.TempDir()
		app, out := filepath.Join(dir, "app"), filepath.Join(dir, "out")
		compile := exec.Command("go", "build", "-o", app, "./app")
		compile.Dir, compile.Env = root, append(os.Environ(), env)
		log, err := compile.CombinedOutput()
		require.NoError(t, err, string(log))
		words := append(emulator, app, "-out", out)
		return out, exec.Command(words[0], words[1:]...).Run()
	}
	here, err := pages("GOAMD64=v1")
	require.NoError(t, err)
	want, err := siteFiles(here)
	require.NoError(t, err)
	require.Greater(t, len(want), 20)
	for _, other := range []struct {
		env      string
		emulator []string
	}{{env: "GOAMD64=v3"}, {"GOARCH=arm64", []string{"qemu-aarch64"}}} {
		t.Run(other.env, func(t *testing.T) {
			if len(other.emulator) > 0 {
				if _, err := exec.LookPath(other.emulator[0]); err != nil {
					t.Skipf("skipped: there is no %s (Debian: apt-get install qemu-user)", other.emulator[0])
				}
			}
			there, err := pages(other.env, other.emulator...)
			if err != nil {
				t.Skipf("skipped: this processor does not run it: %v", err)
			}
			got, err := siteFiles(there)
			require.NoError(t, err)
			require.Equal(t, want, got)
			for _, f := range want {
				assert.Equal(t, read(t, here, f), read(t, there, f), f)
			}
		})
	}
}
