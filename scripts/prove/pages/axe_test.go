package pages

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/scripts/prove/browser"
)

// states are the pages in every state that looks different.
func states() map[string]string {
	const feed = "/measure/#v=1&steps=538&asked=80&mark=105&tool="
	all := map[string]string{
		"start": "/", "method": "/method/", "log": "/log/", "machines": "/machines/",
		"change":      feed + "caliper-0.05&rest=28.7,28.9,28.6&restagain=25.1,24.9,25",
		"leave":       feed + "caliper-0.05&rest=25,25.1,25,25.1",
		"more":        feed + "caliper-0.05&rest=25.2,25.9,25.4",
		"hopeless":    feed + "rule&rest=25,25,25",
		"either":      "/measure/#v=1&steps=415&asked=100&read=fed&fed=99.5,99.501,99.499,99.5,99.501,99.499&tool=own&step=0.001",
		"mistake":     "/measure/#v=1&steps=415&asked=70&read=fed&fed=35.1,35,35.1&tool=caliper-0.05",
		"slip":        "/measure/#v=1&steps=415&trial=speeds&asked=100&read=fed&at=60,60,180,180,360,360&fed=99.42,99.38,99.03,98.98,98.42,98.38&tool=caliper-0.02",
		"lengths":     "/measure/#v=1&axis=travel&steps=80&trip=lengths&want=20,20,100,100,180,180&moved=20.13,20.11,99.81,99.79,179.49,179.47&tool=caliper-0.02",
		"sides":       "/measure/#v=1&axis=travel&steps=80&trip=sides&target=10,10,100,100,190,190&up=10.04,10.05,100.04,100.03,190.05,190.04&down=9.96,9.95,99.96,99.97,189.96,189.95",
		"wrong":       "/measure/#v=1&steps=538.0&asked=8Omm&mark=105&rest=28.7,120&nozzle=4",
		"same":        feed + "caliper-0.05&rest=28.7,28.9,28.6&saw=steps:564.3356643",
		"differs":     feed + "caliper-0.05&rest=28.7,28.9,28.6&saw=steps:546.3",
		"reply":       feed + "caliper-0.05&rest=28.7,28.9,28.6&was-asked=90&was-rest=28.7,28.9&saw=steps:564.3356643",
		"travel plan": "/plan/#v=1&axis=travel&trip=sides&tool=caliper-0.01&letter=y&from=0&to=200",
		"no plan":     "/plan/#v=1&wanted=0.01&tool=rule",
	}
	for _, p := range calc.Pages {
		all[p.Slug], all[p.Slug+" empty"] = "/"+p.Slug+"/#"+p.Example, "/"+p.Slug+"/"
	}
	return all
}

// schemes are the colours that a browser can be told to prefer.
func schemes(t *testing.T) []string {
	if browser.Name() == "chromium" {
		return []string{"light", "dark"}
	}
	t.Logf("skipped in %s: dark colours, which its protocol does not set", browser.Name())
	return []string{"light"}
}

// TestAccessibilityRules runs the rules of WCAG 2.2 A and AA that a program can
// check, by axe-core, which scripts/test fetches and names in AXE_CORE.
func TestAccessibilityRules(t *testing.T) {
	browser.Alongside(t)
	rules := axeRules(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	checked := 0
	check := func(name string) {
		browser.Eval[bool](p, `(document.getElementById("demo")?.click(), true)`)
		p.Unfold()
		checked += axeFinds(t, p, rules, name)
	}
	for name, path := range states() {
		p.Show(path)
		check(name)
	}
	p.Load("/404.html")
	p.Wait(`!document.getElementById("pages").hidden`)
	check("lost")
	t.Logf("%d states checked", checked)
}

// axeRules is the script with the rules; a test without it is skipped.
func axeRules(t *testing.T) string {
	t.Helper()
	file := os.Getenv("AXE_CORE")
	if file == "" {
		t.Skip("AXE_CORE does not name axe.min.js: run scripts/test, or npm install axe-core")
	}
	rules, err := os.ReadFile(filepath.Clean(file))
	require.NoError(t, err)
	return string(rules)
}

// axeFinds holds what a page shows against the rules, in each scheme of colours, and returns how many
// those are.
func axeFinds(t *testing.T, p *browser.Page, rules, name string) int {
	t.Helper()
	if !browser.Eval[bool](p, `Boolean(window.axe)`) { // else from the state before
		browser.Eval[bool](p, `(() => {`+rules+`; return true; })()`)
	}
	colours := schemes(t)
	for _, scheme := range colours {
		p.Prefers("prefers-color-scheme", scheme)
		var found struct {
			Passes     int
			Violations []string
		}
		only := `["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]`
		if scheme != colours[0] {
			only = `{type: "rule", values: ["color-contrast", "link-in-text-block"]}` // the others do not look at colours
		}
		// Of what passes, which is most, it need not tell where: that takes longer than the rules.
		text := browser.Eval[string](p, `axe.run({runOnly: `+only+`, resultTypes: ["violations"]}).then((r) => JSON.stringify({
			passes: r.passes.length,
			violations: r.violations.flatMap((v) => v.nodes.map((n) => v.id + ": " + n.html.slice(0, 150) + " " + (n.any[0] || n.all[0] || n.none[0] || {}).message)),
		}))`)
		require.NoError(t, json.Unmarshal([]byte(text), &found))
		assert.Empty(t, found.Violations, "%s, %s", name, scheme)
		assert.Greater(t, found.Passes, map[bool]int{true: 5, false: 0}[scheme == colours[0]], "%s: the rules ran", name)
	}
	return len(colours)
}
