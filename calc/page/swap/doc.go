// Package swap is the page that tells which numbers a change of parts moves.
package swap
