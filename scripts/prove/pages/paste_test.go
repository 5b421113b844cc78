package pages

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// pasteText puts a text on the clipboard and presses Ctrl+V in a field.
func pasteText(p *browser.Page, name string, n int, text string) {
	p.T().Helper()
	p.Copy(text)
	p.Focus(name, n)
	p.Paste()
}

func fields(p *browser.Page, name string) []string {
	p.OpenFolds("details.row-fold")
	return browser.Eval[[]string](p, `[...document.getElementsByName("`+name+`")].map((f) => f.value)`)
}

func TestPasteAColumn(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#v=1&steps=538.0&asked=80&mark=105&rest=,27.0")
	pasteText(p, "rest", 0, " 28,7\r\n28,9\r\n28,6\r\n")
	assert.Equal(t, []string{"28,7", "28,9", "28,6", ""}, fields(p, "rest"), "as they were written")
	assert.InDelta(t, 564.33566, p.Value("out-steps"), 1e-4)
	assert.Equal(t, "Pasted into runs 1 to 3. 1 value was replaced.", p.Text("#pasted-run"))
	assert.Equal(t, "f-rest-1", browser.Eval[string](p, `document.activeElement.id`), "the caret stays")
	p.Wait(`location.hash.includes("28.7,28.9,28.6")`)
	p.NoSidewaysScrolling()
	press(p, "#unpaste")
	assert.Equal(t, []string{"", "27.0", "", ""}, fields(p, "rest"), "undone")
	assert.Empty(t, p.Text("#pasted-run"))

	pasteText(p, "rest", 3, strings.Repeat("28.7\n", 60))
	all := fields(p, "rest")
	assert.Len(t, all, 50)
	assert.Equal(t, []string{"", "27.0", "", "28.7"}, all[:4], "what stands above stays")
	assert.Equal(t, "Pasted into runs 4 to 50. 13 lines didn't fit: there are 50 rows at most.", p.Text("#pasted-run"))
	p.FillNth("rest", 0, "5")
	assert.Empty(t, p.Text("#pasted-run"), "an edit ends it")
	assert.False(t, has(p, "#unpaste"))
}

// Columns go beside each other; into a tick and into a list as well.
func TestPasteColumns(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#v=1&steps=538.0&asked=80&marks=each")
	pasteText(p, "eachmark", 0, "Mark at\tRemaining\tLeave out\n105\t28.7\t\n104,5\t28.4\t\n105\t40\tyes\n")
	assert.Equal(t, []string{"105", "104,5", "105"}, fields(p, "eachmark")[:3])
	assert.Equal(t, []string{"28.7", "28.4", "40"}, fields(p, "rest")[:3])
	assert.Equal(t, []bool{false, false, true}, browser.Eval[[]bool](p, `[...document.getElementsByName("aside")].map((f) => f.checked).slice(0, 3)`))
	p.Open("/convert/#v=1&name=Heron")
	pasteText(p, "name", 0, "Heron\tRotary\nPlover\tlinear")
	assert.Equal(t, []string{"rotary", "linear"}, fields(p, "moves"))
}

// One value, and a field that is in no row, are the browser's own affair.
func TestPasteOneValue(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#v=1&steps=538.0&asked=80&mark=105&rest=1,2,3")
	pasteText(p, "rest", 1, "28.9\n")
	assert.Equal(t, []string{"1", "28.9", "3"}, fields(p, "rest")[:3])
	assert.Empty(t, p.Text("#pasted-run"))
	pasteText(p, "asked", 0, "100")
	assert.Equal(t, "100", p.Field("asked"))
}
