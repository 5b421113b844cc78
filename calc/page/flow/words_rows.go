package flow

import "striderule/calc/sheet"

// What the rows of a group are called.
var readingRows = sheet.RowWords{ID: "reading", Row: "reading {n}", Range: "readings {from} to {to}", All: "readings", Add: "Add a reading"}
