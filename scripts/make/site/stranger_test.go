package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"striderule/scripts/make/program"
)

// strange are settings that somebody else may have.
var strange = []string{
	"TZ=Pacific/Kiritimati", "LANG=tr_TR.UTF-8", "LC_ALL=tr_TR.UTF-8",
	"GOFLAGS=-modcacherw -tags=theirs", "GOWASM=satconv,signext", "GOWORK=off",
	"SOURCE_DATE_EPOCH=1", "GOMAXPROCS=3",
}

// buildAsStranger builds a copy of the module at root as somebody else would: in
// another folder, time zone and language, with another home, umask and settings. In
// scripts/test full nothing that was fetched, compiled or compressed before is used
// again, and where the test may, it is another user of the system. It returns the
// copy's folder, which has dist in it.
func buildAsStranger(t *testing.T, root string) string {
	t.Helper()
	// Not t.TempDir, into which other users can't look.
	own, err := os.MkdirTemp("", "striderule-stranger-")
	require.NoError(t, err)
	t.Cleanup(func() { _ = os.RemoveAll(own) })
	require.NoError(t, os.Chmod(own, 0o755))
	module := filepath.Join(own, "a folder, with späces")
	copyModule(t, root, module)

	env := append(os.Environ(), strange...)
	env = append(env, "HOME="+own)
	for _, folder := range []string{"GOCACHE", "GOMODCACHE", "GOPATH"} {
		is, err := program.GoEnv(root, folder)
		require.NoError(t, err)
		env = append(env, folder+"="+is)
	}
	as := []string{"sh", "-c", `umask 077 && exec "$@"`, "sh"}
	if os.Getenv("STRIDERULE_FULL") != "" {
		fetched, err := program.GoEnv(root, "GOMODCACHE")
		require.NoError(t, err)
		env = append(env, "GOCACHE="+filepath.Join(own, "cache"), "GOPATH="+own, "GOMODCACHE="+filepath.Join(own, "modules"))
		fetch := exec.Command("go", "mod", "download")
		fetch.Dir, fetch.Env = module, append(env, "GOPROXY=file://"+filepath.ToSlash(fetched)+"/cache/download")
		log, err := fetch.CombinedOutput()
		require.NoError(t, err, string(log))
		as = append(otherUser(t, own), as...)
	}
	b := exec.Command(as[0], append(as[1:], "go", "run", "./scripts/make/site", "-out", filepath.Join(module, "dist"))...)
	b.Dir, b.Env = module, append(env, "GOPROXY=off")
	log, err := b.CombinedOutput()
	require.NoError(t, err, string(log))
	return module
}

// otherUser gives the folder to another user of the system and returns the command
// that runs others as that one; none where only root could.
func otherUser(t *testing.T, dir string) []string {
	t.Helper()
	setpriv, err := exec.LookPath("setpriv")
	if err != nil || os.Getuid() != 0 {
		t.Log("not tried as another user: that takes root, and setpriv")
		return nil
	}
	const nobody = "65534"
	out, err := exec.Command("chown", "-R", nobody+":"+nobody, dir).CombinedOutput()
	require.NoError(t, err, strings.TrimSpace(string(out)))
	return []string{setpriv, "--reuid", nobody, "--regid", nobody, "--clear-groups", "--"}
}
