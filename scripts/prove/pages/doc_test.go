// Package pages holds the built site to what a person sees of it, in a real browser: see
// package browser, and its README.
package pages
