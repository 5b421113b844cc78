package plan

import "striderule/calc/word"

// The checklist.
const (
	beforeTitle = "Checklist: before"
	duringTitle = "Checklist: each run"
	afterTitle  = "Checklist: afterwards"

	rangeClear     = "Nothing is in the way of the axis, and it moves freely."
	normalTension  = "Belts and screws are at the tension you normally use."
	toolAlong      = "The ruler, caliper or dial gauge lies along the axis and can't move."
	carriageAtLow  = "The carriage is at the lower end of the range."
	comeFromBelow  = "Come in from below, to take up backlash, and read the position."
	moveAndRead    = "Move the length, wait until nothing moves, read again, and write down the difference."
	goToEachTarget = "Go to each target moving +, then to each moving −, and turn round well beyond the last."

	markIt word.Template = "Mark the filament at {mark} from the extruder's inlet."
	feedIt word.Template = "Feed {length} in one go. If the mark gets near the extruder, stop."
	readIt word.Template = "Wait until nothing moves. Measure from the same place to the mark, about {left}, and write it down as you read it."

	backToAbsolute = "Go back to absolute moves if you use them: the last line does it."
	undoOverrides  = "Undo what you changed for the test: flow or speed overrides, a filament sensor."
	enterAll       = "Enter all readings, odd-looking ones too."
	guardBackOn    = "Turn cold-extrusion protection back on if you turned it off for this test."
	enterReadings  = "Enter the readings"
	runThisPlan    = "Run this plan, one step at a time"
)

// readyPoint is one of trial.Readiness as a thing to see to.
const readyPoint word.Template = "{check}: {hint}."

// The moves. What stands in their lines is ASCII: some controllers stumble over anything else.
const (
	movesTitle = "The moves, line by line"
	movesLabel = "Moves"
	feedFile   = "extruder-test.gcode"
	moveFile   = "linear-test.gcode"

	movesSay word.Template = "Relative moves, in mm and mm/min. Read the lines before you send them, and send them one at a time if you can't make the controller wait in between. Lines of your own go under “{section}”."

	stayFeeding                = "Stay with the machine, a hand near the off switch; keep fingers away from the drive gear, idler and gears"
	stayMoving                 = "Stay with the machine, a hand near the off switch; keep fingers away from belts, screws and gears"
	hotFirst                   = "Before: hot end at printing temperature and steady; it burns, and molten plastic gives off fumes"
	coldFirst                  = "Before: extruder disconnected from the hot end, no filament in a cold hot end; turn cold-extrusion protection back on afterwards"
	startAt      word.Template = "Before: go to {axis} = {from}; all moves stay between there and {axis} = {to}"
	awayFromBed                = "Nothing may be in the way: keep well away from the bed"
	takeUpSlack                = "take up the slack"
	slackToRun                 = "take up the backlash in the direction of the run"
	runRemark    word.Template = "run {n} of {all}"
	markRemark   word.Template = "mark the filament at {mark} mm from the extruder's inlet"
	readRemark                 = "measure what remains to the mark, write it down"
	againRemark  word.Template = "measure what remains to the mark, write it down, then mark again at {mark} mm from the extruder's inlet"
	readPosition               = "read the position"
	readMoved                  = "read the position, and write down how far it moved"
	backRemark                 = "back past the start"
	plusRemark   word.Template = "moving +, to target {target}, round {n}"
	minusRemark  word.Template = "moving -, to target {target}, round {n}"
	turnRemark                 = "turn round"
)
