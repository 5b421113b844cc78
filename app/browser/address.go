package browser

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// Address is the path of the address that shows, from the host's root and decoded, and its
// fragment, still escaped. There is none while pages are generated.
func Address() (path, fragment string) {
	if !app.IsClient {
		return "", ""
	}
	url := app.Window().URL()
	return url.Path, url.EscapedFragment()
}

// Path is the path of the address that shows, as it stands there.
func Path() string { return location("pathname") }

// Origin is what stands before it: the scheme and the host.
func Origin() string { return location("origin") }

func location(part string) string {
	if !app.IsClient {
		return ""
	}
	return app.Window().Get("location").Get(part).String()
}

// LoadAgain loads the address that shows as a new document.
func LoadAgain() { app.Window().Get("location").Call("reload") }

// WriteFragment rewrites the page's address in place, without a step in the
// history: Back goes to the previous page, not to the previous key.
func WriteFragment(fragment string) {
	// A browser may refuse (some allow 100 rewrites in half a minute); the
	// address then lags behind, which the next one mends.
	defer func() { _ = recover() }()
	address := Path()
	if fragment != "" {
		address += "#" + fragment
	}
	addressBecomes.call(address)
	history := app.Window().Get("history")
	history.Call("replaceState", history.Get("state"), "", address)
	tellOfStep()
}

// tellOfStep tells go-app of an address that was written. It remembers the last one and drops a
// visit to the same, so that without this `#a`, edit, `#a` again would be dropped.
func tellOfStep() {
	writing = true
	app.Window().Call("dispatchEvent", app.Window().Get("PopStateEvent").New("popstate"))
	writing = false
}

// writing is set while a step in the history is one that we send ourselves.
var writing bool

// OnStep calls do when the browser goes to another step of its history; own is said of
// one that WriteFragment sends.
func OnStep(do func(own bool)) {
	Listen("popstate", func(app.Value) { do(writing) })
}

// IsOwn reports whether the address that shows was written by this tab, and so is nobody's
// link.
func IsOwn() bool { return app.IsClient && isOwn.call().Truthy() }

// LastHere returns the fragment that the page which shows last had in this tab, empty if there
// is none.
func LastHere() string {
	if !app.IsClient {
		return ""
	}
	return strings.TrimPrefix(lastHere.call().String(), "#")
}

// AddressWaits says that the address is behind what was typed.
func AddressWaits() { addressWaits.call() }
