package site

import "striderule/calc/word"

// Name is what the site is called.
const Name = "Striderule"

// titled is what a browser calls a page.
const titled word.Template = "{page} · Striderule"
