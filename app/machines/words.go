package machines

import "striderule/calc/word"

// The page.
const (
	Name         = "Machines"
	pageQuestion = "What are my machines set to, and what's next?"
	whereTheyAre = "Saved in this browser only, beside the log. Save a file of the log now and then: it has the machines too."
	empty        = "No machine yet. Add one here, or use “Save as a machine” on Calibrate."
	notYet       = "Your machines appear here once the page has loaded."
	noneInLink   = "There is no machine in this link. Its list may be cut short: ask for it again."
)

var unread = word.Counted{
	One:   "1 axis saved here can't be read, perhaps from a newer version of this site. Nothing was changed.",
	Other: "{n} axes saved here can't be read, perhaps from a newer version of this site. Nothing was changed.",
}

// An axis.
const (
	calibrateIt                = "Calibrate"
	runIt                      = "Run the test"
	edit                       = "Edit"
	duplicate                  = "Duplicate"
	up                         = "Move up"
	upSign                     = "↑"
	downSign                   = "↓"
	down                       = "Move down"
	remove                     = "Delete"
	actOn        word.Template = "{act}: {machine}"
	deleted      word.Template = "{machine} is deleted."
	restored     word.Template = "{machine} is back."
	saved        word.Template = "{machine} is saved."
	undo                       = "Undo"
	showMore                   = "Show more"
	notSaved                   = "Not saved."
	copyName     word.Template = "{axis} copy"
	addMachine                 = "Add an axis"
	save                       = "Save"
	cancel                     = "Cancel"
	formName                   = "An axis of a machine"
	machineLabel               = "Machine"
	axisLabel                  = "Axis"
	kindLabel                  = "Kind"
	asLabel                    = "How your controller stores it"
	settingLabel               = "Setting"
	dateLabel                  = "In use since"
	nameIt                     = "Machine: please enter a name."
	setIt                      = "Setting: please enter it."
	dateIt                     = "In use since: enter a day, as in 2026-11-29."
	moreFacts                  = "Motor, gears, measuring tool and the usual test come from a sheet: tap Calibrate, fill them in, and use “Keep these facts” or “I have set it”."
)

// A list that came with a link.
const (
	onDevice                 = "On this device"
	sameName   word.Template = "There is a {machine} already. Choose another name, or edit that one."
	badSetting word.Template = "It can't be saved: {problem}"
	fromLink                 = "From the link"
	aboutLink                = "Somebody sent you this list. Use an axis as it is, or save it on this device. A command for the controller is saved only if you have accepted it on this device."
	saveAll                  = "Save all on this device"
	saveOne                  = "Save on this device"
	otherHere  word.Template = "This device has another setting for it: {setting}."
	sameHere                 = "This device has it already."
	likeHere   word.Template = "There is a {machine} on this device already. If it's the same one, use that."
)

var savedFromLink = word.Counted{One: "1 axis saved on this device.", Other: "{n} axes saved on this device."}

var leftOut = word.Counted{
	One:   "1 more in the link has no setting, or is beyond the 50 that a link may bring.",
	Other: "{n} more in the link have no setting, or are beyond the 50 that a link may bring.",
}

// Handing on.
const (
	copyList                 = "Copy a link to this list"
	listCopied               = "Link copied."
	notAllFit  word.Template = "A link has room for the first {n} of {all}. For all of them save the log as a file."
	labels                   = "Labels to print"
	labelsHint               = "Cut them out and put each on its axis. The code opens the calibration of that axis with only the readings missing."
	printThem                = "Print the labels"
	labelBy                  = "Scan to calibrate"
	labelLong  word.Template = "{machine} has too many facts for a code of this size."
)

// kinds are the sorts of axes, by the words of links.
var kinds = word.Table{{"feed", "Extruder"}, {"travel", "Linear"}, {"rotary", "Rotary"}}

// conventions are the ways in which a controller stores a setting, by the words of links.
var conventions = word.Table{{"steps", "Steps per mm or degree"}, {"turn", "Travel per motor turn"}, {"output", "Travel per output turn"}}
