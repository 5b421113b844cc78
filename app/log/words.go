package log

import "striderule/calc/word"

// The page.
const (
	pageTitle    = "Machine log"
	pageQuestion = "What have I saved, and is anything drifting?"
	whatFor      = "“Save to log” on a calculator's page saves the sheet here under a machine and an axis, so you can reopen it, compare two, and see whether an extruder is wearing or a belt is stretching."
	whereItIs    = "The log is in this browser only. Clearing browser data or closing a private window deletes it, so save a copy as a file now and then."
	notYet       = "Your log appears here once the page has loaded."
	empty        = "Nothing saved yet."
	theExample   = "An example: Heron and Plover of Tidewater Makers' Hall. None of it is stored, and your own log is untouched."
	backToMine   = "Back to my log"
	saveFile     = "Save as a file"
	saveCSV      = "Save for a spreadsheet"
	importFile   = "Import a file"
	showExample  = "Show an example log"
	undoLabel    = "Undo"
	closeIt      = "Close"
)

// What was done.
var (
	deleted = word.Counted{
		One:   "1 entry deleted.",
		Other: "{n} entries deleted.",
	}
	notDeleted = word.Counted{
		One:   "1 entry wasn't deleted.",
		Other: "{n} entries weren't deleted.",
	}
	leftAlone = word.Counted{
		One:   "1 entry was changed in another tab and was left alone.",
		Other: "{n} entries were changed in another tab and were left alone.",
	}
	restored = word.Counted{
		One:   "1 entry restored.",
		Other: "{n} entries restored.",
	}
)

const notAllRestored = "Not everything could be restored."

// What can't be read.
const (
	cantRead                  = "The log can't be read."
	worksAlone                = "The calculators still work, and you can save a sheet as a file."
	untouched                 = "What can't be read was left untouched. Save it as a file to keep the raw text."
	saveThem                  = "Save it as a file"
	deleteThem                = "Delete what can't be read"
	unreadEntry word.Template = "{id}: {why}"
)

var unread = word.Counted{
	One:   "1 entry can't be read",
	Other: "{n} entries can't be read",
}

// What came of a file.
const (
	whatCame                       = "What was imported"
	importedFrom     word.Template = "Imported from {file}"
	notImported      word.Template = "Couldn't import {file}"
	tooLarge                       = "The file is over 20 MB, more than any browser keeps as a log."
	cantOpen         word.Template = "The browser couldn't read it ({error})."
	isASheet                       = "This is a single sheet. Open it on the start page and save it to the log from there."
	isNoLog                        = `This isn't a log file (those start with {"log":"striderule"). A spreadsheet export can't be imported.`
	machinesNotSaved               = "Not all machines were saved."
	fileHasAll                     = "The file still has all of it."
	newerFile                      = "The file comes from a newer version of this site. What this version understands was imported, and the rest saved with it."
	// manyDamages is said of a file whose damages are not counted any more.
	manyDamages word.Template = "The file is damaged in {n} places or more; the rest was imported:"
)

var (
	machinesImported = word.Counted{
		One:   "1 axis of a machine was added or brought up to date.",
		Other: "{n} axes of machines were added or brought up to date.",
	}
	importedHere = word.Counted{
		One:   "1 entry was imported.",
		Other: "{n} entries were imported.",
	}
	alreadyHere = word.Counted{
		One:   "1 was already here.",
		Other: "{n} were already here.",
	}
	notSaved = word.Counted{
		One:   "1 entry wasn't saved.",
		Other: "{n} entries weren't saved.",
	}
	sameID = word.Counted{
		One:   "1 entry shares its ID with a different entry here. Both were kept.",
		Other: "{n} entries share an ID with different entries here. All were kept.",
	}
	damagedIn = word.Counted{
		One:   "The file is damaged in 1 place; the rest was imported:",
		Other: "The file is damaged in {n} places; the rest was imported:",
	}
	moreDamages = word.Counted{
		One:   "And 1 more.",
		Other: "And {n} more.",
	}
)
