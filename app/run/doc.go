// Package run is Run the test: the sheet of Calibrate at the machine, one card at a time.
package run
