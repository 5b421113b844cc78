// Package measure is what readings say about an axis.
//
//	Series      lengths of repeated runs: mean and spread
//	Correction  commanded over measured: the factor that a setting needs
//
// Lengths are in mm; of a rotary axis they are angles in degrees.
package measure
