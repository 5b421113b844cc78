package trial

import "striderule/calc/sheet"

// What the rows of a group are called.
var (
	RunRows   = sheet.RowWords{ID: "run", Row: "run {n}", Range: "runs {from} to {to}", All: "runs", Add: "Add a run"}
	CheckRows = sheet.RowWords{ID: "later-run", Row: "check run {n}", Range: "check runs {from} to {to}", All: "check runs", Add: "Add a check run"}
)
