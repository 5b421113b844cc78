package axis

import "striderule/calc/sheet"

// What the rows of a group are called.
var (
	AxisRows  = sheet.RowWords{ID: "axis", Row: "axis {n}", Range: "axes {from} to {to}", All: "axes", Add: "Add an axis"}
	stageRows = sheet.RowWords{ID: "stage", Row: "stage {n}", Range: "stages {from} to {to}", All: "stages", Add: "Add a stage"}
)
