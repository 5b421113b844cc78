package pages

import (
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/sheet"
	"striderule/calc/unit"
	"striderule/scripts/prove/browser"
)

// A printed sheet has nothing to press, says what was entered and found, and has
// the link that opens it again.
func TestPaper(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	chromium := p.Chromium("a page as it is printed")
	for _, page := range calc.Pages {
		p.Open("/" + page.Slug + "/#" + page.Example)
		_, err := chromedp.Call(chromium, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
		require.NoError(t, err)
		browser.Eval[bool](p, `(dispatchEvent(new Event("beforeprint")), true)`) // no emulation does it
		p.Settle()
		shown := func(selector string) []string {
			return browser.Eval[[]string](p, `[...document.querySelectorAll("`+selector+`")].filter((e) => e.checkVisibility()).map((e) => e.innerText.trim())`)
		}
		assert.Empty(t, shown("button, nav, .skip, .bar, .links a, details:not([open]), form"), page.Slug)
		link := strings.Join(shown(".printed > p:last-child"), "")
		assert.True(t, strings.HasSuffix(link, "/"+page.Slug+"/#"+calc.Load(page, page.Example).ShareFragment()), link)
		assert.NotEmpty(t, shown(".answer"), page.Slug)
		// What was entered, in folds too, is listed once.
		entries := strings.Join(shown("#printed-entries"), "")
		form := calc.Load(page, page.Example)
		for _, f := range form.Fields() {
			if form.Filled(f) {
				assert.Regexp(t, `(?m)^`+regexp.QuoteMeta(f.Label)+`: \S`, entries, "%s: %s", page.Slug, f.Key)
			}
			for row := range f.Cells.Len() {
				if _, ticks := f.Cells.(*sheet.Checks); ticks {
					break
				}
				if _, isNumber := f.Cells.At(row).(*unit.Entry); isNumber {
					assert.Contains(t, entries, form.Text(f.Key, row), "%s: %s in row %d", page.Slug, f.Key, row)
				}
			}
		}
		paper, err := chromedp.Call(chromium, cdppage.PrintToPDF, cdppage.PrintToPDFParams{})
		require.NoError(t, err)
		leaves := strings.Count(string(paper.Data), "/Type /Page\n")
		assert.NotZero(t, leaves, page.Slug)
		if page.Slug == "measure" {
			assert.LessOrEqual(t, leaves, 5)
		}
		_, err = chromedp.Call(chromium, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{})
		require.NoError(t, err)
	}
}
