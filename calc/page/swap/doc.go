// Package swap is the page that tells which settings a change of parts moves.
package swap
