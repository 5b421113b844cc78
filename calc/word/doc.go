// Package word writes sentences: templates and their parts, what counts one or many,
// quotation marks, one valid line.
package word
