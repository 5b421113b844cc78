package main

import "github.com/maxence-charriere/go-app/v10/pkg/app"

// What a person has typed as a line for a machine, or accepted as one, stays accepted in
// this browser: one item of localStorage for each text, whose key ends with it.

// accepted are those of this visit: a browser may refuse to keep them.
var accepted = map[string]bool{}

func acceptedKey(text string) string {
	return "striderule:" + app.Getenv("GOAPP_ROOT_PREFIX") + ":line:" + text
}

func isAccepted(text string) bool {
	return accepted[text] || app.Window().Call("isKept", acceptedKey(text)).Truthy()
}

func accept(text string) {
	accepted[text] = true
	app.Window().Call("keepText", acceptedKey(text), "accepted")
}

// acceptKnown offers what is made of templates that were accepted before.
func (c *calculator) acceptKnown() {
	for _, text := range c.form.Brought() {
		if isAccepted(text) {
			c.form.Accept(text)
		}
	}
}

// keepOwn keeps what was typed here, which will come back with the page's own address.
func (c *calculator) keepOwn() {
	for _, text := range c.form.Own() {
		if !isAccepted(text) {
			accept(text)
		}
	}
}
