// Package run leads through the test of a sheet of Calibrate, one card at a time. It holds nothing
// itself: what is typed is in the form, and a card is a place in it, so that a page which is lost goes
// on from its address.
package run
