// Package convert is the page that tells the same setting in the other conventions.
package convert
