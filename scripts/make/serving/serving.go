// Package serving serves a built site, as hosts of several kinds do.
package serving

import (
	"fmt"
	"net/http"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// types are those that systems may not know by themselves.
var types = map[string]string{
	".gz":          "application/gzip",
	".js":          "text/javascript; charset=utf-8",
	".svg":         "image/svg+xml",
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
}

// fixed are the files whose names change with their content.
var fixed = regexp.MustCompile(`^/web/.*\.[0-9a-f]{10}\.`)

// encodings are those that a host may send, and the ends of the files beside.
var encodings = []struct{ name, end string }{{"br", ".br"}, {"gzip", ".gz"}}

// Handler serves dir, and sends the compressed files beside it by the encodings
// that are named ("br", "gzip"). What may change is asked for anew each time, so
// that a rebuilt site shows.
func Handler(dir string, send ...string) http.Handler {
	files := http.FileServer(http.Dir(dir))
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Cache-Control", "no-cache")
		if fixed.MatchString(r.URL.Path) {
			h.Set("Cache-Control", "max-age=31536000, immutable")
		}
		if t, ok := types[path.Ext(r.URL.Path)]; ok {
			h.Set("Content-Type", t)
		}
		if len(send) > 0 {
			h.Set("Vary", "Accept-Encoding")
			if compressed(w, r, dir, send) {
				return
			}
		}
		files.ServeHTTP(w, r)
	})
}

// compressed answers with the compressed file beside the one that is asked for,
// and says whether it did.
func compressed(w http.ResponseWriter, r *http.Request, dir string, send []string) bool {
	name := path.Clean("/" + r.URL.Path)
	if strings.HasSuffix(r.URL.Path, "/") {
		name = path.Join(name, "index.html")
	}
	for _, e := range encodings {
		if !slices.Contains(send, e.name) || !accepts(r, e.name) {
			continue
		}
		file, err := os.Open(filepath.Join(dir, filepath.FromSlash(name+e.end)))
		if err != nil {
			continue
		}
		defer file.Close()
		info, err := file.Stat()
		if err != nil {
			continue
		}
		if w.Header().Get("Content-Type") == "" {
			w.Header().Set("Content-Type", "text/"+strings.TrimPrefix(path.Ext(name), ".")+"; charset=utf-8")
		}
		w.Header().Set("Content-Encoding", e.name)
		http.ServeContent(w, r, "", info.ModTime(), file)
		return true
	}
	return false
}

func accepts(r *http.Request, encoding string) bool {
	for _, part := range strings.Split(r.Header.Get("Accept-Encoding"), ",") {
		name, weight, _ := strings.Cut(strings.TrimSpace(part), ";")
		if name == encoding && strings.TrimSpace(weight) != "q=0" {
			return true
		}
	}
	return false
}

// Program returns the file of the program of a built site.
func Program(site string) (string, error) {
	found, err := filepath.Glob(filepath.Join(site, "web", "app.*.wasm"))
	if err != nil {
		return "", err
	}
	if len(found) != 1 {
		return "", fmt.Errorf("there is no built site in %s: run scripts/build first", site)
	}
	return found[0], nil
}
