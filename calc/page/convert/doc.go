// Package convert is the page that tells the same fact in the other conventions.
package convert
