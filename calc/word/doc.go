// Package word writes the small change of sentences: plurals, quotation marks, first letters,
// one valid line.
package word
