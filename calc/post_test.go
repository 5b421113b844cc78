package calc_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/page/convert"
)

const postedLink = "https://club.example/tools/striderule/measure/#" + heronShare

func TestPosts(t *testing.T) {
	f := calctest.Load(t, "measure", heron+",31&tool=caliper-0.05&aside=,,,yes")
	assert.Equal(t, `Calibrate from a measurement

Change it: It fed 4.19 to 5.15% too little (95% confidence). That's more than your acceptable error of ± 0.5%.

New steps per mm: 564.3 ± 2.8 steps/mm

- Steps per mm: 538.0 steps/mm
- Commanded length: 80 mm
- Mark at: 105 mm
- Remaining: 28.7, 28.9, 28.6, 31 mm
- Leave out: run 4
- Measured with: Caliper, 0.05 mm

Sheet to check or correct: `+postedLink, form.Post(f, form.PlainPost, postedLink))
	f.Set("asked", 0, "8[b]_0_ <i>www.x://y")
	assert.Contains(t, form.Post(f, form.MarkdownPost, postedLink), `

No result yet.

- **Steps per mm:** 538.0 steps/mm
- **Commanded length:** 8\[b\]\_0\_ \<i\>www.`+"\u200bx:\u200b"+`//y
- **Mark at:** 105 mm
- **Remaining:** 28.7, 28.9, 28.6, 31 mm
- **Leave out:** run 4
- **Measured with:** Caliper, 0.05 mm

[Sheet to check or correct](<`+postedLink+">)")
	assert.Contains(t, form.Post(f, form.BBCodePost, postedLink), "[list]\n[*][b]Steps per mm:[/b] 538.0 steps/mm\n"+
		"[*][b]Commanded length:[/b] 8［b］_0_ ＜i>www.\u200bx:\u200b//y\n")
	assert.Contains(t, form.Post(f, form.BBCodePost, postedLink), "[/list]\n\n[url="+postedLink+"]Sheet to check or correct[/url]")
}

// The title stands out as the names do, and what a sign means is lost wherever it stands.
func TestPostsMarkAndEscape(t *testing.T) {
	f := calctest.Load(t, "convert", "v=1&name=%5C_a")
	f.Set("name", 1, "www.a")
	f.Set("name", 2, "http://b")
	assert.Equal(t, "**Convert a setting**\n\nNo result yet.\n\n- **Name:** \\\\\\_a, www.\u200ba, http:\u200b//b\n\n[Sheet to check or correct](<x>)", form.Post(f, form.MarkdownPost, "x"))
	assert.Equal(t, "[b]Convert a setting[/b]\n\nNo result yet.\n\n[list]\n[*][b]Name:[/b] \\_a, www.\u200ba, http:\u200b//b\n[/list]\n\n[url=x]Sheet to check or correct[/url]", form.Post(f, form.BBCodePost, "x"))
	f = calctest.Load(t, "convert", "v=1&name=a:b")
	assert.Contains(t, form.Post(f, form.MarkdownPost, "x"), "a:b")
	for _, text := range []string{"www.a", "http://b"} {
		f = calctest.Load(t, "convert", "")
		f.Set("name", 0, text)
		assert.NotContains(t, form.Post(f, form.MarkdownPost, "x"), text)
		assert.NotContains(t, form.Post(f, form.PlainPost, "x"), text, "a forum makes links of plain text too")
	}
}

func TestPostsSayWhatToKeep(t *testing.T) {
	f := calctest.Load(t, "measure", "v=1&steps=538&asked=80&mark=105&tool=caliper-0.05&rest=25,25.1,25,25.1")
	assert.Contains(t, form.Post(f, form.PlainPost, postedLink), "Leave it")
	assert.Contains(t, form.Post(f, form.PlainPost, postedLink), f.Report().Answer.Keep.Label+": 538 steps/mm\n")
}

// Whatever is typed: the link stands whole, and so does each line.
func TestPostsKeepLinkAndLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := calc.NewForm(convert.Page)
		typed := rapid.SliceOfN(rapid.StringOfN(rapid.RuneFrom([]rune("a*_`[]<>&~|\\#-+.:/@ ̈1w")), 0, 12, -1), 1, 4).Draw(t, "names")
		for row, name := range typed {
			f.Set("name", row, name)
		}
		plain := form.Post(f, form.PlainPost, postedLink)
		for kind := range form.PostKinds {
			post := form.Post(f, form.PostKind(kind), postedLink)
			assert.Equal(t, 1, strings.Count(post, postedLink))
			lines := strings.Count(plain, "\n")
			if form.PostKind(kind) == form.BBCodePost {
				lines += 2 // the list's own tags
			}
			assert.Equal(t, lines, strings.Count(post, "\n"), "nothing typed breaks a line")
		}
	})
}
