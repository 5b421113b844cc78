// Package browser is all that the program asks of the browser and of the page's own
// scripts (web/*.js): address and history, storage, files, time, focus. No other package
// of the program says app.Window(). While pages are generated there is no browser: what
// answers then says so.
package browser
