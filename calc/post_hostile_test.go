package calc_test

import (
	"regexp"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/page/convert"
)

// hostileNames call people, lead elsewhere, hide text or turn it round.
var hostileNames = []string{
	"@everyone", "ask @keeper-2 or me@club.example", "http://evil.example", "HTTPS://evil.example/x", "//evil.example", "www.evil.example", "evil.example/x",
	"[url=//evil.example]x[/url]", "[b]", "<img src=x>", "</b>", "<!-- x", "![x](y)", "[x](y)", "[x]: y", "`a`", "**a**", "$a$", "==a==", "~~a~~", "\\", "\\[b]", "&lt;b&gt;",
	"a\u202eb\u2066c", "a\u200bb\u00adc\ufeffd", "a\U000e0041b\U000e01ef", "a\u2028b\u0085c\nd", "\u3164\u2800x",
}

// A post calls nobody and leads nowhere but to its sheet, whatever the kind.
var (
	calls   = regexp.MustCompile(`@[\pL\pN_-]`)
	leads   = regexp.MustCompile(`://|[\pL\pN]\.\pL`)
	opens   = regexp.MustCompile(`<[\pL/!?]`)
	brokenU = regexp.MustCompile(`[@.:]\x{200b}`)
	escaped = regexp.MustCompile("\\\\[][\\\\`*_<>&~|$^=]")
	ours    = regexp.MustCompile(`\[/?b\]|\[/?list\]|\[\*\]|\[url=\]|\[/url\]`)
)

func checkPost(t require.TestingT, f *form.Form, kind form.PostKind) {
	const at = "https://club.example/x/#v=1"
	post := form.Post(f, kind, at)
	require.Equal(t, 1, strings.Count(post, at))
	body := strings.Replace(post, at, "", 1)
	require.NotRegexp(t, calls, body)
	require.NotRegexp(t, leads, body)
	for _, r := range brokenU.ReplaceAllString(body, "") {
		require.False(t, unicode.Is(unicode.Cf, r) && r != '\u200c' && r != '\u200d' || unicode.IsControl(r) && r != '\n' || r == '\u2028' || r == '\u2029', "%U in %q", r, body)
	}
	switch kind {
	case form.MarkdownPost: // what means something has a backslash before it, but what is ours
		plain := escaped.ReplaceAllString(body, "")
		require.Equal(t, 1, strings.Count(plain, "["), plain)
		require.Equal(t, 1, strings.Count(plain, "<"), plain)
		require.NotContains(t, plain, "`")
		require.NotContains(t, plain, "_")
		require.NotContains(t, plain, `\[`)
		require.NotContains(t, strings.ReplaceAll(plain, "**", ""), "*")
	case form.BBCodePost:
		require.NotContains(t, ours.ReplaceAllString(body, ""), "[")
		require.NotRegexp(t, opens, body)
	default:
		require.NotContains(t, body, "[")
		require.NotRegexp(t, opens, body)
	}
}

func TestPostsOfHostileNames(t *testing.T) {
	for _, name := range hostileNames {
		for kind := range form.PostKinds {
			f := calc.NewForm(convert.Page)
			f.Set("name", 0, name)
			f.Set("name", 1, "then "+name)
			checkPost(t, f, form.PostKind(kind))
		}
	}
	f := calctest.Load(t, "convert", "v=1&name="+link.Escape("Heron\u202e of @us"))
	assert.Contains(t, form.Post(f, form.PlainPost, "x"), "Name: Heron of @\u200bus")
	f = calctest.Load(t, "convert", "v=1&name="+link.Escape("نرم\u200cافزار"))
	assert.Contains(t, form.Post(f, form.PlainPost, "x"), "نرم\u200cافزار", "that script needs it")
}

// A link, and so its QR code, is printable ASCII whatever is typed: no sign in it hides
// another, and none ends it early.
func TestLinksOfHostileNamesAreASCII(t *testing.T) {
	for _, name := range append(hostileNames, "a b", "a)b.", "“x”", "a,b;c|d") {
		f := calc.NewForm(convert.Page)
		f.Set("name", 0, name)
		assert.Regexp(t, `^[A-Za-z0-9&=,:/.*+_~$!@-]*([%][0-9A-F]{2}[A-Za-z0-9&=,:/.*+_~$!@-]*)*$`, f.ShareFragment(), name)
	}
}

// Names stand in the report without what cannot be seen; the link has them as they were typed.
func TestNamesInReportsShowWhole(t *testing.T) {
	const sheet = "v=1&name=He%E2%80%AEron%E2%80%8B&steps=538&micro=16&angle=1.8"
	f := calctest.Load(t, "convert", sheet)
	assert.Contains(t, f.Report().String(), "Heron")
	assert.NotContains(t, f.Report().String(), "\u202e")
	assert.Contains(t, f.Fragment(), "name=He%E2%80%AEron%E2%80%8B")
}

// Whatever is typed, no post breaks out of its markup.
func FuzzPosts(f *testing.F) {
	for _, name := range hostileNames {
		f.Add(name, "538")
		f.Add("Heron", name)
	}
	f.Fuzz(func(t *testing.T, name, steps string) {
		typed := calc.NewForm(convert.Page)
		typed.Set("name", 0, name)
		typed.Set("steps", 0, steps)
		for kind := range form.PostKinds {
			checkPost(t, typed, form.PostKind(kind))
		}
	})
}
