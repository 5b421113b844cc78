package calc

import "striderule/calc/sheet"

// Run the test: Calibrate, one card at a time.
const (
	runMenu     = "Run the test"
	runTitle    = "Run the test, one step at a time"
	runQuestion = "You stand at the machine: what do I do next?"
)

var runTasks = []sheet.Task{
	{Occasion: sheet.Changed, Situation: "Guide me through the test", Help: "At the machine, one step at a time: mark, send, wait, read.", Fragment: ""},
}
