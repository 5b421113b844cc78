package browser

import (
	"testing"

	"striderule/calc/logbook"

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
	alongside(t)
	for name, script := range refusals {
		t.Run(name, func(t *testing.T) {
			s := NewSite(t)
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
				assert.Contains(t, p.Text("#keep-refused"), "Not kept. This browser does not let the site keep anything")
			} else {
				assert.Equal(t, "Kept. Open the log.", p.Text("#kept"))
			}
		})
	}
}

// Some private windows have a storage without any room in it.
func TestStorageWithoutRoom(t *testing.T) {
	alongside(t)
	s := NewSite(t)
	p := s.NewPage(t)
	p.Before(saveTexts + `; Storage.prototype.setItem = () => { throw new DOMException("no room", "QuotaExceededError"); };`)
	p.Open("/log/")
	assert.Equal(t, "Nothing is kept yet.", p.Text("#log-empty"))
	assert.Contains(t, p.Text("main"), "a private window that was closed does not have it")
	choose(p, "log.json", logbook.WriteFile(logbook.Example()))
	assert.Contains(t, p.Text("#import-report"), "12 entries were not kept. The browser gives this site no room to keep anything, as some private windows do. The file still has all of it.")

	p.Open("/measure/#" + heron)
	press(p, "#keep")
	p.Fill("keep-machine", "Heron")
	press(p, "#keep-do")
	assert.Equal(t, "Not kept. The browser gives this site no room to keep anything, as some private windows do. Save it as a file: the log's page takes it in later.Save it as a file", p.Text("#keep-refused"))
	press(p, "#keep-file")
	p.Wait(`saved.length === 1`)
	require.Len(t, logbook.ReadFile(Eval[string](p, `saved[0]`)).Entries, 1)
}
