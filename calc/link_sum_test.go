package calc_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/sheet"
)

// plover is a sheet with words and a template in it, whose last entries the result does not
// rest on.
const plover = "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6&angle=1.8deg&micro=16&line=M92%20E%7Bvalue%7D"

func sharedPlover(t testing.TB) string { return calctest.Load(t, "measure", plover).ShareFragment() }

// A link of today, cut anywhere: the sender's result is in it, and it is said that something is
// missing, whether the result rests on that or not.
func TestCutLinksAreNoticed(t *testing.T) {
	whole := sharedPlover(t)
	require.True(t, strings.HasPrefix(whole, "v=1&saw=steps:564.3356643:2.81:"+form.Edition+":"), "it goes first")
	angle := strings.Index(whole, "&angle")
	for at := strings.Index(whole, "&steps=") + 2; at < len(whole); at++ {
		f := calctest.Load(t, "measure", whole[:at])
		check, says := f.Check()
		assert.Contains(t, says, "This link seems to be cut short", whole[:at])
		assert.Contains(t, problems(f), "This link seems to be cut short", "so there is a way to the place")
		if at < angle {
			assert.Equal(t, form.Differs, check, whole[:at])
		} else {
			assert.Equal(t, form.Altered, check, whole[:at])
			assert.Contains(t, says, "The result is still the one that was sent.")
		}
	}
	for end, last := range map[string]string{"&mar": "mar", "mark=10": "Mark at", "28.7": "Remaining", "micro=1": "Microsteps"} {
		_, says := calctest.Load(t, "measure", whole[:strings.Index(whole, end)+len(end)]).Check()
		assert.Contains(t, says, "The last entry in it is “"+last+"”.", end)
	}
	f := calctest.Load(t, "measure", whole)
	check, _ := f.Check()
	assert.Equal(t, form.Same, check)
	assert.Empty(t, f.Problems())
	f.Set("micro", 0, "8")
	check, says := f.Check()
	assert.Equal(t, form.Unclaimed, check, says)
}

// What no page can know by itself, the sum of the entries makes certain.
func TestSumsUndoDamage(t *testing.T) {
	whole := sharedPlover(t)
	for name, damage := range map[string][2]string{
		"a space in a key":            {"mark", "mar k"},
		"one as browsers encode it":   {"mark", "mar%20k"},
		"a space in a value":          {"28.9", "28 .9"},
		"one as browsers encode them": {"105", "1%2005"},
		"a break in a value":          {"28.9", "28.%0A9"},
		"a quote in a key":            {"&rest", "&%3E%20rest"},
		"a quote in a value":          {"28.9", "28.%0A%3E%209"},
		"a soft hyphen":               {"538", "5%C2%AD38"},
		"one of no width":             {"28.7", "28%E2%80%8B.7"},
		"beside a space of its own":   {"%20E", "%20%20E"},
		"decimal commas":              {"28.7,28.9,28.6", "28,7,28,9,28,6"},
		"one decimal comma":           {"28.9", "28,9"},
		"another one":                 {"538.0", "538,0"},
		"commas":                      {"28.7,28.9,28.6", "28.7%2C28.9%2C28.6"},
		"a plus":                      {"%20", "+"},
		"encoded twice":               {"%", "%25"},
		"marks":                       {"=", "%3D"},
		"wide digits":                 {"16", "%EF%BC%91%EF%BC%96"},
		"a question mark":             {"v=1", "?v=1"},
		"an end that is none":         {"%7D", "%7D…"},
		"more behind it":              {"%7D", "%7D…see%20there"},
	} {
		damaged := strings.ReplaceAll(whole, damage[0], damage[1])
		require.NotEqual(t, whole, damaged, name)
		f := calctest.Load(t, "measure", damaged)
		check, says := f.Check()
		assert.Equal(t, form.Same, check, "%s: %s", name, says)
		assert.Equal(t, calctest.Load(t, "measure", whole).Fragment(), f.Fragment(), name)
		assert.Contains(t, problems(f), "has been repaired", name)
	}
}

// Without a sum, as links were made before, the result that the sender saw tells whether the
// commas of a list are decimal ones.
func TestDecimalCommasInOldLinks(t *testing.T) {
	const commas = "v=1&steps=538.0&asked=80&mark=105&rest=28,7,28,9,28,6"
	f := calctest.Load(t, "measure", commas+"&saw=steps:564.3356643:2.81:2026-11")
	check, says := f.Check()
	assert.Equal(t, form.Same, check, says)
	assert.Equal(t, heron, f.Fragment())
	assert.Contains(t, problems(f), "Commas within numbers were read as decimal points.")
	for _, other := range []string{"&saw=steps:566", ""} {
		f = calctest.Load(t, "measure", commas+other)
		assert.Equal(t, commas, f.Fragment(), "nothing says that they are")
		assert.NotContains(t, problems(f), "decimal points")
	}
}

// Whatever single character of a link's entries is another one: it is undone, or it is told.
func TestSumsTellEachChange(t *testing.T) {
	eachPage(t, func(t *testing.T, p sheet.Page) {
		rapid.Check(t, func(t *rapid.T) {
			was := drawForm(t, p)
			fragment := was.ShareFragment()
			if was.Report().Answer == nil || len(fragment) > link.MostLink {
				return
			}
			first := strings.Index(fragment, "&saw=") + 1
			from := first + strings.IndexByte(fragment[first:], '&') + 1
			at := rapid.IntRange(from, len(fragment)-1).Draw(t, "at")
			damaged := fragment[:at] + rapid.StringMatching("[a-z0-9.,&=%]?").Draw(t, "by") + fragment[at+1:]
			is := calc.Load(p, damaged)
			check, says := is.Check()
			if is.Fragment() != was.Fragment() {
				require.Contains(t, []form.Check{form.Differs, form.Altered}, check, says)
			}
		})
	})
}

// A link in several lines, as mail breaks and quotes it.
func TestPastedLines(t *testing.T) {
	whole := "https://club.example/tools/measure/#" + sharedPlover(t)
	for name, with := range map[string]string{"broken": "\n", "indented": "\r\n  ", "quoted": "\n> ", "quoted twice": "\n>> "} {
		for at := len("https://club.example/tools/") + 1; at < len(whole); at++ {
			text := "> He wrote:\n> see " + whole[:at] + with + whole[at:] + with + "Thanks"
			slug, fragment, said, ok := calc.ReadAddress(text)
			require.True(t, ok, text)
			f := calctest.Load(t, slug, fragment)
			check, says := f.Check()
			if !assert.Equal(t, form.Same, check, "%s: %s: %s", name, text, says) {
				break
			}
			assert.NotEmpty(t, said, text)
		}
	}
}
