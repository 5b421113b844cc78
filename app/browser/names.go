package browser

import "github.com/maxence-charriere/go-app/v10/pkg/app"

// object is what Go and the page's scripts ask each other by: window.striderule. Beside it
// stand only the names that go-app itself asks for. TestNames holds this table against the
// scripts, and against the trimmed go-app.
const object = "striderule"

// An asked is what Go asks of the page; the scripts set it.
type asked string

const (
	addressBecomes asked = "addressBecomes" // (address) it is about to be written
	addressWaits   asked = "addressWaits"   // the address is behind what was typed
	allowSign      asked = "allowSign"      // within a tap: a sign may come later
	announce       asked = "announce"       // (text) for screen readers, for a moment
	draftOf        asked = "draftOf"        // (address) what was typed beside a sheet
	dropText       asked = "dropText"       // (key) of localStorage
	isKept         asked = "isKept"         // (key) whether there is such a text
	isOwn          asked = "isOwn"          // whether the address was written by this tab
	keepText       asked = "keepText"       // (key, text) into localStorage
	keptTexts      asked = "keptTexts"      // (prefix) all of them
	lastHere       asked = "lastHere"       // what the page last was in this tab
	nameTest       asked = "nameTest"       // (test) the step that shows is one of it
	noteDraft      asked = "noteDraft"      // (address, text) keeps what is typed beside a sheet
	openFolds      asked = "openFolds"      // the ids of those on the page that are open
	openText       asked = "openText"       // (accept) lets the person choose a file
	pushCard       asked = "pushCard"       // (address, test) is a new step of the history
	rest           asked = "rest"           // (then) when what else waits is done
	saveText       asked = "saveText"       // (name, text) as a file
	sign           asked = "sign"           // a move is over
	stayAwake      asked = "stayAwake"      // (on) keeps the screen from going dark
	swap           asked = "swap"           // shows the page that was built
	testHere       asked = "testHere"       // the test that the step which shows is one of
)

// What the trimmed go-app asks for in the same way (scripts/make/trim/added).
const (
	_ asked = "draw" // (draft, values...) changes the page
	_ asked = "node" // (number) an element that a draft made
)

// An offered is what the page asks of Go, which sets it.
type offered string

const (
	fillIn     offered = "fillIn"     // (id, text) what was typed into a field before the start
	leavePage  offered = "leavePage"  // the page is about to be left
	overtaken  offered = "overtaken"  // what the address of the step before should be
	pasteRows  offered = "pasteRows"  // (id, text) a piece of a table
	screenDims offered = "screenDims" // the screen can't be kept awake
	start      offered = "start"      // the program goes on
	takeFile   offered = "takeFile"   // (name, text, error) a file was chosen or dropped
	unfoldAll  offered = "unfoldAll"  // the person is about to look for a word
)

func (a asked) call(args ...any) app.Value { return app.Window().Get(object).Call(string(a), args...) }

func (o offered) set(do func(args []app.Value) any) {
	app.Window().Get(object).Set(string(o), app.FuncOf(func(_ app.Value, args []app.Value) any { return do(args) }))
}
