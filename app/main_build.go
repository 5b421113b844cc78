//go:build !wasm

package main

import (
	"striderule/app/calculator"
	"striderule/app/pages"
)

// main writes the pages of the site.
func main() { pages.Main(sitePages(), calculator.WriteLook) }
