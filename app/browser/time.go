package browser

import (
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
)

// After does something some milliseconds later, by the browser's timer: Go's own
// come with a calendar and settings of the toolchain, 50 KB compressed. While pages
// are generated nothing comes later.
func After(milliseconds int, do func()) {
	app.Window().Call("setTimeout", once(do), milliseconds)
}

// NextTurn does something when the browser has seen to what else waits.
func NextTurn(do func()) { rest.call(once(do)) }

// once is a function for the browser to call one time.
func once(do func()) app.Func {
	var called app.Func
	called = app.FuncOf(func(app.Value, []app.Value) any {
		called.Release()
		do()
		return nil
	})
	return called
}

// Clock is the time since the page was opened, in ms.
func Clock() float64 { return app.Window().Get("performance").Call("now").Float() }

// Today is the day by the device's clock: 2026-11-29.
func Today() string { return Now()[:len("2026-11-29")] }

// Now is the time by the device's clock, as a field for date and time has it. The
// browser is asked: Go's own calendar and time zones weigh as much as a page.
func Now() string {
	clock := app.Window().Get("Date").New()
	part := func(name string, more, digits int) string {
		text := strconv.Itoa(clock.Call("get"+name).Int() + more)
		return strings.Repeat("0", max(0, digits-len(text))) + text
	}
	return part("FullYear", 0, 4) + "-" + part("Month", 1, 2) + "-" + part("Date", 0, 2) + "T" + part("Hours", 0, 2) + ":" + part("Minutes", 0, 2)
}
