// Package trial has what belongs to a test of an axis: the runs as they were read, the moves
// to send, the drawing of it, the words of its verdict and what they rest on.
package trial
