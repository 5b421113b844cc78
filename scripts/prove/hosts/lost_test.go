package hosts

import (
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// Where a host sends 404.html, whoever comes by a wrong address gets on from there:
// the page finds the site, at whatever depth it shows.
func TestLost(t *testing.T) {
	fullOnly(t)
	for _, c := range []struct {
		name string
		host host
	}{
		{"a host of pages", pagesLike(false)},
		{"apache", apache(`ErrorDocument 404 "/FOLDER404.html"`)},
		{"nginx", nginx("", `error_page 404 "/FOLDER404.html";`)},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, folder := range folders {
				t.Run("/"+folder, func(t *testing.T) {
					address, _ := c.host.begin(t, folder, lay(t))
					p := browser.NewPage(t, address)
					p.Allow("404")
					for _, path := range []string{"mesure", "mesure/", "measure/more/", "log/a/b/c/d.html", "no such/spa%20ce/%C3%A4/", "web/missing.js"} {
						require.Equal(t, http.StatusNotFound, get(t, address+path, "").StatusCode, "else the case is not what it says")
						p.Load(path + entries)
						p.Wait(`!document.getElementById("pages").hidden`)
						assert.Equal(t, "There is no page at this address", p.Text("h1"), path)
						assert.Contains(t, p.Text("#where"), "The entries in the link are still there", path)
						p.Wait(`document.styleSheets.length === 1 && document.styleSheets[0].cssRules.length > 100`)
						links := browser.Eval[map[string]string](p, `Object.fromEntries([...document.querySelectorAll("#pages a")].map((a) => [a.dataset.path, a.href]))`)
						for _, page := range browser.Pages(t, browser.Dist(t)) {
							want := address + page[1:]
							if page != "/" {
								want += entries
							}
							assert.Equal(t, want, links[page[1:]], path)
						}
						assert.Len(t, links, len(browser.Pages(t, browser.Dist(t))))
					}
					p.Click(`#pages a[data-path="measure/"]`)
					p.WaitReady()
					assert.InEpsilon(t, found, p.Value("out-steps"), 1e-9, "the entries go along")

					p.Load("measure/%23" + entries[1:]) // a “#” that was encoded
					p.WaitReady()
					assert.InEpsilon(t, found, p.Value("out-steps"), 1e-9)

					if folder == "" { // two slashes are where another host's name begins, to a browser
						p.Load("//elsewhere.example/%23" + entries[1:])
						p.Wait(`!document.getElementById("pages").hidden`)
						assert.Equal(t, address, browser.Eval[string](p, `location.origin + "/"`))
					}

					p.Load("mesure/")
					p.Wait(`!document.getElementById("pages").hidden`)
					assert.Contains(t, p.Text("#where"), "one of these")
					p.Click(`#pages a[data-path=""]`)
					p.WaitReady()
					p.NoSidewaysScrolling()
				})
			}
		})
	}
}
