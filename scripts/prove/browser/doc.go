// Package browser drives the built site for tests in Chromium, Firefox or WebKit, as a person
// uses it: scripts/prove/pages has the tests.
//
//	site := browser.NewSite(t)            // dist/ served at /tools/cal/
//	p := site.NewPage(t)                  // a phone of its own: 360 x 740, no cookies, no caches
//	p.Open("/measure/#v=1")               // waits until the calculator has started
//	p.Fill("ask", "80,5")                 // types, as with the keyboard, into the field of that name
//	assert.InDelta(t, 80.5, p.Value("out-ask"), 1e-9)
//	p.Click("#more > summary"); p.Press(kb.Tab)
//	p.Unfold()                            // what is folded is not on the page; Fill, Value and others open what they need
//	p.Wait(`location.hash.includes("ask")`)
//	site.Stop()                           // from here on, offline
//	p.Reload()
//
// A page fails its test when anything was written to the console as an error or
// a warning, an exception was thrown, the page's policy was violated, or anything
// was asked for outside the site's folder. Allow names what a test expects.
//
// STRIDERULE_BROWSER chooses the browser, as Name says: Chromium is driven by its own
// protocol, Firefox by WebDriver BiDi, WebKit by WebDriver. All three see the same of
// what a page must not do; TestWhatAPageMustNotDoIsSeen holds that. WebKit tells
// nothing by itself: a proxy watches what it asks for, and puts a script that watches
// the rest into each page. What a worker writes to the console is seen in none. A test
// of what a browser cannot be told to do skips there, and says why.
//
// The tests need a built site: run scripts/build first. scripts/test does.
package browser
