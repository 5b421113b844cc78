package frame

import (
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/site"
)

// Here returns the fragment of the address of the page at a path, as it stands there, still
// escaped. There is none while pages are generated, nor while the address is still that of
// another page: the untouched go-app makes a page before it goes there.
func Here(path string) string {
	shown, fragment := browser.Address()
	if !slices.Contains(site.NamesOf(path), strings.TrimPrefix(shown, app.Getenv("GOAPP_ROOT_PREFIX"))) {
		return ""
	}
	return fragment
}
