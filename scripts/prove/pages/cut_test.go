package pages

import (
	"net/http"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// The network goes while a new version is being fetched: the one before stays whole,
// offline too, and the next visit with a network fetches the new one.
func TestNetworkCutDuringUpdate(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Allow("Failed to load resource")
	p.Allow("An unknown error occurred when fetching the script")
	p.Open("/measure/#" + heron)
	p.WaitOffline()
	p.Reload()
	first := versionOf(p)
	before := browser.Eval[[]string](p, `caches.keys()`)

	s.Replace(release(t, browser.Dist(t), "dddddddddddd"))
	var asked, cut atomic.Int32
	s.Intercept(func(_ http.ResponseWriter, r *http.Request) bool {
		if strings.HasSuffix(r.URL.Path, "/sw.js") && asked.Load() == 0 {
			return false
		}
		if asked.Add(1) <= 6 {
			return false
		}
		cut.Add(1)
		panic(http.ErrAbortHandler)
	})
	browser.Eval[bool](p, `navigator.serviceWorker.getRegistration().then((r) => new Promise((done) => {
		r.addEventListener("updatefound", () => {
			const worker = r.installing;
			worker.addEventListener("statechange", () => worker.state === "redundant" && done(true));
		});
		r.update();
	}))`)
	require.Positive(t, cut.Load())
	assert.Equal(t, before, browser.Eval[[]string](p, `caches.keys()`))
	assert.Empty(t, browser.Eval[string](p, newerLine))

	p.FillNth("rest", 1, "31.7")
	p.Reload() // still without a network
	assert.Equal(t, first, versionOf(p))
	assert.Equal(t, "31.7", browser.Eval[string](p, `document.getElementsByName("rest")[1].value`))
	p.Open("/swap/")
	assert.Equal(t, first, versionOf(p))

	s.Intercept(nil)
	p.Reload() // a visit with one
	p.Wait(newerLine)
	p.Reload()
	assert.Equal(t, "dddddddddddd", versionOf(p))
}
