package browser

import (
	"fmt"
	"os"
	"strings"
	"sync"
	"testing"
)

// engines that run, those of them that no test has at the moment, and whose test has which.
var running struct {
	sync.Mutex
	all, free []engine
	of        map[string]engine // by the name of the test, without those in it
}

// take returns a browser that no test has.
func take() (engine, error) {
	running.Lock()
	defer running.Unlock()
	if n := len(running.free); n > 0 {
		e := running.free[n-1]
		running.free = running.free[:n-1]
		return e, nil
	}
	e, err := launch()
	if err == nil {
		running.all = append(running.all, e)
	}
	return e, err
}

// engineOf returns the browser that a test has to itself until it ends. Its pages share
// nothing but that: each is of a person of its own.
func engineOf(t testing.TB) (engine, error) {
	name, _, _ := strings.Cut(t.Name(), "/")
	running.Lock()
	e := running.of[name]
	running.Unlock()
	if e != nil {
		return e, nil
	}
	e, err := take()
	if err != nil {
		return nil, err
	}
	running.Lock()
	defer running.Unlock()
	if running.of == nil {
		running.of = map[string]engine{}
	}
	running.of[name] = e
	return e, nil
}

// giveBack ends that a test has a browser. Who forgets it has it to the end of all tests.
func giveBack(t testing.TB) {
	running.Lock()
	defer running.Unlock()
	if e := running.of[t.Name()]; e != nil {
		delete(running.of, t.Name())
		running.free = append(running.free, e)
	}
}

// Alongside lets a test run beside others, as many as go test -parallel says. Firefox and
// WebKit are one program for all.
func Alongside(t *testing.T) {
	t.Helper()
	t.Cleanup(func() { giveBack(t) })
	if Name() == "chromium" {
		t.Parallel()
	}
}

// Main runs a package's tests and ends the browsers after them:
//
//	func TestMain(m *testing.M) { browser.Main(m) }
func Main(m *testing.M) {
	code := 1
	defer func() {
		if r := recover(); r != nil {
			fmt.Fprintln(os.Stderr, r)
		}
		for _, e := range running.all {
			e.end()
		}
		os.Exit(code)
	}()
	code = m.Run()
}
