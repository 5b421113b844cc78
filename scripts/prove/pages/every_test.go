package pages

import (
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/scripts/prove/browser"
)

// Every field, button and link of an empty calculator is reached by Tab (of
// radio buttons with the same name, one).
func TestEveryPageByKeyboard(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	for _, page := range calc.Pages {
		t.Run(page.Slug, func(t *testing.T) {
			p := p.In(t)
			p.Show("/" + page.Slug + "/")
			p.Unfold()
			const mark = `(e) => e.type === "radio" ? "radio " + e.name : e.id || e.tagName + " " + e.textContent`
			want := browser.Eval[[]string](p, `[...new Set([...document.querySelectorAll("main input, main select, main button, main summary, main a[href]")].filter((e) => e.checkVisibility() && !e.disabled && (e.tagName === "SUMMARY" || !e.closest("details:not([open])"))).map(`+mark+`))]`)
			require.NotEmpty(t, want)
			got := map[string]bool{}
			for range len(want) + 40 {
				p.Type(kb.Tab)
				got[browser.Eval[string](p, `(`+mark+`)(document.activeElement)`)] = true
			}
			for _, control := range want {
				assert.True(t, got[control], "Tab never reaches %s", control)
			}
		})
	}
}

// A wrong entry is told by its field's name, stays as it was typed, takes away
// what rests on it and nothing for good.
func TestEveryPageTellsWhatIsWrong(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	for _, page := range calc.Pages {
		t.Run(page.Slug, func(t *testing.T) {
			p := p.In(t)
			p.Show("/" + page.Slug + "/#" + page.Example)
			p.Unfold()
			answer := answerOf(p)
			require.NotEmpty(t, answer)
			form := calc.Load(page, page.Example)
			for _, field := range form.Fields() {
				if !form.Filled(field) || !form.Visible(field, 0) {
					continue
				}
				form.Set(field.Key, 0, "8Omm{")
				wrong := form.ProblemAt(field.Key, 0)
				form.Set(field.Key, 0, calc.Load(page, page.Example).Text(field.Key, 0))
				if wrong == "" || !browser.Eval[bool](p, `document.getElementById("f-`+field.Key+`")?.type === "text" || document.getElementById("f-`+field.Key+`-1")?.type === "text"`) {
					continue // free text, or not to be typed
				}
				before := p.Field(field.Key)
				p.FillNth(field.Key, 0, "8Omm{")
				assert.Contains(t, p.Text("#problems"), field.Label)
				assert.Equal(t, "8Omm{", p.Field(field.Key))
				p.FillNth(field.Key, 0, before)
				assert.False(t, browser.Eval[bool](p, `Boolean(document.getElementById("problems"))`), field.Key)
				assert.Equal(t, answer, answerOf(p), field.Key)
				return // one field for each page: the laws try all of them natively
			}
			require.Fail(t, "no field could be typed into")
		})
	}
}

// Links answer without a network too, after the first visit of any page.
func TestEveryPageAnswersOffline(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/")
	p.WaitOffline()
	s.Stop()
	for _, page := range calc.Pages {
		p.Open("/" + page.Slug + "/#" + page.Example)
		assert.Equal(t, calc.Load(page, page.Example).Report().Answer.Full(), answerOf(p), page.Slug)
	}
}
