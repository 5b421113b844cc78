// Package flow is the page that trims the flow factor, once the scale is right.
package flow
