//go:build !wasm

package main

import "striderule/app/pages"

// main writes the pages of the site.
func main() { pages.Main(sitePages(), writeLook) }
