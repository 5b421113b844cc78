package browser

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// A draft is what stands in a form beside the sheet, which is in no address. Until the
// form is done the tab keeps it for the address of that sheet, through a reload and while
// others are shown.

// NoteDraft keeps the texts of the form beside a sheet, in the order of its fields; without
// any it forgets them. web/carry.js writes it too. None has line breaks: they are of fields
// of one line.
func NoteDraft(address string, texts ...string) { noteDraft.call(address, strings.Join(texts, "\n")) }

// DraftOf returns the texts that were noted, n of them.
func DraftOf(address string, n int) (texts []string, ok bool) {
	if !app.IsClient {
		return nil, false
	}
	texts = strings.Split(draftOf.call(address).String(), "\n")
	return texts, len(texts) == n
}
