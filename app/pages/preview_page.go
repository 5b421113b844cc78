//go:build !wasm

package pages

import (
	"cmp"
	"errors"
	"html"
	"net/url"
	"regexp"
	"slices"
	"strings"

	"striderule/app/site"
	"striderule/calc"
	"striderule/calc/report"
	"striderule/calc/sheet"
)

// previewFile is where the picture of a page lies, from the site's folder.
func previewFile(p site.Page) string {
	return "preview/" + cmp.Or(strings.Trim(p.Path, "/"), "start") + ".png"
}

var (
	pageHeading  = regexp.MustCompile(`<h1[^>]*>([^<]+)</h1>`)
	pageQuestion = regexp.MustCompile(`<p class="question">([^<]+)</p>`)
)

// headingOf is what a page is headed with, empty if it has no heading.
func headingOf(page string) string {
	if m := pageHeading.FindStringSubmatch(page); m != nil {
		return html.UnescapeString(m[1])
	}
	return ""
}

// PreviewOf draws the picture of one of the pages by what the page says of itself.
func PreviewOf(pages []site.Page, p site.Page, page string) ([]byte, error) {
	heading := headingOf(page)
	if heading == "" {
		return nil, errors.New(noHeading)
	}
	question := p.Description
	if m := pageQuestion.FindStringSubmatch(page); m != nil {
		question = html.UnescapeString(m[1])
	}
	strides := slices.IndexFunc(pages, func(q site.Page) bool { return q.Path == p.Path }) + 1
	var drawing *report.Drawing
	if sheet, ok := calc.PageOf(strings.Trim(p.Path, "/")); ok {
		drawing = firstDrawing(sheet)
	}
	return previewPNG(heading, question, drawing, strides)
}

// firstDrawing is the one that a page shows first with its example.
func firstDrawing(p sheet.Page) *report.Drawing {
	for _, part := range calc.Load(p, p.Example).Report().Parts {
		for _, b := range part.Blocks {
			if d, ok := b.(report.Drawing); ok {
				return &d
			}
		}
	}
	return nil
}

// CheckAddress refuses what is no folder's address on the web; none is fine.
func CheckAddress(address string) error {
	if address == "" {
		return nil
	}
	u, err := url.Parse(address)
	if err != nil || u.Scheme != "http" && u.Scheme != "https" || u.Host == "" || !strings.HasSuffix(u.Path, "/") || u.RawQuery != "" || u.Fragment != "" {
		return errors.New(wrongAddress.Fill("address", address))
	}
	return nil
}
