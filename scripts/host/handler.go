package main

import (
	"net/http"
	"path"
)

// types are those that systems may not know by themselves.
var types = map[string]string{
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
	".js":          "text/javascript; charset=utf-8",
	".gz":          "application/gzip",
}

// handler serves dir. Browsers ask anew each time, so that a rebuilt site shows.
func handler(dir string) http.Handler {
	files := http.FileServer(http.Dir(dir))
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Cache-Control", "no-cache")
		if t, ok := types[path.Ext(r.URL.Path)]; ok {
			w.Header().Set("Content-Type", t)
		}
		files.ServeHTTP(w, r)
	})
}
