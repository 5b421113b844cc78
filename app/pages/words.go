//go:build !wasm

package pages

import "striderule/calc/word"

// In the pages.
const (
	noScript                  = "JavaScript is off, so the calculator can't run. You can still read this page."
	previewSays word.Template = "The page “{page}” on drafting paper"
	lostTitle                 = "No such page"
	lostHeading               = "There is no page at this address"
	lostAdvice                = "Try going back to the Striderule start page."
)

// To who builds the site.
const (
	wrongPath    word.Template = "path {path}: a page's path begins and ends with a slash and occurs once"
	noHeading                  = "the page has no heading to put on its preview picture"
	wrongAddress word.Template = "the address {address}: write one like https://club.example/tools/striderule/, with a slash at its end"
)

// The flags of the generator.
const (
	outFlag     = "`folder` to write the pages into"
	addressFlag = "`address` that the site will have"
	lookFlag    = "`file` to write a page with every piece into"
)
