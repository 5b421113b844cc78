// Package whose says whose axis a calculator's sheet is about: the machines of this device fill a
// sheet in with one tap, a sheet becomes one of them, and what was set goes back to its machine.
package whose
