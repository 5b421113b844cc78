//go:build !wasm

package main

// The flags of the generator.
const (
	outFlag     = "`folder` to write the pages into"
	addressFlag = "`address` that the site will have"
	lookFlag    = "`file` to write a page with every piece into"
)
