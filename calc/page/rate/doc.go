// Package rate is the page of pulse rates: what speeds ask of a controller, and its limits.
package rate
