package calibrate

import "striderule/calc/word"

// How to make the test.
const (
	howTitle = "How to make the test"

	heatStep                    = "Heat the hot end to the filament's printing temperature and wait until it's steady."
	checklistStep word.Template = "Go through “{section}”."
	tubeOffStep                 = "Unload the filament while the hot end is hot, let it cool, and take the Bowden tube off at the extruder."
	hotEndOffStep               = "Unload the filament while the hot end is hot, let it cool, and take the extruder off the hot end, if your machine's manual allows it."
	slackStep                   = "Feed a few millimetres forwards, to take up the slack in the direction of the test."
	cutStep                     = "Cut the filament flush, feed the commanded length in one go, cut it flush again, and measure the piece."
	wentInStep                  = "Feed the commanded length in one go and measure how much filament went in."
	markStep                    = "Mark the filament farther from the extruder's inlet than the commanded length. Feed that length, then measure from the same place to the mark."
	slowStep                    = "Feed slowly: 60 to 90 mm/min (1 to 1.5 mm/s). Any faster and the drive gear may slip."
	speedsStep                  = "Feed at three speeds or more, the slowest at about 60 mm/min (1 mm/s), each of them at least twice."
	markAgainStep               = "Mark again and repeat: at least three runs, five is better."
	markEachStep                = "Mark again before each run."
	repeatStep                  = "Repeat: at least three runs, five is better."

	approachStep = "Approach the start in the direction of the test move, to take up backlash."
	rulerStep    = "Fix a ruler or caliper along the axis, or a dial gauge at its end, and read the carriage's position before and after. Don't use a printed part: shrinkage and line width get in the way."
	discStep     = "Fix a pointer against a graduated disc, or count full turns against a mark, and read before and after."
	dialStep     = "For backlash, or a turn of up to 3°, a dial indicator on an arm reads finest: the angle is its reading ÷ radius × 57.3."
	longStep     = "Use the longest move that the axis and your measuring tool allow: reading errors matter less."
	targetsStep  = "Approach each target at least twice from each side, always from well beyond it."
	movesStep    = "Use at least three different moves, the longest that the axis and your measuring tool allow, each at least twice."
	goBackStep   = "Go back past the start, approach it from the same side, and repeat: at least three runs."

	fValueLabel = "Feed speed as an F value"
	fastDoubt   = "That's fast for a test: the drive gear may slip."
)

// How to set the value.
const (
	applyTitle        = "Apply it"
	appliedTitle      = "What was applied"
	applyAnywayTitle  = "If you want to change it anyway"
	applyMistakeTitle = "If there is no mistake"

	sendLabel   = "Send this"
	configLabel = "Put this in the config file"
	undoLabel   = "To undo it"

	oldNumberLabel = "The same line with the old number" // where it holds more than that undoes
	lineFor        = "a command ready to copy"
	entryFor       = "a config line ready to copy"

	noteOldStep     word.Template = "Write down the old value first, so you can go back: {setting}."
	setNewStep      word.Template = "Set the new one: {setting}. Make the first move with it short and slow."
	saveCommandStep               = "Save it: use your controller's save command, or edit its config file. Otherwise the next restart brings the old value back."
	saveConfigStep                = "Edit the value in the config file, save it, and restart the controller."
	checkInUseStep  word.Template = "After a restart, check the value in use. If it's the old one, something overrides it: see “{part}”."
)

// What to do next.
const (
	nextTitle = "What to do next"

	leaveStep                       = "Leave the setting. If sizes or amounts are still wrong, it isn't the calibration of this axis."
	partsStep                       = "Look for what explains the difference: the measuring tool against a known length, a printed part measured in place of the carriage, another pulley, belt or screw. Found a part? Work the setting out from it."
	interimStep                     = "Set the new value first, and make all further runs with it, on a new sheet. Runs before and after the change don't mix."
	mistakeStep                     = "Look for the mistake first. If you find it, fix it and measure again; don't change the setting."
	noMistakeStep                   = "If there's none, set the new value and repeat the test on a new sheet."
	mendStep          word.Template = "Find out which mistake it is. If the machine is as it should be, set {setting}. If a part of it isn't (a jumper, a gear), put that right and keep {old}."
	thenCalibrateStep               = "Then repeat this test on a new sheet, with the setting in use then: that's the calibration."
	checkHereStep     word.Template = "Enter the check runs under “{section}”, and keep the old setting in the form."
	newSheetStep                    = "Enter the check runs on a new sheet, with the new setting."
	whatIfStep                      = "No change? The controller isn't using the new value. Still off? Look for slip or a bad reading. Off the other way? The old setting here wasn't the one in use."
	seePartStep       word.Template = "Then see “{part}”."
	guardBack                       = "Turn cold-extrusion protection back on if you turned it off for this test."
	partsFor                        = "what your parts give"

	cureStep                   = "To cure slip: print hotter or slower, clean the drive gear, adjust its tension, free up the filament path, and check for a clogged nozzle. Then repeat the test."
	noFasterStep word.Template = "Feed no faster than {speed} ({rate}): above that the error is more than you accept."

	expectRemaining word.Template = "Repeat the test with the new setting: about {expect} should remain. A single reading from {low} to {high} fits."
	expectMeasured  word.Template = "Repeat the test with the new setting: you should measure about {expect}. A single reading from {low} to {high} fits."
	finishStep      word.Template = "Make the runs that are left of your plan: {n} of {all}."
	threeRunsStep                 = "Make at least three runs."
	chooseToolStep                = "Choose your measuring tool."
	runsVaryStep    word.Template = "Your runs vary by about {length}, far more than your tool's resolution: read from the same edge each time."
	marksVaryStep   word.Template = "Your runs vary by about {length}, far more than your tool's resolution: make a finer mark, and read from the same edge each time."
	oneMoreStep     word.Template = "One more run would give about ± {error}."
	oneMoreSettles  word.Template = "One more run would give about ± {error}; {enough} runs in all should settle it."
	oneMoreAbout    word.Template = "One more run would give about ± {error}. If the next ones are like these, about {enough} runs in all settle it."
	longerAbout     word.Template = "A longer move of {length} would give about ± {error}. If it scatters as much, about {enough} settles it."
	longerStep      word.Template = "A longer move of {length} would give about ± {error}."
	longerSettles   word.Template = "A longer move of {length} would give about ± {error}; {enough} should settle it."

	planLink = "Plan a test that settles it"
	flowLink = "Tune the flow"
	rateLink = "Check the step rate"
)

// After the change.
const (
	againTitle               = "After the change"
	againLabel               = "Error after the change"
	doneSays   word.Template = "Next, see “{part}”, and save this sheet to the log."
	sameSide                 = "It's off in the same direction as before. Is the new value really in use? A start-up script or saved settings may have brought the old one back."
)

// The common mistakes.
const mistakesTitle = "It looks like a common mistake"

var mistakesSay = word.Counted{
	One:   "This would explain the error:",
	Other: "{n} explanations fit, most likely first. The readings can't tell which it is:",
}

const (
	wouldBe word.Template = "The setting would be {setting}."
)

// The main act behind a new setting.
const checkItNow = "I have set it: check it"

// What folded parts hold.
const (
	howBrief         = "step by step"
	nextBrief        = "check runs"
	elsewhereBrief   = "if sizes are still off"
	persistTitle     = "Keep it after a restart"
	persistBrief     = "4 steps"
	applyBrief       = "the value and its line"
	slipBrief        = "slip, by speed"
	lengthsBrief     = "setting or fixed offset"
	sidesBrief       = "what reversing loses"
	accuracyBrief    = "accuracy and repeatability"
	conventionsBrief = "per turn"
	whyBrief         = "sources"
	touchesExtruder  = "flow, retraction"
	touchesLinear    = "positions, step rate"
	touchesRotary    = "start-up script, positions"
)

var runsBrief = word.Counted{One: "1 run", Other: "{n} runs"}
