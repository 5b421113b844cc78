//go:build !wasm

package pages

import (
	"flag"
	"fmt"
	"os"

	"striderule/app/site"
)

// Main is the generator: it writes every page of the site, as it is before the program starts, to
// its folder's index.html, and its preview picture; and the page for addresses at which there is
// none:
//
//	go run ./app -out DIR [-address https://club.example/tools/striderule/]
//
// With the address that the site will have, previews are named by whole addresses.
//
// or, by look, to be looked at while working on the style sheet, every piece in every state into
// one file:
//
//	go run ./app -look FILE
func Main(all []site.Page, look func(file string) error) {
	out := flag.String("out", "", outFlag)
	address := flag.String("address", "", addressFlag)
	file := flag.String("look", "", lookFlag)
	flag.Parse()
	if *file != "" {
		if err := look(*file); err != nil {
			fmt.Fprintln(os.Stderr, "look:", err)
			os.Exit(1)
		}
		return
	}
	if *out == "" || flag.NArg() > 0 {
		flag.Usage()
		os.Exit(2)
	}
	if err := Generate(all, *out, *address); err != nil {
		fmt.Fprintln(os.Stderr, "pages:", err)
		os.Exit(1)
	}
}
