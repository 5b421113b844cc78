package pages

import (
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// lines lists the fields that can be seen of rows that share a text, line by line.
const lines = `[...document.querySelectorAll("form.lead .lines > .line")].map((l) => [...l.querySelectorAll(".typed")].filter((f) => f.checkVisibility()).map((f) => f.id))`

// At several speeds a speed is typed once for its line, and is that of all of its rows.
func TestSharedTextOfALine(t *testing.T) {
	browser.Alongside(t)
	for _, c := range []struct{ path, shared, read, hash string }{
		{"/measure/#v=1&steps=415&asked=100&trial=speeds&read=fed", "at", "fed", "at=2,2,2,4"},
		{"/measure/#v=1&axis=travel&steps=80&trip=lengths", "want", "moved", "want=2,2,2,4"},
		{"/measure/#v=1&axis=rotary&stepsdeg=80&trip=lengths", "wantdeg", "turned", "wantdeg=2,2,2,4"},
	} {
		t.Run(c.shared, func(t *testing.T) {
			p := browser.NewSite(t).NewPage(t)
			p.Open(c.path)
			id := func(name string, row string) string { return "f-" + name + "-" + row }
			s, r := c.shared, c.read
			assert.Equal(t, [][]string{
				{id(s, "1"), id(r, "1"), id(r, "2"), id(r, "3")},
				{id(s, "4"), id(r, "4"), id(r, "5"), id(r, "6")},
				{id(s, "7"), id(r, "7"), id(r, "8"), id(r, "9")},
			}, browser.Eval[[][]string](p, lines), "three lines of three")
			p.NoSidewaysScrolling()

			p.FillNth(s, 0, "2")
			p.FillNth(s, 3, "4")
			p.FillNth(r, 0, "1")
			p.FillNth(r, 1, "1,1")
			p.FillNth(r, 2, "1,2")
			p.FillNth(r, 3, "1,3")
			p.Wait(`location.hash.includes("&` + c.hash + `")`)

			// Another box in the first line: the lines below keep what they hold.
			p.Focus(r, 2)
			p.Click(".row:has(#" + id(r, "3") + ") .repeat-row")
			p.Settle()
			assert.Equal(t, id(r, "4"), browser.Eval[string](p, active), "in the new box")
			p.Press("1,25")
			assert.Equal(t, []string{"2", "2", "2", "2", "4"}, fields(p, s)[:5])
			assert.Equal(t, []string{"1", "1,1", "1,2", "1,25", "1,3"}, fields(p, r)[:5])
			assert.Equal(t, []string{id(s, "1"), id(r, "1"), id(r, "2"), id(r, "3"), id(r, "4")}, browser.Eval[[][]string](p, lines)[0])

			// Another line, whose text is typed next.
			before := len(browser.Eval[[][]string](p, lines))
			p.Click(".lines > .add")
			after := browser.Eval[[][]string](p, lines)
			assert.Len(t, after, before+1)
			assert.Equal(t, after[before][0], browser.Eval[string](p, active))
			p.Press("6")
			p.Reload()
			assert.Equal(t, []string{"2", "2", "2", "2", "4"}, fields(p, s)[:5], "after a reload")
			assert.Equal(t, []string{id(s, "1"), id(r, "1"), id(r, "2"), id(r, "3"), id(r, "4")}, browser.Eval[[][]string](p, lines)[0])

			// A changed speed is that of its line, and of no other.
			p.FillNth(s, 0, "3")
			assert.Equal(t, []string{"3", "3", "3", "3", "4"}, fields(p, s)[:5])
		})
	}
}

// Enter goes through a line, on to the next, and from the end of the last one to a new one.
func TestEnterGoesThroughLines(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/measure/#v=1&steps=415&asked=100&trial=speeds&read=fed")
	want := [][]string{{"f-at-1", "f-fed-1", "f-fed-2", "f-fed-3"}, {"f-at-4", "f-fed-4", "f-fed-5", "f-fed-6"}, {"f-at-7", "f-fed-7", "f-fed-8", "f-fed-9"}}
	p.Focus("at", 0)
	for _, line := range want {
		for _, field := range line {
			assert.Equal(t, field, browser.Eval[string](p, active))
			p.Press("60" + kb.Enter)
			p.Settle()
		}
	}
	all := browser.Eval[[][]string](p, lines)
	assert.Len(t, all, 4, "a line was added")
	assert.Equal(t, all[3][0], browser.Eval[string](p, active))
	// From an empty field it goes on to what stands below instead.
	p.Press(kb.Enter)
	assert.Equal(t, all[3][1], browser.Eval[string](p, active))
	assert.Len(t, browser.Eval[[][]string](p, lines), 4)
}

// Rows of many fields are one form as long as there is one; an added row folds the first, and is
// open itself. A link's rows are closed, and say what they hold.
func TestRowsOfManyFieldsFold(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	const folds = `[...document.querySelectorAll("details.row-fold")].map((d) => d.id + (d.open ? " open" : ""))`
	p.Open("/convert/#v=1&name=Heron&steps=538.0&angle=1.8&micro=16")
	assert.Empty(t, browser.Eval[[]string](p, folds))
	p.FillNth("ratio", 0, "54:12")
	p.Click("#add-axis")
	assert.Equal(t, []string{"row-axis-1", "row-axis-2 open"}, browser.Eval[[]string](p, folds))
	assert.Equal(t, "f-name-2", browser.Eval[string](p, active))
	assert.Contains(t, p.Text("#row-axis-1 > summary"), "Heron")
	assert.Contains(t, p.Text("#row-axis-1 > summary"), "538.0")
	assert.False(t, has(p, "#f-name-1"))
	p.Press("Plover")
	p.FillNth("steps", 1, "80")
	assert.Contains(t, p.Text("#row-axis-2 > summary"), "Plover")
	p.NoSidewaysScrolling()
	p.Click("#row-axis-1 > summary")
	p.Wait(`document.getElementById("f-ratio-1")?.value === "54:12"`)
	p.Wait(`location.hash.includes("name=Heron,Plover&steps=538.0,80")`)

	hash(p, "v=1&name=Heron,Plover,Ibis&steps=538.0,80,8O&angle=1.8,1.8,1.8&micro=16,16,16")
	assert.Equal(t, []string{"row-axis-1", "row-axis-2", "row-axis-3"}, browser.Eval[[]string](p, folds), "of a link")
	assert.NotContains(t, p.Text("#row-axis-2 > summary .brief"), "!")
	assert.NotEqual(t, p.Text("#row-axis-2 > summary .brief"), p.Text("#row-axis-3 > summary .brief"), "what is wrong is marked")

	// A row that goes takes its own fold with it.
	p.Click("#row-axis-2 > summary")
	p.Click(`[aria-label="Remove axis 2"]`)
	p.Wait(`document.querySelectorAll("details.row-fold").length === 2`)
	assert.Contains(t, p.Text("#row-axis-1 > summary"), "Heron")
	assert.Contains(t, p.Text("#row-axis-2 > summary"), "Ibis")
}
