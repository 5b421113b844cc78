package pages

import (
	"testing"

	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/scripts/prove/browser"
)

// filledPaths are all pages, the calculators with their example.
func filledPaths() []string {
	paths := []string{"/", "/method/", "/log/", "/machines/", "/run/", "/run/#" + calc.Run.Example + "&card=read-3"}
	for _, page := range calc.Pages {
		paths = append(paths, "/"+page.Slug+"/#"+page.Example)
	}
	return paths
}

// Text of twice the size, which is how many people read their phones: nothing
// goes beyond the screen, and no unit lies on what was typed.
func TestTextTwiceTheSize(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	large := cdppage.SetFontSizesParams{FontSizes: &cdppage.FontSizes{Standard: 32, Fixed: 26}}
	_, err := chromedp.Call(p.Chromium("larger text"), cdppage.SetFontSizes, large)
	require.NoError(t, err)
	for _, path := range filledPaths() {
		p.Show(path)
		browser.Eval[bool](p, `(document.getElementById("demo")?.click(), true)`)
		p.Unfold()
		assert.Equal(t, "32px", browser.Eval[string](p, `getComputedStyle(document.documentElement).fontSize`))
		assert.Equal(t, int64(browser.Width), browser.Eval[int64](p, `document.documentElement.scrollWidth`), path)
		assert.Empty(t, browser.Eval[[]string](p, `[...document.querySelectorAll("main *")]
			.filter((e) => e.checkVisibility() && !e.closest("svg, .unseen, .scroll, .chips") && getComputedStyle(e).position !== "absolute" && e.getBoundingClientRect().right > innerWidth + 1)
			.map((e) => e.tagName + " " + e.className + " " + e.textContent.slice(0, 50))`), path)
	}
}

// A number of seven digits and the unit beside it both show, in the narrowest rows.
func TestUnitsLieBesideWhatIsTyped(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	for _, width := range []int64{320, browser.Width, 1280} {
		p.Viewport(width, browser.Height)
		for _, path := range filledPaths() {
			p.Show(path)
			p.Unfold()
			assert.Empty(t, browser.Eval[[]string](p, `[...document.querySelectorAll(".entry:has(.unit:not(:empty))")].filter((e) => e.checkVisibility()).filter((e) => {
				const field = e.querySelector("input"), style = getComputedStyle(field), pen = document.createElement("canvas").getContext("2d");
				pen.font = style.font;
				const typed = pen.measureText(field.value), box = field.getBoundingClientRect(), unit = document.createRange();
				unit.selectNodeContents(e.querySelector(".unit"));
				const right = box.left + parseFloat(style.paddingLeft) + typed.width;
				const top = (box.top + parseFloat(style.paddingTop) + box.bottom - parseFloat(style.paddingBottom)) / 2 - parseFloat(style.fontSize) * .36;
				const label = unit.getBoundingClientRect();
				return field.value && right > label.left && top < label.bottom - 3;
			}).map((e) => e.closest(".field").textContent + ": " + e.querySelector("input").value)`), "%s at %d", path, width)
		}
	}
}
