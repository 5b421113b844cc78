// Package posts has independent readers of forum posts read what calc writes.
package posts

import (
	"bytes"
	"encoding/json"
	"math/rand/v2"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/form"
)

// A reading is what a reader finds in a post.
type reading struct {
	Links    []string
	Text     string
	Elements []string
}

// hostile texts look like markup, or like what forums make links of.
var hostile = []string{
	"[b]bold[/b]", "[url=javascript:alert(1)]x[/url]", "[/url]", "[/list]", "[*]", "]", "[",
	"**a** _b_ `c`", "[x](javascript:alert(1))", "](<x>)", "<img src=x onerror=alert(1)>", "&lt;b&gt; &amp;", "~~x~~ | y |",
	"@everyone", "a@b.example", "HTTPS://evil.example", "evil.example/x", "//evil.example", "<http://evil.example>", "<!-- x", "</p>", "<a href=//evil.example>x</a>",
	"[x]: y", "[x][y]", "![", "](", "[/b]", "[/code]", "[code]", "[quote=x]", "[img]//evil.example/x[/img]", "[B]x[/B]", "[ b ]x[ /b ]", "[b", "b]",
	"a\u202eb\u2066c", "a\u200bb\u00adc", "a\u2028b\tc", "［b］", "＜b＞", "&#91;b&#93;", "&lbrack;b]", "\x00", "$$x$$", "==x==", "^x^", "``", "```", "***a", "__",
	"# x", "- x", "1. x", "> x", "***", "---", `\`, `\[`, "![x](y)", "http://evil.example", "www.evil.example",
}

const at = "https://club.example/tools/striderule/"

// TestPostsAreReadAsMeant: the one link is whole, what was typed comes out as
// text, and there are no elements but ours.
func TestPostsAreReadAsMeant(t *testing.T) {
	modules := os.Getenv("POST_READERS")
	if modules == "" {
		t.Skip("POST_READERS names no node_modules with commonmark and @bbob/parser: run scripts/test")
	}
	var links []string
	var plain []string
	posts := map[string][]string{"markdown": {}, "bbcode": {}, "plain": {}}
	add := func(f *form.Form) {
		link := at + f.Page.Slug + "/#" + f.ShareFragment()
		links = append(links, link)
		plain = append(plain, form.Post(f, form.PlainPost, link))
		posts["plain"] = plain
		posts["markdown"] = append(posts["markdown"], form.Post(f, form.MarkdownPost, link))
		posts["bbcode"] = append(posts["bbcode"], form.Post(f, form.BBCodePost, link))
	}
	for _, p := range calc.Pages {
		add(calc.Load(p, p.Example))
	}
	convert, _ := calc.PageOf("convert")
	for _, text := range hostile {
		f := calc.NewForm(convert)
		f.Set("name", 0, text)
		f.Set("name", 1, "then "+text)
		add(f)
	}
	// Names made of these at random.
	lots := rand.New(rand.NewPCG(22, 13))
	for range 3000 {
		f := calc.NewForm(convert)
		for row := range 3 {
			name := ""
			for range 1 + lots.IntN(4) {
				name += hostile[lots.IntN(len(hostile))]
			}
			f.Set("name", row, name)
		}
		add(f)
	}

	in, err := json.Marshal(posts)
	require.NoError(t, err)
	cmd := exec.Command("node", "read.mjs", modules)
	cmd.Stdin, cmd.Stderr = bytes.NewReader(in), os.Stderr
	out, err := cmd.Output()
	require.NoError(t, err)
	var read map[string][]reading
	require.NoError(t, json.Unmarshal(out, &read))

	ours := map[string][]string{
		"markdown": {"document", "heading", "paragraph", "text", "strong", "list", "item", "softbreak", "link"},
		"bbcode":   {"b", "list", "*", "url"},
		// Of plain text a forum makes what it likes, but no link, no picture, no tag.
		"plainAsMarkdown": {"document", "paragraph", "text", "strong", "emph", "code", "list", "item", "softbreak"},
		"plainAsBBCode":   {},
	}
	for typed, readings := range read {
		require.Len(t, readings, len(links))
		for i, r := range readings {
			own := links[i : i+1]
			if strings.HasPrefix(typed, "plain") {
				own = own[:0]
			}
			assert.ElementsMatch(t, own, r.Links, typed)
			for _, e := range r.Elements {
				if e == "heading" || !slices.Contains(ours[typed], e) {
					assert.Fail(t, "an element that is not ours", "%s in %s: %s", e, typed, plain[i])
				}
			}
			if len(own) == 0 {
				continue
			}
			// Nothing is lost, nothing comes out otherwise than in plain text.
			lines, _, _ := strings.Cut(plain[i], "Sheet to check")
			assert.Equal(t, signs(strings.ReplaceAll(lines, "\n- ", "\n")+"Sheet to check or correct"), signs(r.Text), typed)
		}
	}
	t.Logf("%d posts read in both forms", len(links))
}

// signs are a text's signs less what only breaks it, with plain brackets.
func signs(text string) string {
	return strings.Map(func(r rune) rune {
		if i := strings.IndexRune("［］", r); i >= 0 {
			return rune("[]"[min(i, 1)])
		}
		if r == '＜' {
			return '<'
		}
		if strings.ContainsRune(" \n\u200b", r) {
			return -1
		}
		return r
	}, text)
}
