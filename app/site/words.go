package site

import "striderule/calc/word"

// Name is what the site is called.
const Name = "Striderule"

// Language is the tag (BCP 47) of the language that it speaks.
const Language = "en"

// titled is what a browser calls a page.
const titled word.Template = "{page} · Striderule"
