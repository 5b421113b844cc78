package hosts

import (
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// settings are the blocks of HOSTING.md.
type settings struct {
	apache         string // as .htaccess
	http, location string // of nginx
}

var block = regexp.MustCompile("(?s)```(\\w+)\n(.*?)```")

func readSettings(t *testing.T) settings {
	t.Helper()
	doc, err := os.ReadFile("HOSTING.md")
	require.NoError(t, err)
	blocks := map[string][]string{}
	for _, m := range block.FindAllStringSubmatch(string(doc), -1) {
		blocks[m[1]] = append(blocks[m[1]], m[2])
	}
	require.Len(t, blocks["apache"], 1)
	require.Len(t, blocks["nginx"], 2)
	return settings{blocks["apache"][0], blocks["nginx"][0], blocks["nginx"][1]}
}

// layWith returns what unpacks the zip and lays a file beside it.
func layWith(t *testing.T, name, content string) func(site string) {
	return func(site string) {
		t.Helper()
		lay(t)(site)
		require.NoError(t, os.WriteFile(filepath.Join(site, name), []byte(content), 0o644))
	}
}

// withoutBrotli is the nginx that has not the module.
func withoutBrotli(location string) string {
	return strings.Replace(location, "brotli_static on;\n", "", 1)
}

// The settings do what HOSTING.md says of them.
func TestSettings(t *testing.T) {
	fullOnly(t)
	set := readSettings(t)
	for _, c := range []struct {
		name    string
		host    host
		more    string
		brotli  bool
		scripts string // their type
	}{
		{"apache", apache(""), set.apache, true, "text/javascript"},
		{"apache, compressing", apache(deflate), set.apache, true, "text/javascript"},
		{"nginx", nginx(set.http, set.location), "", true, "application/javascript"},
		{"nginx, no brotli", nginx(set.http, withoutBrotli(set.location)), "", false, "application/javascript"},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, folder := range folders {
				t.Run("/"+folder, func(t *testing.T) {
					address, _ := c.host.begin(t, folder, layWith(t, ".htaccess", c.more))
					const page, forEver, anew = "text/html", "max-age=31536000, immutable", "no-cache"
					for _, f := range []struct{ path, file, kind, keep string }{
						{"", "index.html", page, anew},
						{"measure/", "measure/index.html", page, anew},
						{"measure/index.html", "measure/index.html", page, anew},
						{"sw.js", "sw.js", c.scripts, anew},
						{"web/icon.svg", "web/icon.svg", "image/svg+xml", anew},
						{"web/icon-192.png", "web/icon-192.png", "image/png", anew},
						{named(t, "web/style.*.css"), named(t, "web/style.*.css"), "text/css", forEver},
						{named(t, "web/load.*.js"), named(t, "web/load.*.js"), c.scripts, forEver},
						{named(t, "web/app.*.wasm"), named(t, "web/app.*.wasm"), "application/wasm", forEver},
					} {
						for accept, want := range map[string]string{"": "", "gzip": "gzip", "gzip, deflate, br": "br", "br": "br"} {
							if want == "br" && !c.brotli {
								want = map[bool]string{true: "gzip"}[strings.Contains(accept, "gzip")]
							}
							if path.Ext(f.file) == ".png" {
								want = "" // it gets no smaller
							}
							where := f.path + ", taking " + accept
							r := get(t, address+f.path, accept)
							require.Equal(t, http.StatusOK, r.StatusCode, where)
							assert.Equal(t, want, r.Header.Get("Content-Encoding"), where)
							assert.Equal(t, content(t, f.file+map[string]string{"gzip": ".gz", "br": ".br"}[want]), r.content, where)
							assert.Equal(t, f.kind, strings.SplitN(r.Header.Get("Content-Type"), ";", 2)[0], where)
							assert.Equal(t, []string{f.keep}, r.Header.Values("Cache-Control"), where)
							if want != "" {
								assert.Contains(t, r.Header.Get("Vary"), "Accept-Encoding", where)
							}
							assert.Empty(t, r.Header.Get("Content-Language"), where)
							for name, value := range headers {
								assert.Equal(t, []string{value}, r.Header.Values(name), where)
							}
						}
					}
					// The compressed program by its own name, as the page asks for it.
					zipped := named(t, "web/app.*.wasm.gz")
					r := get(t, address+zipped, "gzip, br")
					assert.Equal(t, content(t, zipped), r.content)
					assert.Equal(t, forEver, r.Header.Get("Cache-Control"))
					assert.NotEqual(t, http.StatusOK, get(t, address+"nothing", "").StatusCode)
				})
			}
		})
	}
}

// headers are what every file of the site comes with.
var headers = map[string]string{
	"Content-Security-Policy": "frame-ancestors 'self'",
	"Permissions-Policy":      "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
	"Referrer-Policy":         "no-referrer",
	"X-Content-Type-Options":  "nosniff",
}

// The pages have the rest of the policy themselves, all of it, as the settings rely on.
func TestPagesHaveTheirPolicy(t *testing.T) {
	policy := regexp.MustCompile(`<meta http-equiv="Content-Security-Policy" content="default-src 'none'; ([^"]*)">`)
	for _, page := range browser.Pages(t, browser.Dist(t)) {
		m := policy.FindSubmatch(content(t, strings.TrimPrefix(page, "/")+"index.html"))
		require.NotNil(t, m, page)
		for _, part := range []string{"base-uri 'none'", "form-action 'none'", "connect-src 'self'", "script-src 'self'"} {
			assert.Contains(t, string(m[1]), part, page)
		}
		assert.NotContains(t, string(m[1]), "frame-ancestors", "browsers don't take it from a page")
	}
}

// A page of another host can't show the site in a frame, and one without the
// settings can be shown: else the first says nothing.
func TestNobodyElseFramesTheSite(t *testing.T) {
	fullOnly(t)
	set := readSettings(t)
	for more, framed := range map[string]bool{set.apache: false, "": true} {
		address, _ := apache("").begin(t, "tools/cal/", layWith(t, ".htaccess", more))
		elsewhere := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
			w.Header().Set("Content-Type", "text/html")
			_, _ = io.WriteString(w, `<!DOCTYPE html><title>Other</title><iframe src="`+address+`"></iframe>`)
		}))
		t.Cleanup(elsewhere.Close)
		p := browser.NewPage(t, elsewhere.URL+"/")
		p.Load("")
		refused := false
		for _, problem := range p.Problems() {
			refused = refused || strings.Contains(problem, "frame-ancestors")
		}
		assert.Equal(t, framed, !refused, "%v", p.Problems())
		p.Allow("")
	}
}

// content is what a file of the built site has in it.
func content(t *testing.T, file string) []byte {
	t.Helper()
	c, err := os.ReadFile(filepath.Join(browser.Dist(t), filepath.FromSlash(file)))
	require.NoError(t, err)
	return c
}
