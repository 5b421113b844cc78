package calculator

import (
	"striderule/app/kept"
	"striderule/calc/word"
)

// Saving a sheet to the log.
const (
	saveToLog      = "Save to log"
	saveAbout      = "Saved on this device only. Opening it brings back everything you typed."
	saveMachine    = "Machine"
	saveMachineTip = "Whatever you call it."
	saveAxis       = "Axis"
	saveAxisTip    = "Extruder, X, table … Always use the same name, so that results line up in one trend."
	saveNote       = "Note"
	saveNoteTip    = "Optional."
	saveDate       = "Date"
	saveDateTip    = "Change it if you measured earlier."
	saveIt         = "Save"
	cancelSave     = "Cancel"

	noMachine    = "Machine: please enter a name."
	noDate       = "Date: enter day and time, as in 2026-11-25T10:03."
	savedAlready = "This is in the log already."
	saved        = "Saved."

	notSaved     = "Not saved."
	saveItAsFile = "Save it as a file"
)

// remedies are what to do when the browser refuses to save something.
var remedies = word.Table{
	{string(kept.Full), "Save the log as a file, delete what you no longer need there, and try again. Or save this one as a file, and import it on the Log page later."},
	{string(kept.NoRoom), "Save it as a file, and import it on the Log page later."},
	{string(kept.Blocked), "Allow site data for this site, or save it as a file, and import it on the Log page later."},
}
