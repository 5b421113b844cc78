//go:build !wasm

package main

import (
	"flag"
	"fmt"
	"html/template"
	"os"
	"path/filepath"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// main writes every page of the site, as it is before the program starts, to
// its folder's index.html:
//
//	go run ./app -out DIR
//
// or, to be looked at while working on the style sheet, every piece in every
// state into one file:
//
//	go run ./app -look FILE
//
// __VERSION__ in what it writes is for the build to replace.
func main() {
	out := flag.String("out", "", "`folder` to write the pages into")
	look := flag.String("look", "", "`file` to write a page with every piece into")
	flag.Parse()
	if *look != "" {
		if err := writeLook(*look); err != nil {
			fmt.Fprintln(os.Stderr, "look:", err)
			os.Exit(1)
		}
		return
	}
	if *out == "" || flag.NArg() > 0 {
		flag.Usage()
		os.Exit(2)
	}
	if err := generate(*out); err != nil {
		fmt.Fprintln(os.Stderr, "pages:", err)
		os.Exit(1)
	}
}

func generate(out string) error {
	// Links are written from the site's root, and made relative afterwards.
	if err := os.Unsetenv("GOAPP_ROOT_PREFIX"); err != nil {
		return err
	}
	seen := map[string]bool{}
	for _, p := range sitePages() {
		if !strings.HasPrefix(p.Path, "/") || !strings.HasSuffix(p.Path, "/") || seen[p.Path] {
			return fmt.Errorf("path %q: a page's path begins and ends with a slash and occurs once", p.Path)
		}
		seen[p.Path] = true
		page, err := pageHTML(p)
		if err != nil {
			return fmt.Errorf("%s: %w", p.Path, err)
		}
		file := filepath.Join(out, filepath.FromSlash(p.Path), "index.html")
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(file, []byte(page), 0o644); err != nil {
			return err
		}
	}
	return nil
}

// pageHTML returns the whole document of a page.
func pageHTML(p sitePage) (string, error) {
	c := p.New()
	engine := app.NewTestEngine()
	if err := engine.Load(c); err != nil {
		return "", err
	}
	engine.ConsumeAll()
	up := "./"
	if depth := strings.Count(p.Path, "/") - 1; depth > 0 {
		up = strings.Repeat("../", depth)
	}
	body, err := cleanMarkup(app.HTMLString(c), up)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	err = skeleton.Execute(&b, map[string]any{
		"Title":       p.Title,
		"Description": p.Description,
		"Up":          up,
		"Body":        template.HTML(body),
	})
	return b.String(), err
}

// The policy lets nothing in from elsewhere and nothing run that is written in
// the page itself. wasm-unsafe-eval is the word that allows WebAssembly.
//
// The ?v= makes an address of each version of a file: neither a cache of the
// browser nor one of the host can then mix two versions. start.js fetches the
// program by the preload's address, so the two can't differ.
var skeleton = template.Must(template.New("page").Parse(`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'">
<title>{{.Title}}</title>
<meta name="description" content="{{.Description}}">
<meta name="theme-color" content="#f7f5ee" media="(prefers-color-scheme: light)">
<meta name="theme-color" content="#121920" media="(prefers-color-scheme: dark)">
<link rel="icon" href="{{.Up}}web/icon.svg" type="image/svg+xml">
<link rel="apple-touch-icon" href="{{.Up}}web/icon-192.png">
<link rel="manifest" href="{{.Up}}manifest.webmanifest">
<link rel="stylesheet" href="{{.Up}}web/style.css?v=__VERSION__">
<link rel="preload" as="fetch" crossorigin href="{{.Up}}web/app.wasm.gz?v=__VERSION__">
<script defer src="{{.Up}}web/wasm_exec.js?v=__VERSION__"></script>
<script defer src="{{.Up}}web/page.js?v=__VERSION__"></script>
<script defer src="{{.Up}}web/start.js?v=__VERSION__"></script>
<script nomodule defer src="{{.Up}}web/old.js?v=__VERSION__"></script>
</head>
<body>
{{.Body}}
<p id="boot" role="status" hidden></p>
<p id="said" class="said" role="status"></p>
<noscript><p class="boot">This page can be read as it is. To compute, it needs JavaScript, which is off in this browser.</p></noscript>
</body>
</html>
`))
