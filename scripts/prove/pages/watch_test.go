package pages

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// Whatever browser is tested, what a page must not do would fail the test.
func TestWhatAPageMustNotDoIsSeen(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/method/")
	browser.Eval[bool](p, `(() => {
		console.error("an error of the console");
		console.warn("a warning of the console");
		console.assert(false, "an assertion of the console");
		setTimeout(() => { throw new Error("an error that nobody catches"); });
		Promise.reject(new Error("a promise that nobody catches"));
		new Image().src = "https://example.org/picture.png";
		document.body.append(Object.assign(document.createElement("script"), {textContent: "window.injected = true"}));
		fetch("missing.txt");
		fetch("/outside.txt");
		return true;
	})()`)
	for _, what := range []string{
		"an error of the console", "a warning of the console", "an assertion of the console",
		"an error that nobody catches", "a promise that nobody catches",
		"https://example.org/picture.png", "inline", "missing.txt", s.Origin() + "/outside.txt",
	} {
		var problems string
		for end := time.Now().Add(10 * time.Second); time.Now().Before(end) && !strings.Contains(problems, what); time.Sleep(50 * time.Millisecond) {
			problems = strings.Join(p.Problems(), "\n")
		}
		assert.Contains(t, problems, what)
	}
	assert.False(t, browser.Eval[bool](p, `"injected" in window`), "the page's policy stands")
	p.Allow("") // all of it was on purpose
}
