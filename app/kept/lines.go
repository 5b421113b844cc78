package kept

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/calc/form"
	"striderule/calc/report"
)

// What a person has typed as a line for a machine, or accepted as one, stays accepted in
// this browser, for the field that it stands in: a line for the end of a test may be none
// for its middle. It is one item of localStorage for each, whose key ends with the text.

// accepted are those of this visit: a browser may refuse to keep them.
var accepted = map[string]bool{}

func acceptedKey(l report.TemplateText) string { return lineKey(":line:", l.Key, l.Text) }

// ownKey is of that line.
func ownKey(field string) string { return lineKey(":own:", field, "") }

func lineKey(kind, field, text string) string {
	return "striderule:" + app.Getenv("GOAPP_ROOT_PREFIX") + kind + field + ":" + text
}

// OwnLine returns the line of a field that this device had last, empty if there is none.
func OwnLine(field string) string {
	if app.IsClient {
		if kept, _ := browser.Kept(ownKey(field)); len(kept) == 2 {
			return kept[1]
		}
	}
	return ""
}

// IsAccepted reports whether this text is accepted for its field.
func IsAccepted(l report.TemplateText) bool {
	return accepted[acceptedKey(l)] || browser.IsKept(acceptedKey(l))
}

// AcceptKnown offers what is made of templates of a sheet that were accepted before.
func AcceptKnown(f *form.Form) {
	for _, l := range f.Brought() {
		if IsAccepted(l) {
			f.Accept(l.Key, l.Text)
		}
	}
}

// Accept keeps that it is.
func Accept(l report.TemplateText) {
	accepted[acceptedKey(l)] = true
	browser.Keep(acceptedKey(l), "accepted")
}

// TakeBack forgets that it was.
func TakeBack(l report.TemplateText) {
	delete(accepted, acceptedKey(l))
	browser.Drop(acceptedKey(l))
	if OwnLine(l.Key) == l.Text {
		browser.Drop(ownKey(l.Key))
	}
}

// KeepOwn keeps a line that was typed here: it will come back with the page's own address.
func KeepOwn(l report.TemplateText) {
	if !IsAccepted(l) {
		Accept(l)
	}
	if OwnLine(l.Key) != l.Text {
		browser.Keep(ownKey(l.Key), l.Text)
	}
}
