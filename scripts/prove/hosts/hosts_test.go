// Package hosts tries the zip that people unpack on web hosts of their own, under
// real web servers and under the settings of HOSTING.md. It takes some minutes and
// wants those servers installed, so it runs in scripts/test full alone.
package hosts

import (
	"archive/zip"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/make/built"
	"striderule/scripts/prove/browser"
)

func TestMain(m *testing.M) { browser.Main(m) }

// folders are where the site lies on each host.
var folders = []string{"", "tools/cal/", "Öffentliches Werkzeug/maß & zähl’/"}

func fullOnly(t *testing.T) {
	t.Helper()
	if os.Getenv("STRIDERULE_FULL") == "" {
		t.Skip("web servers are tried by scripts/test full")
	}
}

func TestHosts(t *testing.T) {
	fullOnly(t)
	set := readSettings(t)
	for _, c := range []struct {
		name string
		host host
		more string // .htaccess
		send string // the encoding of scripts
		wasm string // the type of the program, if the case is about it
	}{
		{name: "python http.server", host: python},
		{name: "busybox httpd", host: busybox, send: "gzip"},
		{name: "apache", host: apache(""), wasm: "application/wasm"},
		{name: "apache, compressing", host: apache(deflate), send: "gzip"},
		{name: "apache, compressed files as an encoding", host: apache("AddEncoding x-gzip .gz")},
		{name: "apache, a wrong type and no .gz", host: apache("AddType text/plain .wasm\n<FilesMatch \"\\.gz$\">\nRequire all denied\n</FilesMatch>"), wasm: "text/plain"},
		{name: "apache, with the settings", host: apache(""), more: set.apache, send: "br"},
		{name: "apache, compressing, with the settings", host: apache(deflate), more: set.apache, send: "br"},
		{name: "nginx", host: nginx("", "")},
		{name: "nginx, compressing", host: nginx("gzip_types application/javascript text/css application/wasm;", ""), send: "gzip"},
		{name: "nginx, a wrong type", host: nginx("", "types { text/html html; text/css css; application/javascript js; text/plain wasm; }"), wasm: "text/plain"},
		{name: "nginx, with the settings", host: nginx(set.http, set.location), send: "br"},
		{name: "nginx, with the settings, no brotli", host: nginx(set.http, withoutBrotli(set.location)), send: "gzip"},
		{name: "a host of pages", host: pagesLike(false)},
		{name: "a host of pages, compressing", host: pagesLike(true), send: "gzip"},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, folder := range folders {
				t.Run("/"+folder, func(t *testing.T) {
					address, stop := c.host.begin(t, folder, layWith(t, ".htaccess", c.more))
					assert.Equal(t, c.send, head(t, address, "web/load.*.js", "br, gzip").Get("Content-Encoding"), "else the case is not what it says")
					if c.wasm != "" {
						assert.Equal(t, c.wasm, head(t, address, "web/app.*.wasm", "").Get("Content-Type"), "else the case is not what it says")
					}
					walk(t, address, stop)
				})
			}
		})
	}
}

// A feed test, and the setting that it leads to.
const (
	entries = "#v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6"
	found   = 564.3356643
)

// walk does what a visitor does, and goes on after the server has stopped.
func walk(t *testing.T, root string, stop func()) {
	p := browser.NewPage(t, root)
	p.Allow("403 (Forbidden)") // the host that refuses .gz
	computes := func(when string) {
		t.Helper()
		assert.InEpsilon(t, found, p.Value("out-steps"), 1e-9, when)
		p.Fill("steps", "269")
		assert.InEpsilon(t, found/2, p.Value("out-steps"), 1e-9, "%s, typed", when)
		p.Wait(`location.hash.includes("steps=269&")`)
		assert.True(t, strings.HasPrefix(p.Address(), root+"measure"), "%s: %s", when, p.Address())
		link := browser.Eval[string](p, `document.getElementById("copy-link").dataset.copy`)
		assert.True(t, strings.HasPrefix(link, root+"measure/#v=1&"), "%s: the link to copy is %s", when, link)
	}
	p.Open("measure/" + entries)
	computes("a link")
	p.Reload()
	assert.InEpsilon(t, found/2, p.Value("out-steps"), 1e-9, "a reload keeps what was typed")
	// Not WaitOffline: a page that is just loading when the worker takes over is not
	// among those that it takes.
	browser.Eval[bool](p, `navigator.serviceWorker.ready.then(() => true)`)

	p.Open("measure" + entries)
	computes("a link without the last slash of its page")
	p.Open("measure/index.html" + entries)
	computes("a link with the file's name")
	headings := map[string]string{}
	for _, target := range browser.Eval[[]string](p, `[...document.querySelectorAll("header a[href]")].map((a) => a.href)`) {
		_, inside := strings.CutPrefix(target, root)
		require.True(t, inside, "%s is outside %s", target, root)
		browser.Eval[bool](p, `([...document.querySelectorAll("header a[href]")].find((a) => a.href === "`+target+`").click(), true)`)
		p.Wait(`location.href.split("#")[0] === "` + target + `"`)
		p.Settle()
		headings[target] = p.Text("h1")
	}
	require.Len(t, headings, len(browser.Pages(t, browser.Dist(t))))
	last := p.Text("h1")
	p.Reload()
	assert.Equal(t, last, p.Text("h1"), "the last page after a reload")

	stop()
	p.Open("")
	for target, heading := range headings {
		browser.Eval[bool](p, `([...document.querySelectorAll("header a[href]")].find((a) => a.href === "`+target+`").click(), true)`)
		p.Settle()
		assert.Equal(t, heading, p.Text("h1"), "%s offline", target)
	}
	p.Reload()
	p.Open("measure/" + entries)
	computes("offline")
	p.Reload()
	assert.InEpsilon(t, found/2, p.Value("out-steps"), 1e-9, "offline after a reload")
}

// head asks a host for the head of a file of the built site, which a pattern names.
func head(t *testing.T, address, pattern, accept string) http.Header {
	t.Helper()
	r := get(t, address+named(t, pattern), accept)
	require.Equal(t, http.StatusOK, r.StatusCode, pattern)
	return r.Header
}

// named returns the file of the built site that the pattern fits.
func named(t *testing.T, pattern string) string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(browser.Dist(t), filepath.FromSlash(pattern)))
	require.NoError(t, err)
	require.Len(t, files, 1, pattern)
	rel, err := filepath.Rel(browser.Dist(t), files[0])
	require.NoError(t, err)
	return filepath.ToSlash(rel)
}

type response struct {
	*http.Response
	content []byte // as it was sent
}

func get(t *testing.T, address, accept string) response {
	t.Helper()
	request, err := http.NewRequest(http.MethodGet, address, nil)
	require.NoError(t, err)
	request.Header.Set("Accept-Encoding", accept)
	r, err := http.DefaultClient.Do(request)
	require.NoError(t, err)
	defer r.Body.Close()
	content, err := io.ReadAll(r.Body)
	require.NoError(t, err)
	return response{r, content}
}

// lay returns what unpacks the zip.
func lay(t *testing.T) func(site string) {
	return func(site string) {
		t.Helper()
		z, err := zip.OpenReader(filepath.Join(browser.Dist(t), built.Zip))
		require.NoError(t, err)
		defer z.Close()
		for _, entry := range z.File {
			r, err := entry.Open()
			require.NoError(t, err)
			content, err := io.ReadAll(r)
			require.NoError(t, err)
			path := filepath.Join(site, filepath.FromSlash(entry.Name))
			require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
			require.NoError(t, os.WriteFile(path, content, 0o644))
		}
	}
}
