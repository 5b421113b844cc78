// Package flow is the page that tunes the flow, once the extruder is calibrated.
package flow
