package pages

import (
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
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
		p.Settle()
		shown := func(selector string) []string {
			return browser.Eval[[]string](p, `[...document.querySelectorAll("`+selector+`")].filter((e) => e.checkVisibility()).map((e) => e.innerText.trim())`)
		}
		assert.Empty(t, shown("button, nav, .skip, .bar, .links a, details:not([open]), form:not(.sheet)"), page.Slug)
		assert.Empty(t, shown(".sheet .option:has([type=radio]:not(:checked))"), page.Slug)
		link := strings.Join(shown(".printed"), "")
		assert.True(t, strings.HasSuffix(link, "/"+page.Slug+"/#"+calc.Load(page, page.Example).ShareFragment()), link)
		assert.NotEmpty(t, shown(".answer"), page.Slug)
		form := calc.Load(page, page.Example)
		for _, f := range form.Fields() {
			if form.Filled(f) && form.Visible(f, 0) {
				assert.True(t, browser.Eval[bool](p, `[...document.getElementsByName("`+f.Key+`")].some((e) => (e.type === "radio" || e.type === "checkbox" ? e.closest("label") : e).checkVisibility())`), "%s: %s", page.Slug, f.Key)
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
