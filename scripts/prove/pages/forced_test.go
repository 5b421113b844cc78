package pages

import (
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// Where the person's own few colours are forced on the page, drawings, charts and
// the verdict are drawn in them, and told from what is behind.
func TestForcedColours(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	for _, scheme := range []string{"light", "dark"} {
		_, err := chromedp.Call(p.Chromium("forced colours"), emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{
			{Name: "forced-colors", Value: "active"}, {Name: "prefers-color-scheme", Value: scheme},
		}})
		require.NoError(t, err)
		seen := 0
		for _, path := range filledPaths() {
			p.Show(path)
			browser.Eval[bool](p, `(document.getElementById("demo")?.click(), true)`)
			p.Unfold()
			require.True(t, browser.Eval[bool](p, `matchMedia("(forced-colors: active)").matches`))
			// Relative luminance and contrast as WCAG 2.2 defines them.
			marks := browser.Eval[[]string](p, `(() => {
				const light = (c) => {
					const [r, g, b] = c.match(/[\d.]+/g).map((v) => v / 255).map((v) => v <= .04045 ? v / 12.92 : ((v + .055) / 1.055) ** 2.4);
					return .2126 * r + .7152 * g + .0722 * b;
				};
				const probe = document.body.appendChild(document.createElement("i"));
				const system = (name) => { probe.style.color = name; return getComputedStyle(probe).color; };
				const paper = light(system("Canvas")), theirs = ["CanvasText", "Highlight", "LinkText", "ButtonText"].map(system);
				probe.remove();
				const contrast = (c) => { const l = light(c); return (Math.max(l, paper) + .05) / (Math.min(l, paper) + .05); };
				const marks = [];
				for (const e of document.querySelectorAll(".drawing :is(path, rect, text), .chart svg :is(path, rect, text), .bars rect, .verdict-word, .verdict-mark, .headline, .note-mark")) {
					const style = getComputedStyle(e);
					if (e.matches(".grid") || style.visibility === "hidden") continue;
					const colours = e.closest("svg") ? [style.fill, style.stroke].filter((c) => c !== "none") : [style.color];
					marks.push(colours.some((c) => theirs.includes(c) && contrast(c) >= 3) ? "" : path(e) + " " + colours);
				}
				function path(e) { return e.tagName + "." + (e.getAttribute("class") || "") + " in " + (e.closest("[id]") || {}).id; }
				return marks;
			})()`)
			seen += len(marks)
			for _, bad := range marks {
				if bad != "" {
					assert.Fail(t, "lost in forced colours", "%s, %s: %s", scheme, path, bad)
				}
			}
		}
		assert.Greater(t, seen, 300)
	}
}
