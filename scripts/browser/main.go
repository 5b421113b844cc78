package browser

import (
	"fmt"
	"os"
	"sync"
	"testing"
)

var (
	shared    engine
	begin     sync.Once
	launchErr error
)

// browser returns the one browser process that the tests of a package share.
// Its pages share nothing: each has storage and caches of its own.
func browser() (engine, error) {
	begin.Do(func() { shared, launchErr = launch() })
	return shared, launchErr
}

// Main runs a package's tests and ends the browser after them:
//
//	func TestMain(m *testing.M) { browser.Main(m) }
func Main(m *testing.M) {
	code := 1
	defer func() {
		if r := recover(); r != nil {
			fmt.Fprintln(os.Stderr, r)
		}
		if shared != nil {
			shared.end()
		}
		os.Exit(code)
	}()
	code = m.Run()
}
