package main

import (
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// here returns the fragment of the address of the page at a path, as it stands there, still
// escaped. There is none while pages are generated, nor while the address is still that of
// another page: the untouched go-app makes a page before it goes there.
func here(path string) string {
	if !app.IsClient {
		return ""
	}
	url := app.Window().URL()
	if !slices.Contains(namesOf(path), strings.TrimPrefix(url.Path, app.Getenv("GOAPP_ROOT_PREFIX"))) {
		return ""
	}
	return url.EscapedFragment()
}

// writeFragment rewrites the page's address in place, without a step in the
// history: Back goes to the previous page, not to the previous key.
func writeFragment(fragment string) {
	// A browser may refuse (some allow 100 rewrites in half a minute); the
	// address then lags behind, which the next one mends.
	defer func() { _ = recover() }()
	address := app.Window().Get("location").Get("pathname").String()
	if fragment != "" {
		address += "#" + fragment
	}
	app.Window().Call("addressBecomes", address)
	app.Window().Get("history").Call("replaceState", app.Window().Get("history").Get("state"), "", address)
	// go-app remembers the last address and drops a visit to the same one. It
	// does not see replaceState, so without this `#a`, edit, `#a` again would
	// be dropped.
	arrival.ours = true
	app.Window().Call("dispatchEvent", app.Window().Get("PopStateEvent").New("popstate"))
	arrival.ours = false
}

// shareURL is a link to the page as anybody can open it.
func shareURL(path, fragment string) string {
	if !app.IsClient {
		return ""
	}
	return app.Window().Get("location").Get("origin").String() + linkTo(path, fragment)
}
