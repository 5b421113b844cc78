package whose

import "striderule/calc/word"

// The machines beside a sheet.
const (
	machineLabel                  = "Machine"
	axisLabel                     = "Axis"
	saveIt                        = "Save"
	cancelIt                      = "Cancel"
	notSaved                      = "Not saved."
	saveAsMachine                 = "Save as a machine"
	machineAbout    word.Template = "Keeps {setting} and all facts of this sheet (no readings), for one tap to fill in later. Saved on this device only."
	nameMachine                   = "Machine: please enter a name."
	toMachines                    = "All machines"
	keepTheFacts                  = "Keep these facts"
	itIsMine                      = "It's the one on this device"
	nowCheck        word.Template = "It's set on {machine}: check it"
	undoFill                      = "Undo"
	filledNot                     = "Undone. The sheet is as it was."
	machinesSetting word.Template = "{setting}: the machine's"
	sheetsSetting   word.Template = "{setting}: this sheet's"
	filledFrom      word.Template = "Filled in from {machine}."
	sheetOf         word.Template = "This sheet is about {machine}."
	thereAlready    word.Template = "{machine} is here already: tap it above to use it, or choose another name."
	machineSaved    word.Template = "{machine} is saved on this device."
	machineSet      word.Template = "{machine} now has {setting}."
	inTheLog                      = "This sheet is in the log."
	notInTheLog                   = "This sheet isn't in the log."
	iHaveSet        word.Template = "I have set it on {machine}"
	hasItSince      word.Template = "✓ This is set: {machine} has {setting}. Check it with a run or two."
	setInBar                      = "✓ Set: check it"
	countBefore                   = "Include it"
	countedBefore   word.Template = "A scatter of {scatter} from earlier tests is included: see “From a plan or earlier tests”."
)

var scatteredBefore = word.Counted{
	One:   "A few runs say little about the scatter. An earlier test like this one on {machine}, in the log, scattered by {scatter} (standard deviation).",
	Other: "A few runs say little about the scatter. {n} earlier tests like this one on {machine}, in the log, scattered by {scatter} (standard deviation).",
}
