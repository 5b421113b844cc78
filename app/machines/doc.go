// Package machines is the page of the machines: the axes that this device keeps, or that a link
// brought.
package machines
