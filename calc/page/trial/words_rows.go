package trial

import (
	"striderule/calc/sheet"
	"striderule/calc/word"
)

// What the rows of a group are called.
var (
	RunRows = sheet.RowWords{ID: "run", Row: "run {n}", Range: "runs {from} to {to}", All: "runs", Add: "Add a run",
		Lines: word.Table{{"at", "Add a speed"}, {"want", "Add a length"}, {"wantdeg", "Add an angle"}}}
	CheckRows  = sheet.RowWords{ID: "later-run", Row: "check run {n}", Range: "check runs {from} to {to}", All: "check runs", Add: "Add a check run"}
	TargetRows = sheet.RowWords{ID: "target", Row: "target {n}", Range: "targets {from} to {to}", All: "targets", Add: "Add a target"}
)
