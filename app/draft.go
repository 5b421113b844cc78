package main

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// A draft is what stands in a form beside the sheet, which is in no address. Until the
// form is done the tab keeps it, through a reload and while other pages are shown.

// noteDraft keeps the texts of a page's form for as long as the page has this fragment, in
// the order of the fields: web/carry.js writes it too. None has line breaks: they are of
// fields of one line.
func noteDraft(path, fragment string, texts ...string) {
	app.Window().Call("noteDraft", linkTo(path, ""), strings.Join(append([]string{fragment}, texts...), "\n"))
}

// dropDraft forgets a page's draft.
func dropDraft(path string) { app.Window().Call("noteDraft", linkTo(path, ""), "") }

// draftOf returns the texts that were noted, n of them, if the page had this fragment.
func draftOf(path, fragment string, n int) (texts []string, ok bool) {
	if !app.IsClient {
		return nil, false
	}
	lines := strings.Split(app.Window().Call("draftOf", linkTo(path, "")).String(), "\n")
	if len(lines) != 1+n || lines[0] != fragment {
		return nil, false
	}
	return lines[1:], true
}
