//go:build !wasm

package pages

import (
	"cmp"
	"errors"
	"fmt"
	"html/template"
	"os"
	"path/filepath"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/markup"
	"striderule/app/site"
)

// Generate writes every page of the site, as it is before the program starts, to
// its folder's index.html, and its preview picture; and the page for addresses at
// which there is none. An address is that which the site will have; it may be empty.
//
// __VERSION__, __SIZE__, __LOAD__, __DIGEST__ and the names of the files in web/ are for
// the build to replace.
func Generate(pages []site.Page, out, address string) error {
	if err := CheckAddress(address); err != nil {
		return err
	}
	// Links are written from the site's root, and made relative afterwards.
	if err := os.Unsetenv("GOAPP_STATIC_RESOURCES_URL"); err != nil {
		return err
	}
	seen := map[string]bool{}
	for _, p := range pages {
		if !strings.HasPrefix(p.Path, "/") || !strings.HasSuffix(p.Path, "/") || seen[p.Path] {
			return errors.New(wrongPath.Fill("path", p.Path))
		}
		seen[p.Path] = true
		page, err := HTML(p, address)
		if err != nil {
			return fmt.Errorf("%s: %w", p.Path, err)
		}
		picture, err := PreviewOf(pages, p, page)
		if err != nil {
			return fmt.Errorf("%s: %w", previewFile(p), err)
		}
		if err := writeFile(filepath.Join(out, filepath.FromSlash(p.Path), "index.html"), []byte(page)); err != nil {
			return err
		}
		if err := writeFile(filepath.Join(out, filepath.FromSlash(previewFile(p))), picture); err != nil {
			return err
		}
	}
	page, err := LostHTML(pages, address)
	if err != nil {
		return fmt.Errorf("%s: %w", lostFile, err)
	}
	return writeFile(filepath.Join(out, lostFile), []byte(page))
}

func writeFile(file string, content []byte) error {
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		return err
	}
	return os.WriteFile(file, content, 0o644)
}

// HTML returns the whole document of a page of a site at an address, which
// may be empty.
func HTML(p site.Page, address string) (string, error) {
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
	body, err := markup.Clean(app.HTMLString(c), up)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	err = skeleton.Execute(&b, document{
		Page:     p,
		Up:       up,
		Body:     template.HTML(body),
		Language: site.Language,
		Site:     site.Name,
		Picture:  cmp.Or(address, up) + previewFile(p),
		Alt:      previewSays.Fill("page", headingOf(body)),
		Wide:     previewWide,
		High:     previewHigh,
		Address:  address,
		Path:     strings.TrimPrefix(p.Path, "/"),
		NoScript: noScript,
	})
	return b.String(), err
}

// A document is what is put into the skeleton of a page.
type document struct {
	site.Page
	Up, Language, Site, Picture, Alt, Address, Path, NoScript string
	Body                                                      template.HTML
	Wide, High                                                int
}

// The policy lets nothing in from elsewhere and nothing run that is written in
// the page itself, but for the one script that the build writes in, known by its
// digest. wasm-unsafe-eval is the word that allows WebAssembly.
//
// That script (web/load.js) fetches the program whose address it finds here, in the
// form that suits the host; a preload could only guess which. It stands before the
// style sheet, for which scripts behind it wait. The build gives all these files
// names that change with their content, so that neither a cache of the browser
// nor one of the host can mix two versions.
var skeleton = template.Must(template.New("page").Parse(`<!DOCTYPE html>
<html lang="{{.Language}}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self' 'wasm-unsafe-eval' 'sha256-__DIGEST__'; style-src 'self'; img-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'">
<title>{{.Title}}</title>
<script id="load" data-program="{{.Up}}web/app.wasm" data-size="__SIZE__" data-version="__VERSION__" data-again="{{.Up}}web/load.js">__LOAD__</script>
<meta name="description" content="{{.Description}}">
<meta property="og:type" content="website">
<meta property="og:site_name" content="{{.Site}}">
<meta property="og:title" content="{{.Title}}">
<meta property="og:description" content="{{.Description}}">
{{if .Address}}<meta property="og:url" content="{{.Address}}{{.Path}}">
{{end}}<meta property="og:image" content="{{.Picture}}">
<meta property="og:image:type" content="image/png">
<meta property="og:image:width" content="{{.Wide}}">
<meta property="og:image:height" content="{{.High}}">
<meta property="og:image:alt" content="{{.Alt}}">
<meta name="theme-color" content="#f7f5ee" media="(prefers-color-scheme: light)">
<meta name="theme-color" content="#121920" media="(prefers-color-scheme: dark)">
<link rel="icon" href="{{.Up}}web/icon.svg" type="image/svg+xml">
<link rel="apple-touch-icon" href="{{.Up}}web/icon-192.png">
<link rel="manifest" href="{{.Up}}manifest.webmanifest">
<link rel="stylesheet" href="{{.Up}}web/style.css">
<script id="start" defer src="{{.Up}}web/start.js"></script>
<script nomodule defer src="{{.Up}}web/old.js"></script>
</head>
<body>
{{.Body}}
<p id="boot" role="status" hidden></p>
<p id="said" class="said" role="status"></p>
<p id="newer" role="status"></p>
<noscript><p class="boot">{{.NoScript}}</p></noscript>
</body>
</html>
`))
