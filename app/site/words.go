package site

import "striderule/calc/word"

// Name is what the site is called.
const Name = "Striderule"

// Titled is what a browser calls a page, by the page's own name.
const Titled word.Template = "{page} · Striderule"
