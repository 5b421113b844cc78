package pages

import (
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// outlineOfFocus is empty if the focus is seen: an outline of 2 px or more that
// is told from what is behind it. Contrast is that of WCAG 2.2.
const outlineOfFocus = `(() => {
	let e = document.activeElement;
	if (getComputedStyle(e).opacity === "0") e = e.closest("label"); // an option's box has the ring
	const style = getComputedStyle(e);
	if (e === document.body || !document.hasFocus()) return ""; // past the end Firefox goes to its own buttons
	const parse = (c) => c.match(/[\d.]+/g).map(Number);
	const light = (c) => {
		const [r, g, b] = parse(c).map((v) => v / 255).map((v) => v <= .04045 ? v / 12.92 : ((v + .055) / 1.055) ** 2.4);
		return .2126 * r + .7152 * g + .0722 * b;
	};
	let behind = parseFloat(style.outlineOffset) < 0 ? e : e.parentElement;
	while ((parse(getComputedStyle(behind).backgroundColor)[3] ?? 1) === 0) behind = behind.parentElement;
	const [a, b] = [light(style.outlineColor), light(getComputedStyle(behind).backgroundColor)].sort((x, y) => y - x);
	const name = e.tagName + "." + e.className + " " + e.textContent.slice(0, 40) + ": ";
	if (style.outlineStyle === "none" || parseFloat(style.outlineWidth) < 2) return name + "no outline";
	if ((a + .05) / (b + .05) < 3) return name + style.outlineColor + " is lost on " + getComputedStyle(behind).backgroundColor;
	const box = e.getBoundingClientRect();
	return e.matches(".skip") || box.left >= 3 && box.right <= innerWidth - 3 || behind === e ? "" : name + "cut off at the side";
})()`

// Whoever goes by keyboard sees where they are: on every stop of a page with all
// it can show.
func TestFocusIsSeen(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	for _, scheme := range schemes(t) {
		for _, width := range []int64{browser.Width, 1280} {
			p.Viewport(width, browser.Height)
			p.Prefers("prefers-color-scheme", scheme)
			for _, path := range []string{"/", "/measure/#" + heron, "/log/"} {
				p.Open(path)
				browser.Eval[bool](p, `(document.getElementById("demo")?.click(), true)`)
				p.Unfold()
				p.OpenMenu()
				stops := map[string]bool{}
				for range 250 {
					p.Type(kb.Tab)
					if lost := browser.Eval[string](p, outlineOfFocus); lost != "" {
						assert.Fail(t, "the focus is not seen", "%s, %s at %d: %s", path, scheme, width, lost)
					}
					stop := browser.Eval[string](p, `document.activeElement.outerHTML.slice(0, 200)`)
					if stops[stop] && browser.Eval[bool](p, `document.activeElement.matches(".skip")`) {
						break
					}
					stops[stop] = true
				}
				assert.Greater(t, len(stops), 10, path)
			}
		}
	}
}
