// Package pages writes the site's pages as they are before the program starts, the page for
// addresses at which there is none, and the preview pictures. It runs when the site is built.
package pages
