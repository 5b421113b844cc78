package plan

import "striderule/calc/sheet"

// What the rows of a group are called.
var speedRows = sheet.RowWords{ID: "speed", Row: "row {n}", Range: "rows {from} to {to}", All: "speeds", Add: "Add a speed"}
