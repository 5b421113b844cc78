//go:build !wasm

package pages

import (
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"html/template"
	"strings"

	"striderule/app/site"
)

// lostFile is what many hosts send for an address at which there is nothing.
const lostFile = "404.html"

// lostScript finds the site from whatever address the page shows at. It stands in
// the page, since no relative address of a file would be right at every depth.
//
//go:embed lost.js
var lostScript string

// LostHTML returns the document of lostFile, for a site of these pages at an address, which may
// be empty: then its links lead somewhere once the script has found the site.
func LostHTML(pages []site.Page, address string) (string, error) {
	sum := sha256.Sum256([]byte(lostScript))
	var b strings.Builder
	err := lost.Execute(&b, lostDocument{
		Language: site.Language, Title: site.TitleOf(lostTitle), Heading: lostHeading, Advice: lostAdvice,
		Address: address,
		Pages:   pages,
		Hash:    template.HTML(base64.StdEncoding.EncodeToString(sum[:])),
		Script:  template.HTML("<script>" + lostScript + "</script>"),
	})
	return b.String(), err
}

// A lostDocument is what is put into the skeleton of lostFile.
type lostDocument struct {
	Language, Title, Heading, Advice, Address string
	Pages                                     []site.Page
	Hash, Script                              template.HTML
}

// Nothing in it has a relative address but for what the script resolves; the empty
// icon keeps browsers from asking for one at the root of the host.
var lost = template.Must(template.New("lost").Parse(`<!DOCTYPE html>
<html lang="{{.Language}}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="robots" content="noindex">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'sha256-{{.Hash}}'; style-src 'self'; img-src data:; connect-src 'self'; base-uri 'none'; form-action 'none'">
<link rel="icon" href="data:,">
<title>{{.Title}}</title>
</head>
<body data-style="web/style.css">
<div class="page">
<main id="main" class="part">
<h1>{{.Heading}}</h1>
<p id="where">{{.Advice}}</p>
<ul class="links" id="pages"{{if not .Address}} hidden{{end}}>
{{range .Pages}}<li><a href="{{if $.Address}}{{$.Address}}{{slice .Path 1}}{{else}}#{{end}}" data-path="{{slice .Path 1}}">{{.Menu}}</a></li>
{{end}}</ul>
</main>
</div>
{{.Script}}
</body>
</html>
`))
