package main

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// A draft is what stands in a form beside the sheet, which is in no address. Until the
// form is done the tab keeps it for that sheet, through a reload and while others are shown.

// noteDraft keeps the texts of the form beside a sheet, in the order of its fields:
// web/carry.js writes it too. None has line breaks: they are of fields of one line.
func noteDraft(path, fragment string, texts ...string) {
	app.Window().Call("noteDraft", linkTo(path, fragment), strings.Join(texts, "\n"))
}

// dropDraft forgets it.
func dropDraft(path, fragment string) { noteDraft(path, fragment) }

// draftOf returns the texts that were noted, n of them.
func draftOf(path, fragment string, n int) (texts []string, ok bool) {
	if !app.IsClient {
		return nil, false
	}
	texts = strings.Split(app.Window().Call("draftOf", linkTo(path, fragment)).String(), "\n")
	return texts, len(texts) == n
}
