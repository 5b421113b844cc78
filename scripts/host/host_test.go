package main

import (
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestHandler(t *testing.T) {
	dir := t.TempDir()
	for name, content := range map[string]string{"index.html": "start", "measure/index.html": "measure", "web/app.wasm": "\x00asm", "web/app.wasm.gz": "\x1f\x8b"} {
		path := filepath.Join(dir, name)
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(content), 0o644))
	}
	s := httptest.NewServer(handler(dir))
	defer s.Close()
	for path, want := range map[string]struct{ content, kind string }{
		"/":                {"start", "text/html; charset=utf-8"},
		"/measure/":        {"measure", "text/html; charset=utf-8"},
		"/measure":         {"measure", "text/html; charset=utf-8"},
		"/web/app.wasm":    {"\x00asm", "application/wasm"},
		"/web/app.wasm.gz": {"\x1f\x8b", "application/gzip"},
	} {
		r, err := http.Get(s.URL + path)
		require.NoError(t, err)
		body, err := io.ReadAll(r.Body)
		require.NoError(t, err)
		require.NoError(t, r.Body.Close())
		assert.Equal(t, http.StatusOK, r.StatusCode, path)
		assert.Equal(t, want.content, string(body), path)
		assert.Equal(t, want.kind, r.Header.Get("Content-Type"), path)
		assert.Empty(t, r.Header.Get("Content-Encoding"), path)
	}
}

func TestTakenPort(t *testing.T) {
	taken, err := net.Listen("tcp", "localhost:0")
	require.NoError(t, err)
	defer taken.Close()
	port := taken.Addr().(*net.TCPAddr).Port
	if port > 65000 {
		t.Skip("no room above the port that the system gave: " + strconv.Itoa(port))
	}
	l, err := listen(port, false)
	require.NoError(t, err)
	defer l.Close()
	assert.Greater(t, l.Addr().(*net.TCPAddr).Port, port)
	assert.True(t, l.Addr().(*net.TCPAddr).IP.IsLoopback(), "other devices are let in only when asked")
}

func TestBadPort(t *testing.T) {
	for _, port := range []string{"http", "0", "70000", "-1"} {
		err := run([]string{port, t.TempDir()}, false)
		require.Error(t, err)
		assert.Contains(t, err.Error(), "a port is a number")
	}
}
