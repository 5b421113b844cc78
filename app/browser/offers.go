package browser

import "github.com/maxence-charriere/go-app/v10/pkg/app"

// Offers is what a page takes from outside of its fields. web/page.js hands it
// over: some of it is there only while the browser's own event lasts, and go-app
// tells of events afterwards.
type Offers struct {
	File  func(name, text, failed string) // chosen, or dropped on the page
	Paste func(id, text string)           // a piece of a table, into a row's field
	Fill  func(id, text string) bool      // typed before the start, into a field that is not in sight now
	Find  func()                          // the person is about to look for a word
	Print func()                          // the last moment before the page is printed
	Leave func()                          // the last moment before it is left
	Dim   func()                          // the screen can't be kept awake
	// Overtaken is asked when the history has gone on to another step: what the one
	// before should have in its address, if that has not followed.
	Overtaken func() (fragment string, late bool)
}

// offers are those of the page that shows.
var offers Offers

// Offer makes these the offers of the page that shows.
func Offer(of Offers) { offers = of }

// ListenForOffers tells the page where to hand things over.
func ListenForOffers() {
	takeFile.set(func(file []app.Value) any {
		if offers.File == nil {
			return false
		}
		offers.File(file[0].String(), file[1].String(), file[2].String())
		return true
	})
	pasteRows.set(func(piece []app.Value) any {
		if offers.Paste != nil {
			offers.Paste(piece[0].String(), piece[1].String())
		}
		return nil
	})
	fillIn.set(func(typed []app.Value) any {
		return offers.Fill != nil && offers.Fill(typed[0].String(), typed[1].String())
	})
	unfoldAll.set(func([]app.Value) any {
		if offers.Find != nil {
			offers.Find()
		}
		return nil
	})
	leavePage.set(func([]app.Value) any {
		if offers.Leave != nil {
			offers.Leave()
		}
		return nil
	})
	screenDims.set(func([]app.Value) any {
		if offers.Dim != nil {
			offers.Dim()
		}
		return nil
	})
	overtaken.set(func([]app.Value) any {
		if offers.Overtaken != nil {
			if fragment, late := offers.Overtaken(); late {
				return fragment
			}
		}
		return nil
	})
	Listen("beforeprint", func(app.Value) {
		if offers.Print != nil {
			offers.Print()
		}
	})
}

// ChooseFile lets the person choose a file of a sheet or of the log, which comes as
// Offers.File.
func ChooseFile() { openText.call(".json,application/json") }

// SaveFile saves a text as a file. The page says that it did.
func SaveFile(name, text string) { saveText.call(name, text) }
