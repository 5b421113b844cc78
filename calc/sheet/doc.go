// Package sheet says what a calculator is, whatever it is about: a Page declares a Sheet, a
// Sheet its Fields, and a Field the values that a text becomes.
package sheet
