package frame

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/app/site"
)

// arrival knows how the page that is about to show was reached. go-app neither
// scrolls nor moves the focus when it changes pages; after Back and Forward the
// browser restores the place by itself.
var arrival struct {
	watching  bool
	shownPath string
	back      bool
	pasted    string   // the fragment of a pasted link that is about to open
	mended    []string // in it
}

// Arrived is called by every page when it is navigated to: on another page
// than before it goes to the top and hands the focus to the heading. What the page
// before offered ends.
func Arrived(ctx app.Context) {
	browser.Offer(browser.Offers{})
	if !arrival.watching {
		arrival.watching = true
		browser.ListenForOffers()
		browser.OnStep(func(own bool) { arrival.back = !own })
	}
	path := ctx.Page().URL().Path
	moved := arrival.shownPath != "" && arrival.shownPath != path
	if moved {
		browser.Announce("") // what was said was about the other page
	}
	if moved {
		shown := strings.TrimSuffix(browser.Path(), "index.html")
		for _, p := range all {
			if site.Root()+p.Path == shown {
				browser.SetTitle(p.Title)
			}
		}
	}
	if moved && !arrival.back {
		browser.Focus("title") // which may scroll to it
		browser.ToTheTop()
	}
	arrival.shownPath, arrival.back = path, false
}

// Bring notes what was mended in a pasted link that is about to open.
func Bring(fragment string, mended []string) { arrival.pasted, arrival.mended = fragment, mended }

// MendedIn is what was mended in the pasted link that opens with a fragment. It is asked
// once.
func MendedIn(fragment string) (mended []string) {
	if fragment == arrival.pasted {
		mended = arrival.mended
		arrival.pasted, arrival.mended = "", nil
	}
	return mended
}
