package pages

import (
	"testing"

	"striderule/calc/logbook"
	"striderule/scripts/prove/browser"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const everything = "all of it"

// What private windows and strict settings refuse, by browser.
var refusals = map[string]string{
	"no worker is registered":   `if (window.ServiceWorkerContainer) ServiceWorkerContainer.prototype.register = () => Promise.reject(new DOMException("The operation is insecure.", "SecurityError"));`,
	"there are no workers":      `delete Navigator.prototype.serviceWorker;`,
	"asking for workers throws": `Object.defineProperty(Navigator.prototype, "serviceWorker", { get() { throw new DOMException("denied", "SecurityError"); } });`,
	everything: `for (const [of, name] of [[window, "localStorage"], [window, "sessionStorage"], [window, "caches"], [window, "indexedDB"], [Navigator.prototype, "serviceWorker"]])
		Object.defineProperty(of, name, { get() { throw new DOMException("denied", "SecurityError"); } });`,
}

func TestPrivateWindow(t *testing.T) {
	browser.Alongside(t)
	for name, script := range refusals {
		t.Run(name, func(t *testing.T) {
			s := browser.NewSite(t)
			if name == everything {
				s.Trimmed(t, "asks for the storage itself, and ends without")
			}
			p := s.NewPage(t)
			p.Allow("offline use is off")
			p.Before(script)
			p.Open("/measure/#" + heron)
			p.FillNth("rest", 1, "31.7")
			p.Wait(`location.hash.includes("31.7")`)
			p.Reload()
			assert.Equal(t, "28.7", p.Field("rest"))
			press(p, "#keep")
			p.Fill("keep-machine", "Heron")
			press(p, "#keep-do")
			if name == everything {
				assert.Contains(t, p.Text("#keep-refused"), "Not saved. This browser doesn't let the site store anything")
			} else {
				assert.Equal(t, "Saved. Open the log.", p.Text("#kept"))
			}
		})
	}
}

// Some private windows have a storage without any room in it.
func TestStorageWithoutRoom(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Before(saveTexts + `; Storage.prototype.setItem = () => { throw new DOMException("no room", "QuotaExceededError"); };`)
	p.Open("/log/")
	assert.Equal(t, "Nothing saved yet.", p.Text("#log-empty"))
	assert.Contains(t, p.Text("main"), "closing a private window deletes it")
	choose(p, "log.json", logbook.WriteFile(logbook.Example()))
	assert.Contains(t, p.Text("#import-report"), "12 entries weren't saved. This browser won't let the site store anything (some private windows don't). The file still has all of it.")

	p.Open("/measure/#" + heron)
	press(p, "#keep")
	p.Fill("keep-machine", "Heron")
	press(p, "#keep-do")
	assert.Equal(t, "Not saved. This browser won't let the site store anything (some private windows don't). Save it as a file, and import it on the Log page later.Save it as a file", p.Text("#keep-refused"))
	press(p, "#keep-file")
	p.Wait(`saved.length === 1`)
	require.Len(t, logbook.ReadFile(browser.Eval[string](p, `saved[0]`)).Entries, 1)
}
