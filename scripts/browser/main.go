package browser

import (
	"context"
	"fmt"
	"os"
	"sync"
	"testing"
)

var (
	shared    context.Context
	endShared = func() {}
	launch    sync.Once
	launchErr error
)

// browser returns the one browser process that the tests of a package share.
// Its pages share nothing: each has a context of its own.
func browser() (context.Context, error) {
	launch.Do(func() { shared, endShared, launchErr = Launch(context.Background()) })
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
		endShared()
		os.Exit(code)
	}()
	code = m.Run()
}
