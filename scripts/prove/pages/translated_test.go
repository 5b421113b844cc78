package pages

import (
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// translate does what translators do to a page: each text is replaced by elements
// around another. Some extensions put elements of their own beside fields as well.
const translate = `(() => {
	const texts = [], walk = document.createTreeWalker(document.querySelector("main"), NodeFilter.SHOW_TEXT);
	while (walk.nextNode()) if (walk.currentNode.nodeValue.trim()) texts.push(walk.currentNode);
	for (const text of texts) {
		const outer = document.createElement("font"), inner = document.createElement("font");
		inner.textContent = text.nodeValue;
		outer.append(inner);
		text.replaceWith(outer);
	}
	for (const field of document.querySelectorAll("main input.typed")) field.before(document.createElement("font"));
	return texts.length;
})()`

// A figure that is out of date would go into a machine.
func TestTranslatedPageShowsNewFigures(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	s.Trimmed(t, "changes texts that are no longer in the page")
	p := s.NewPage(t)
	p.Open("/measure/#v=1&steps=538&asked=80&mark=105&rest=28.7,28.9,28.6")
	before := p.Text(".headline data")
	require.Greater(t, browser.Eval[int](p, translate), 100)
	// One key: with a figure less in between the answer would be made anew.
	p.Focus("mark", 0)
	p.Press(kb.End + "2")
	p.Settle()
	after := p.Text(".headline data")
	assert.NotEqual(t, before, after)
	assert.Equal(t, browser.Eval[string](p, `document.querySelector(".bar strong").textContent.split(" ")[0]`), after)

	untouched := s.NewPage(t)
	untouched.Open("/measure/#v=1&steps=538&asked=80&mark=1052&rest=28.7,28.9,28.6")
	assert.Equal(t, untouched.Value("out-steps"), p.Value("out-steps"))
	assert.Equal(t, untouched.Text(".answer"), p.Text(".answer"))
	assert.Equal(t, untouched.Text("#part-next"), p.Text("#part-next"))

	p.Click("#clear")
	p.Wait(`!document.querySelector(".answer")`)
	p.Click("#example")
	p.Wait(`document.querySelector(".answer")`)
}
