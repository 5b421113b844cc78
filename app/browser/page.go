package browser

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// Element returns the element of an ID; ok is false if it is not there.
func Element(id string) (e app.Value, ok bool) {
	e = app.Window().GetElementByID(id)
	return e, e.Truthy()
}

// Has reports whether there is an element of an ID.
func Has(id string) bool {
	_, ok := Element(id)
	return ok
}

// Focus moves the focus to an element, if it is there.
func Focus(id string) {
	if e, ok := Element(id); ok {
		e.Call("focus")
	}
}

// Announce says something for a moment.
func Announce(text string) { announce.call(text) }

// SetTitle sets the document's title.
func SetTitle(title string) { app.Window().Get("document").Set("title", title) }

// ToTheTop scrolls there.
func ToTheTop() { app.Window().Call("scrollTo", 0, 0) }

// WidthOf is how wide an element is, in CSS pixels.
func WidthOf(id string) float64 {
	e, _ := Element(id)
	return e.Get("clientWidth").Float()
}

// Density is how many pixels of the screen a CSS pixel is wide.
func Density() float64 { return app.Window().Get("devicePixelRatio").Float() }

// Listen calls do at each event of the window, until it is told to stop.
func Listen(event string, do func(event app.Value)) (stop func()) {
	listener := app.FuncOf(func(_ app.Value, events []app.Value) any {
		do(events[0])
		return nil
	})
	app.Window().Call("addEventListener", event, listener)
	return func() {
		app.Window().Call("removeEventListener", event, listener)
		listener.Release()
	}
}

// OpenFolds are the IDs of the folds that are open on the page.
func OpenFolds() []string { return strings.Fields(openFolds.call().String()) }

// OnStart has the page call do when the program is to go on.
func OnStart(do func()) {
	start.set(func([]app.Value) any {
		do()
		return nil
	})
}

// Swap has the page that was built shown; false if not yet, as a word is half composed.
func Swap() bool { return swap.call().Bool() }
