package main

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/calc/report"
)

// What a person has typed as a line for a machine, or accepted as one, stays accepted in
// this browser, for the field that it stands in: a line for the end of a test may be none
// for its middle. It is one item of localStorage for each, whose key ends with the text.

// accepted are those of this visit: a browser may refuse to keep them.
var accepted = map[string]bool{}

func acceptedKey(l report.TemplateText) string {
	return "striderule:" + app.Getenv("GOAPP_ROOT_PREFIX") + ":line:" + l.Key + ":" + l.Text
}

func isAccepted(l report.TemplateText) bool {
	return accepted[acceptedKey(l)] || browser.IsKept(acceptedKey(l))
}

func accept(l report.TemplateText) {
	accepted[acceptedKey(l)] = true
	browser.Keep(acceptedKey(l), "accepted")
}

// acceptKnown offers what is made of templates that were accepted before.
func (c *calculator) acceptKnown() {
	for _, l := range c.form.Brought() {
		if isAccepted(l) {
			c.form.Accept(l.Key, l.Text)
		}
	}
}

// keepOwn keeps what was typed here, once that is done: it will come back with the page's
// own address.
func (c *calculator) keepOwn() {
	for _, l := range c.form.Own() {
		if !isAccepted(l) {
			accept(l)
		}
	}
}
