package calc_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/link"
)

// A remark goes with a reply as one line of text, and with nothing else.
func TestRemarks(t *testing.T) {
	f := calctest.Load(t, "measure", heronShare)
	f.SetRemark("Wasn't the mark\nat 120? <b>&saw=1")
	assert.NotContains(t, f.ReplyFragment(), "remark", "nothing is changed yet")
	f.Set("mark", 0, "120")
	reply := f.ReplyFragment()
	assert.Contains(t, reply, "&was-mark=105&remark=Wasn%27t%20the%20mark%20at%20120%3F%20%3Cb%3E%26saw%3D1")
	assert.NotContains(t, f.ShareFragment(), "remark", "that is the sheet alone, as the log saves it")

	g := calctest.Load(t, "measure", reply)
	check, says := g.Check()
	assert.Equal(t, form.Same, check, says)
	assert.Empty(t, g.Problems())
	assert.Equal(t, "Wasn't the mark at 120? <b>&saw=1", g.Told())
	assert.Empty(t, g.Remark(), "it is not the reader's own")
	assert.Equal(t, reply, g.ReplyFragment(), "it is handed on as it came")
	g.Set("asked", 0, "90")
	assert.NotContains(t, g.ReplyFragment(), "remark", "somebody else's is no part of the next reply")
	assert.NotEmpty(t, g.Told(), "still there to be read")

	own := calctest.Load(t, "measure", f.AddressFragment())
	assert.Equal(t, "Wasn't the mark at 120? <b>&saw=1", own.Remark(), "the page's own address keeps it")
	own.SetRemark("Wasn't ")
	assert.Equal(t, "Wasn't ", own.Remark(), "somebody is typing")
	assert.Empty(t, own.Told())

	long := calctest.Load(t, "measure", heronShare+"&remark="+strings.Repeat("x", 200))
	assert.Equal(t, strings.Repeat("x", 140)+"…", long.Told())
	twice := calctest.Load(t, "measure", heronShare+"&remark=a,b&remark=c")
	assert.Equal(t, "a,b", twice.Told())
	assert.Contains(t, problems(twice), "“remark” is in the link twice; the first one is used.")
}

// A post of a reply says what was changed, and to what result, in each of its forms.
func TestPostsOfReplies(t *testing.T) {
	f := calctest.Load(t, "measure", heronShare)
	f.Set("mark", 0, "120")
	f.SetRemark("Wasn't it *120*?")
	reply := calctest.Load(t, "measure", f.ReplyFragment())
	for _, f := range []*form.Form{f, reply} {
		assert.Contains(t, form.Post(f, form.PlainPost, "x"), "\nChanged: Mark at: 105 mm → 120 mm\nResult: 564.3 ± 2.8 steps/mm → 471.6 ± 2.0 steps/mm\n\nRemark: Wasn't it *120*?\n\n- Steps")
		assert.Contains(t, form.Post(f, form.MarkdownPost, "x"), "**Changed:** Mark at: 105 mm → 120 mm\n**Result:** 564.3 ± 2.8 steps/mm → 471.6 ± 2.0 steps/mm\n\n**Remark:** Wasn't it \\*120\\*?\n")
		assert.Contains(t, form.Post(f, form.BBCodePost, "x"), "[b]Changed:[/b] Mark at: 105 mm → 120 mm\n")
	}
	f.Set("mark", 0, "")
	assert.Contains(t, form.Post(f, form.PlainPost, "x"), "Changed: Mark at: 105 mm → –\nResult: 564.3 ± 2.8 steps/mm → no result\n")
	assert.NotContains(t, form.Post(calctest.Load(t, "measure", heronShare), form.PlainPost, "x"), "Changed")
}

// The plain text of a post is read back, without the link in it: the same sheet, or it is said
// which line was not understood.
func TestPostsAreReadBack(t *testing.T) {
	n := 0
	for slug, all := range links(t) {
		for _, l := range all {
			p, _ := calc.PageOf(slug)
			was := calc.Load(p, l.fragment)
			if was.Fragment() == "" || len(was.Problems()) > 0 {
				continue
			}
			post, _, _ := strings.Cut(form.Post(was, form.PlainPost, "x"), "\nSheet to check")
			for _, text := range []string{post, "He wrote:\n> " + strings.ReplaceAll(post, "\n", "\n> "), strings.ReplaceAll(strings.ReplaceAll(post, "- ", "• "), "\n", "\r\n")} {
				read, fragment, said, ok := calc.ReadPost(text)
				require.True(t, ok, text)
				require.Equal(t, slug, read)
				require.Equal(t, link.FromPost, said[0])
				if len(said) > 1 {
					t.Log(said[1:])
					continue // told
				}
				n++
				is := calc.Load(p, fragment)
				require.Equal(t, was.Report().Figures(), is.Report().Figures(), text)
				require.Equal(t, form.Post(was, form.PlainPost, "x"), form.Post(is, form.PlainPost, "x"))
			}
		}
	}
	assert.Greater(t, n, 250, "most of them wholly")

	text := form.Post(calctest.Load(t, "measure", heron), form.PlainPost, "x")
	_, fragment, said, ok := calc.ReadPost(text)
	assert.True(t, ok)
	assert.Equal(t, heron, fragment)
	assert.Len(t, said, 1)
	_, fragment, said, _ = calc.ReadPost(strings.Replace(text, "Mark at: 105", "Mark near: 105", 1))
	assert.Equal(t, "v=1&steps=538.0&asked=80&rest=28.7,28.9,28.6", fragment)
	assert.Contains(t, said, "“Mark near: 105 mm” in it wasn't understood.")
	_, fragment, _, _ = calc.ReadPost(strings.Replace(text, "105 mm", "105 furlongs", 1))
	assert.Contains(t, fragment, "mark=105%20furlongs", "a problem of that field, as if it were typed")
	_, _, said, _ = calc.ReadPost(strings.Replace(text, "105 mm", "106 mm", 1))
	assert.Contains(t, said, "It gives a different result from these entries.")
	for _, none := range []string{"", "Calibrate from a measurement", "- Mark at: 105 mm", "Calibrate from a measurement\nMark at: 105 mm"} {
		_, _, _, ok = calc.ReadPost(none)
		assert.False(t, ok, none)
	}
}
