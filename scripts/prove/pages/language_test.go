package pages

import (
	"fmt"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/make/language"
	"striderule/scripts/prove/browser"
)

// foreign builds the site in a language that is made up, every text of which is known by its
// accents and is longer than the English one (scripts/make/language).
var foreign = sync.OnceValues(func() (dir string, err error) {
	root, err := filepath.Abs("../../..")
	if err != nil {
		return "", err
	}
	dir = filepath.Join(root, ".build", "site-"+language.Pseudo)
	build := exec.Command("go", "run", "./scripts/make/site", "-serving", "-out", dir, "-language", language.Pseudo)
	build.Dir = root
	if log, err := build.CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w: %s", err, log)
	}
	return dir, nil
})

func foreignPage(t *testing.T) *browser.Page {
	dir, err := foreign()
	require.NoError(t, err)
	p := browser.NewSiteAt(t, dir, browser.Mount).NewPage(t)
	p.Allow(".wasm.") // it is not compressed, and the page asks
	return p
}

// englishLeft are the texts of a page, and those that it tells screen readers, with words that no
// accent shows to be translated: they have a vowel, and it is plain. Names of the example's story,
// units, what is sent to a machine, and formulas are the same in every language.
const englishLeft = `(() => {
	const same = /\b(Striderule|Heron|Plover|Ibis|Tidewater|Makers|Hall|feed|mm|min|rev|steps|pulses|tpi|ohm|Hz|kHz|in|continued|axis|extruder|measure|swap|parts|plan|rate|flow|log|machines|method|run|JSON|ISO|IEC|JCGM|tan|sin|UTF)\b/g;
	const left = [];
	const look = (text, where) => {
		const words = text.replace(/\{value\}|[GM]\d+[^;\n]*|https?:\S+|(?<=\s)\/[a-z]+\/|\S*[=#&]\S*|\b\w+\.(gcode|csv|json|txt)\b/g, " ").replace(same, " ").match(/(?<![\p{L}\d'’])[A-Za-z]{2,}(?![\p{L}\d])/gu) || [];
		const english = words.filter((w) => /[aeiou]/i.test(w));
		if (english.length) left.push(where + ": " + english.join(" ") + " | " + text.trim().slice(0, 80));
	};
	const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	for (let n = walker.nextNode(); n; n = walker.nextNode()) {
		if (!n.parentElement.closest("script, style, code, pre, .keys")) look(n.data, n.parentElement.tagName + "." + n.parentElement.className);
	}
	for (const name of ["aria-label", "title", "alt", "placeholder", "data-said"]) {
		for (const e of document.querySelectorAll("[" + name + "]")) look(e.getAttribute(name), name);
	}
	look(document.title, "title");
	for (const e of document.querySelectorAll("meta[name=description], meta[property^='og:']:not([property='og:site_name'], [property='og:type'], [property='og:image'], [property='og:image:type'])")) look(e.content, e.getAttribute("property"));
	return [...new Set(left)];
})()`

// cutOff are elements whose text does not fit into them.
const cutOff = `[...document.querySelectorAll("body *")].filter((e) => e.checkVisibility() && !e.closest("svg, .unseen, .scroll, .chips, input") && e.textContent.trim() &&
	(() => { const s = getComputedStyle(e), b = e.getBoundingClientRect(); return b.width > 2 && s.position !== "absolute" &&
		(b.right > innerWidth + 1 || s.overflowX !== "visible" && e.scrollWidth > e.clientWidth + 1 || s.overflowY !== "visible" && s.overflowY !== "auto" && e.scrollHeight > e.clientHeight + 2); })())
	.map((e) => e.tagName + " " + e.className + " " + e.id + " " + e.textContent.slice(0, 60))`

// lostPath is the page for addresses at which there is none.
const lostPath = "/404.html"

// Every page speaks the language of its site and no other, with nothing cut off on the narrowest
// phone.
func TestAnotherLanguage(t *testing.T) {
	browser.Alongside(t)
	p := foreignPage(t)
	p.Viewport(320, browser.Height)
	for _, path := range append(filledPaths(), lostPath) {
		if path == lostPath {
			p.Load(path)
			p.Wait(`document.querySelectorAll("#pages a").length > 5`)
		} else {
			p.Open(path)
		}
		if browser.Eval[bool](p, `Boolean(document.getElementById("demo"))`) {
			p.Click("#demo")
		}
		p.Unfold()
		assert.Equal(t, language.Pseudo, browser.Eval[string](p, `document.documentElement.lang`), path)
		assert.Empty(t, browser.Eval[[]string](p, englishLeft), path)
		assert.Empty(t, browser.Eval[[]string](p, cutOff), path)
		p.NoSidewaysScrolling()
		assert.Empty(t, browser.Eval[[]string](p, `[...document.querySelectorAll("main data")].map((d) => d.textContent).filter((s) => /\d\.\d/.test(s))`), "%s: the point of another language", path)
	}
	// To people as they write it, to the machine with the point.
	p.Open("/measure/#" + heron + "&line=M92%20E%7Bvalue%7D")
	assert.Contains(t, p.Text(".answer"), "564,3")
	assert.Contains(t, p.Text("#part-apply"), "M92 E564.3")
	p.Fill("asked", "80,0")
	p.Wait(`location.hash.includes("asked=80.0&")`)
	assert.Contains(t, p.Text(".answer"), "564,3")
}

// A link goes from a site in one language to one in another, and gives the same.
func TestLinksBetweenLanguages(t *testing.T) {
	browser.Alongside(t)
	p, q := browser.NewSite(t).NewPage(t), foreignPage(t)
	const figures = `[...document.querySelectorAll("data[id^=out-]")].map((d) => d.id + "=" + d.value)`
	for _, path := range filledPaths() {
		if !strings.Contains(path, "#") || strings.HasPrefix(path, "/run/") {
			continue
		}
		p.Open(path)
		link := browser.Eval[string](p, `document.querySelector("[data-share]").dataset.share`)
		_, fragment, _ := strings.Cut(link, "#")
		page, _, _ := strings.Cut(path, "#")
		q.Open(page + "#" + fragment)
		p.Unfold()
		q.Unfold()
		want := browser.Eval[[]string](p, figures)
		require.NotEmpty(t, want)
		assert.Equal(t, want, browser.Eval[[]string](q, figures), path)
		assert.Contains(t, fragment, "saw=")
		assert.Equal(t, fragment, strings.TrimPrefix(browser.Eval[string](q, `document.querySelector("[data-share]").dataset.share.split("#")[1]`), "#"), path)
	}
}
