package kept

import (
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
)

// A Run is the test that is being made on this device: the address of its card, and when the move of
// that began, which is in no link. It is there until the test is over, whatever becomes of the tab.
type Run struct {
	Fragment string
	Began    float64 // by the device's clock, in ms; 0 where nothing moves
	Sent     string  // the cards whose lines were sent, each behind a comma
}

// IsBegun reports whether there is one, beyond its first question.
func (r Run) IsBegun() bool { return strings.Contains(r.Fragment, "&") }

func runKey() string { return "striderule:" + app.Getenv("GOAPP_ROOT_PREFIX") + ":run" }

// ReadRun is the run that stands on this device; without a fragment if there is none.
func ReadRun() (r Run) {
	if !app.IsClient {
		return r
	}
	texts, _ := browser.Kept(runKey())
	for i := 0; i+1 < len(texts); i += 2 {
		began, rest, _ := strings.Cut(texts[i+1], " ")
		if sent, fragment, ok := strings.Cut(rest, " "); ok && texts[i] == "" {
			r.Sent, r.Fragment = sent, fragment
			if r.Began, _ = strconv.ParseFloat(began, 64); !(r.Began > 0) {
				r.Began = 0
			}
		}
	}
	return r
}

// Keep keeps it; one without a fragment is over. Where the browser refuses, the address has all of
// it but the clock.
func (r Run) Keep() {
	if r.Fragment == "" {
		browser.Drop(runKey())
		return
	}
	browser.Keep(runKey(), strconv.FormatFloat(r.Began, 'f', -1, 64)+" "+r.Sent+" "+r.Fragment)
}

func signKey() string { return "striderule:" + app.Getenv("GOAPP_ROOT_PREFIX") + ":sign" }

// IsSignOn reports whether the person wants a sign when a move is over; KeepSign notes it.
func IsSignOn() bool { return app.IsClient && browser.IsKept(signKey()) }

func KeepSign(on bool) {
	if on {
		browser.Keep(signKey(), "on")
	} else {
		browser.Drop(signKey())
	}
}
