// Package rate is the page of step rates: what speeds ask of a controller, and its limits.
package rate
