package serving

import (
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestHandler(t *testing.T) {
	dir := t.TempDir()
	for name, content := range map[string]string{
		"index.html": "start", "index.html.br": "small start", "measure/index.html": "measure", "measure/index.html.gz": "zipped measure", "web/icon.svg": "<svg/>",
		"web/app.0123456789.wasm": "\x00asm", "web/app.0123456789.wasm.gz": "\x1f\x8b", "web/app.0123456789.wasm.br": "small",
	} {
		path := filepath.Join(dir, name)
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(content), 0o644))
	}
	const page, wasm, forEver = "text/html; charset=utf-8", "application/wasm", "max-age=31536000, immutable"
	for _, c := range []struct {
		send               []string
		accept, path       string
		content, kind      string
		encoding, lifetime string
	}{
		{nil, "br", "/", "start", page, "", "no-cache"},
		{nil, "br", "/measure/", "measure", page, "", "no-cache"},
		{nil, "br", "/measure", "measure", page, "", "no-cache"},
		{nil, "br", "/web/app.0123456789.wasm", "\x00asm", wasm, "", forEver},
		{nil, "gzip", "/web/app.0123456789.wasm.gz", "\x1f\x8b", "application/gzip", "", forEver},
		{[]string{"br"}, "gzip, br", "/", "small start", page, "br", "no-cache"},
		{[]string{"br"}, "gzip", "/", "start", page, "", "no-cache"},
		{[]string{"br"}, "br;q=0", "/", "start", page, "", "no-cache"},
		{[]string{"br"}, "br", "/web/icon.svg", "<svg/>", "image/svg+xml", "", "no-cache"},
		{[]string{"gzip"}, "gzip, br", "/measure/", "zipped measure", page, "gzip", "no-cache"},
		{[]string{"gzip", "br"}, "gzip, br", "/web/app.0123456789.wasm", "small", wasm, "br", forEver},
		{[]string{"gzip"}, "gzip, br", "/web/app.0123456789.wasm", "\x1f\x8b", wasm, "gzip", forEver},
		{[]string{"gzip"}, "gzip", "/web/app.0123456789.wasm.gz", "\x1f\x8b", "application/gzip", "", forEver},
	} {
		s := httptest.NewServer(Handler(dir, c.send...))
		request, err := http.NewRequest(http.MethodGet, s.URL+c.path, nil)
		require.NoError(t, err)
		request.Header.Set("Accept-Encoding", c.accept)
		r, err := http.DefaultClient.Do(request)
		require.NoError(t, err)
		body, err := io.ReadAll(r.Body)
		require.NoError(t, err)
		require.NoError(t, r.Body.Close())
		s.Close()
		what := []any{"%v, %s, %s", c.send, c.accept, c.path}
		assert.Equal(t, http.StatusOK, r.StatusCode, what...)
		assert.Equal(t, c.content, string(body), what...)
		assert.Equal(t, c.kind, r.Header.Get("Content-Type"), what...)
		assert.Equal(t, c.encoding, r.Header.Get("Content-Encoding"), what...)
		assert.Equal(t, c.lifetime, r.Header.Get("Cache-Control"), what...)
	}
}
