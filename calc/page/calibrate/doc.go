// Package calibrate is the page that works a setting out from a measurement; its slug is
// measure.
package calibrate
