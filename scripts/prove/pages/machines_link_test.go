package pages

import (
	"net/url"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/link"
	"striderule/calc/machine"
	"striderule/scripts/prove/browser"
)

// listLink is what the page's own button copies, as a path of the site.
func listLink(p *browser.Page) string {
	p.T().Helper()
	to := browser.Eval[string](p, `document.getElementById("copy-list").dataset.copy`)
	require.True(p.T(), strings.HasPrefix(to, p.Root()+"machines/#v=1&"), to)
	return "/" + strings.TrimPrefix(to, p.Root())
}

// A club's list is used, and saved, by somebody who has none of it.
func TestClubsListIsSaved(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/machines/")
	fillMachines(p, keptHeron+"&line=M92%20E%7Bvalue%7D", keptPlover)
	p.Reload()
	to := listLink(p)
	q := s.NewPage(t)
	q.Open(to)
	assert.Contains(t, q.Text("#brought"), "Somebody sent you this list.")
	assert.Equal(t, []string{"Heron extruder", "Plover X"}, browser.Eval[[]string](q, `[...document.querySelectorAll("#brought li h2")].map((h) => h.textContent)`))
	assert.Contains(t, q.Text("#brought-0"), "538.0 steps/mm, since 2026-05-02")
	assert.Empty(t, keptMachines(q), "looking saves nothing")
	q.Click("#brought-1 a.go-on")
	waitForSheet(q, "measure")
	assert.Equal(t, "88.9", q.Field("steps"))
	assert.Equal(t, "This sheet is about Plover X.", q.Text("#whose"))
	assert.Empty(t, keptMachines(q))
	q.Back()
	q.Click("#take-all")
	assert.Equal(t, "2 axes saved on this device.", q.Text("#machines-said"))
	assert.Equal(t, "machines-said", browser.Eval[string](q, active))
	assert.Equal(t, map[string]string{"k3x9": keptHeron, "p7": keptPlover}, keptMachines(q), "without the command")
	assert.False(t, has(q, "#brought button"), "there is nothing left to save")
	assert.Contains(t, q.Text("#brought"), "This device has it already.")
	assert.Equal(t, []string{"Heron extruder", "Plover X"}, axesShown(q))
	ids := browser.Eval[[]string](q, `[...document.querySelectorAll("[id]")].map((e) => e.id)`)
	seen := map[string]bool{}
	for _, id := range ids {
		assert.False(t, seen[id], "two elements with the id %q", id)
		seen[id] = true
	}
	q.Open("/machines/")
	assert.False(t, has(q, "#brought"))
	assert.Equal(t, []string{"Heron extruder", "Plover X"}, axesShown(q))
	assert.Equal(t, to[len("/machines/#"):], strings.Replace(listLink(q)[len("/machines/#"):], "&machine=", "&line=M92%20E%7Bvalue%7D&machine=", 1), "the same list goes on, less the command")
}

// Whoever gets a list hears of what of it can't be used.
func TestClubsListIsNotWhole(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open("/machines/#v=1&steps=80&machine=Heron,Plover,Stork&id=a,b,c")
	assert.Contains(t, p.Text("#brought-left"), "2 more in the link have no setting")
}

// A list writes over nothing that a device has.
func TestClubsListWhereSomeOfItIs(t *testing.T) {
	browser.Alongside(t)
	own := strings.Replace(keptHeron, "538.0", "551.2", 1)
	p := withMachines(t, own)
	a, _ := machine.Read(keptHeron)
	b, _ := machine.Read(keptPlover)
	fragment, _ := machine.Join([]machine.Axis{a, b, a.With("id", "zz")}, 4000)
	p.Open("/machines/#" + fragment)
	brought := p.Text("#brought")
	assert.Contains(t, brought, "This device has another setting for it: 551.2 steps/mm, since 2026-05-02.")
	assert.Contains(t, brought, "There is a Heron extruder on this device already. If it's the same one, use that.", "under another ID")
	assert.False(t, has(p, "#take-0"))
	p.Click("#take-1")
	assert.Equal(t, "1 axis saved on this device.", p.Text("#machines-said"))
	assert.Equal(t, []string{"Heron extruder", "Plover X"}, axesShown(p))
	assert.Equal(t, own, keptMachines(p)["k3x9"])
	p.Click("#down-k3x9")
	assert.True(t, browser.Eval[bool](p, `document.activeElement.closest("#machines") !== null`), "the focus is in the list of this device")

	// With the club's setting the page asks, before it saves anything.
	p.Open("/machines/#" + fragment)
	p.Click("#brought li a.go-on")
	waitForSheet(p, "measure")
	p.Wait(`document.getElementById("setting-machine")`)
	assert.Contains(t, p.Text("main"), "It has had 551.2 steps/mm since 2026-05-02; this sheet says 538.0 steps/mm.")

	for _, none := range []string{"v=1", "v=1&machine=Heron", "v=1&steps=80", "x", "%"} {
		p.Open("/machines/#" + none)
		assert.Contains(t, p.Text("#brought-none"), "There is no machine in this link.", none)
		assert.Equal(t, []string{"Plover X", "Heron extruder"}, axesShown(p))
	}
}

// A link may be anybody's: it is text, and no command of it is saved.
func TestClubsListIsHostile(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	const bad = `<img src=x onerror="document.title='bad'"><script>document.title='bad'</script>`
	text := url.PathEscape(bad)
	for name, fragment := range map[string]string{
		"HTML":           "v=1&steps=80," + text + "&machine=" + text + "," + text + "&axisname=" + text + "," + text + "&id=" + text + ",k3x9&set=" + text + "," + text,
		"cells":          "v=1&steps=" + strings.Repeat("80,", 9999) + "80&machine=" + strings.Repeat("H,", 9999) + "H&id=" + strings.Repeat("k3x9,", 9999) + "k3x9",
		"stages":         "v=1&steps=80&machine=H&gears=pairs&driving=" + strings.Repeat("12%20", 9999) + "12&driven=" + strings.Repeat("12%20", 9999) + "12",
		"broken escapes": "v=1&steps=80%zz,%&machine=%E0%A4%A,H%&axisname=%C3%28,%00&id=%,%ff",
		"long":           "v=1&steps=80&machine=" + strings.Repeat("H", 3000) + "&id=" + strings.Repeat("i", 900),
		"commands":       "v=1&steps=80,81&machine=Heron,Plover&line=M104%20S300%20M92%20E%7Bvalue%7D,M302%20P1&entry=x,y&linetravel=M500,M501&linerotary=M502",
		"bidi":           "v=1&steps=80&machine=%E2%80%AEnoreH&axisname=a%0Ab&order=-1&constructor=1&__proto__=1",
	} {
		if !full() && name != "HTML" && name != "commands" {
			continue
		}
		t.Run(name, func(t *testing.T) {
			p := s.NewPage(t)
			p.Open("/machines/")
			fillMachines(p, keptHeron)
			p.Open("/machines/#" + fragment)
			n := browser.Eval[int](p, `document.querySelectorAll("#brought li").length`)
			if name != "broken escapes" { // of which it may be that none can be read
				require.Positive(t, n)
			}
			assert.LessOrEqual(t, n, machine.Most)
			p.NoSidewaysScrolling()
			for _, take := range []string{"#take-0", "#take-all"} {
				if has(p, take) {
					press(p, take)
				}
			}
			kept := keptMachines(p)
			assert.Equal(t, keptHeron, kept["k3x9"])
			for _, text := range kept {
				for _, key := range []string{"line", "linetravel", "linerotary", "entry"} {
					assert.Empty(t, link.CellsOf(link.Split(text), key), "no command of a stranger is saved")
				}
			}
			p.Reload()
			assert.False(t, has(p, "main p.problems:not(#brought-none)"), "what is saved can be read again: %v", kept)
			if name == "HTML" {
				assert.Contains(t, p.Text("#machines"), bad[:60])
			}
			// Each page takes it, or leaves it.
			for _, path := range []string{"/measure/", "/convert/"} {
				p.Show(path)
				for i := range browser.Eval[int](p, `Math.min(3, document.querySelectorAll(".chips [id^=machine-]").length)`) {
					browser.Eval[bool](p, `(document.querySelectorAll(".chips [id^=machine-]")[`+strconv.Itoa(i)+`].click(), true)`)
					p.Settle()
					assert.Empty(t, offeredLines(p))
					if path == "/measure/" {
						assert.Equal(t, 1, browser.Eval[int](p, `document.querySelectorAll(".chips [aria-pressed=true]").length`), "the sheet is known as its own")
					}
				}
				p.NoSidewaysScrolling()
			}
			assert.NotEqual(t, "bad", browser.Eval[string](p, `document.title`))
			assert.False(t, has(p, "main img[src=x]"))
			assert.Equal(t, keptHeron, keptMachines(p)["k3x9"])
		})
	}
	// A sheet of a list brings its line as any other link does: to be read and accepted first.
	p := s.NewPage(t)
	p.Open("/machines/#v=1&steps=80&asked=80&mark=105&machine=Heron&axisname=extruder&line=M104%20S300%20M92%20E%7Bvalue%7D")
	p.Click("#brought a.go-on")
	waitForSheet(p, "measure")
	p.FillNth("rest", 0, "28.7")
	p.FillNth("rest", 1, "28.9")
	assert.Empty(t, offeredLines(p))
	p.Click("#name-machine")
	p.Click("#machine-save")
	p.Wait(`!document.getElementById("naming")`)
	for _, text := range keptMachines(p) {
		assert.NotContains(t, text, "line=")
	}
}
