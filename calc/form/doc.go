// Package form holds a sheet's text as typed, the suite's only mutable state: what is wrong
// with it, what came with a link, what was changed since, and the text for a post.
package form
