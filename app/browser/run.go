package browser

import (
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// StayAwake keeps the screen from going dark, or gives that back. Where it can't be had, Offers.Dim
// hears of it.
func StayAwake(on bool) { stayAwake.call(on) }

// AllowSign readies the sign for the end of a move, within a tap; Sign gives it.
func AllowSign() { allowSign.call() }

func Sign() { sign.call() }

// PushCard makes a fragment the address of a new step of the history, one of a test.
func PushCard(fragment, test string) {
	address := Path() + "#" + fragment
	addressBecomes.call(address)
	pushCard.call(address, test)
	tellOfStep()
}

// NameTest makes the step that shows one of a test; TestHere is the test that it is one of.
func NameTest(test string) { nameTest.call(test) }

func TestHere() string {
	if !app.IsClient {
		return ""
	}
	return testHere.call().String()
}

// IsEnter reports whether a key is the one that goes on.
func IsEnter(key app.Event) bool { return key.Get("key").String() == "Enter" }

// GoBack goes to the step before.
func GoBack() { app.Window().Get("history").Call("back") }

// DecimalMark is the one of the person's language.
func DecimalMark() string {
	if strings.Contains(app.Window().Get("Number").New(1.5).Call("toLocaleString").String(), ",") {
		return ","
	}
	return "."
}

// Milliseconds is the time by the device's clock, which goes on while the device sleeps, since 1970.
func Milliseconds() float64 {
	if !app.IsClient {
		return 0
	}
	return app.Window().Get("Date").Call("now").Float()
}
