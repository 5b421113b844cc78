package calc_test

import (
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/link"
)

// mendSeeds are links with what happens to them.
func mendSeeds(f *testing.F) {
	for _, p := range calc.Pages {
		for _, text := range []string{p.Example, strings.ReplaceAll(p.Example, "&", "&amp;"), encodeAll(p.Example), wide(p.Example) + ".", p.Example + "&saw=steps%3A1%22"} {
			f.Add("https://club.example/" + p.Slug + "/#" + text)
			f.Add(text)
		}
	}
	f.Add("See [url=x/measure/#v=1µ=16&st\u00ADeps=5\n38, 7]it[/url] v%3D1%26rest=%C2%A028%2 0")
}

// Mending is total, is said, and has an end.
func FuzzMend(f *testing.F) {
	mendSeeds(f)
	f.Fuzz(func(t *testing.T, text string) {
		fragment, said := calc.Mend(text)
		if len(said) == 0 {
			require.Equal(t, text, fragment)
		}
		again, more := calc.Mend(fragment)
		require.Equal(t, fragment, again)
		require.Empty(t, more)

		// What a form writes is never mended.
		p := calc.Pages[len(text)%len(calc.Pages)]
		form := calc.Load(p, text)
		for _, written := range []string{form.Fragment(), form.ShareFragment()} {
			if len(written) > link.MostLink {
				continue
			}
			same, none := calc.Mend(written)
			require.Equal(t, written, same)
			require.Empty(t, none)
		}
	})
}

func FuzzReadAddress(f *testing.F) {
	mendSeeds(f)
	f.Fuzz(func(t *testing.T, text string) {
		slug, fragment, said, ok := calc.ReadAddress(text)
		if !ok {
			require.Empty(t, slug+fragment)
			require.Empty(t, said)
			return
		}
		p, known := calc.PageOf(slug)
		require.True(t, known)
		u, err := url.Parse("https://club.example/" + slug + "/#" + fragment)
		require.NoError(t, err, "it can be navigated to")
		require.Equal(t, link.Split(fragment), link.Split(u.EscapedFragment()), "and comes back as it was")
		_, more := calc.Mend(fragment)
		require.Empty(t, more, "what is opened is mended")
		checkFigures(t, p, calc.Load(p, fragment).Report())
	})
}
