package calibrate

import (
	"striderule/calc/measure"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/word"
)

// What is said in other words of an extruder and of other axes.
var (
	extruderWords = wording{
		verdict: trial.Wording{
			Exactly:    "By these readings it fed exactly what was commanded.",
			Little:     "It fed {size} too little.",
			Much:       "It fed {size} too much.",
			LittleFrom: "It fed {low} to {high} too little (95% confidence).",
			MuchFrom:   "It fed {low} to {high} too much (95% confidence).",
			Between:    "It fed between {low} too little and {high} too much (95% confidence).",
			Once:       oneRunSays,
		},
		did:  "Fed",
		head: "Fed, {unit}",
	}
	axisWords = wording{
		verdict: trial.Wording{
			Exactly:    "By these readings it moved exactly what was commanded.",
			Little:     "It moved {size} too little.",
			Much:       "It moved {size} too much.",
			LittleFrom: "It moved {low} to {high} too little (95% confidence).",
			MuchFrom:   "It moved {low} to {high} too much (95% confidence).",
			Between:    "It moved between {low} too little and {high} too much (95% confidence).",
			Once:       oneRunSays,
		},
		did:  "Measured",
		head: "Measured, {unit}",
	}
	rotaryWords = wording{
		verdict: trial.Wording{
			Exactly:    "By these readings it turned exactly what was commanded.",
			Little:     "It turned {size} too little.",
			Much:       "It turned {size} too much.",
			LittleFrom: "It turned {low} to {high} too little (95% confidence).",
			MuchFrom:   "It turned {low} to {high} too much (95% confidence).",
			Between:    "It turned between {low} too little and {high} too much (95% confidence).",
			Once:       oneRunSays,
		},
		did:  "Measured",
		head: "Measured, {unit}",
	}
)

// Verdicts.
const (
	mistakeTitle               = "Look for a mistake first"
	mistakeSays                = "A common mistake would give that: check below before you enter anything."
	interimTitle               = "Set it for now, and measure better"
	interimSays                = "The setting in use is off by far more than the new one is uncertain: set the new one for now, then measure better."
	timesOnly    word.Template = "That calls for {times} times the setting, just what a common mistake causes."
	timesAndMore word.Template = "That calls for {times} times the setting, plus {rest}: probably a common mistake with an error on top."
	timesAndLess word.Template = "That calls for {times} times the setting, minus {rest}: probably a common mistake with an error on top."
	partsTitle                 = "Keep it: the parts say so"
	partsSay     word.Template = "But {setting} is what a whole number of teeth or a standard lead gives: {travel} per turn. For belts and screws, trust that over a reading."
	partsSuppose word.Template = "But {setting} is what a whole number of teeth or a standard lead gives, {travel} per turn, if motor and gears are the usual ones (1.8°, 16 microsteps, no gears): fill in “{section}” to be sure. For belts and screws, trust that over a reading."
	partsUnless                = "Change it only if you find a part that explains the difference."
	slipLeftOut                = "That's at zero speed, without slip."
	oneRunSays                 = "One run can't show the scatter: make at least three."
)

// slipTitles are the titles of verdicts on runs that slip too, by their kind.
var slipTitles = [...]string{
	report.Leave:       "Leave it – but there is slip",
	report.Change:      "Change it – and there is slip",
	report.MeasureMore: "Measure more – and there is slip",
	report.Hopeless:    "Too coarse to settle it – and there is slip",
	report.Either:      "Either is fine – but there is slip",
}

const (
	mistakeSlipTitle = "Look for a mistake first – and there is slip"
	interimSlipTitle = "Set it for now – and there is slip"
)

// checkTitles are those of verdicts on the check runs.
var checkTitles = [...]string{
	report.Leave:       "Done: the change worked",
	report.Change:      "Still off after the change",
	report.MeasureMore: "Not sure yet: add check runs",
	report.Hopeless:    trial.TooCoarseTitle,
	report.Either:      "Close enough",
}

// The headline. In a label {setting} is a setting's name, {name} the same at the beginning.
const (
	newLabel       word.Template = "New {setting}"
	doubtfulLabel  word.Template = "New {setting}, if there is no mistake"
	mendLabel      word.Template = "If the machine is right, set {setting} to"
	aloneLabel     word.Template = "{name} by the readings alone"
	interimLabel   word.Template = "For now, set {setting} to"
	holdLabel      word.Template = "For now, keep {setting} at"
	soFarLabel     word.Template = "{name} so far"
	firstLabel     word.Template = "{name} from the first runs"
	keepLabel      word.Template = "Keep {setting} at"
	confirmedLabel word.Template = "Confirmed: {setting}"
	readLabel                    = "What the readings give"

	currently     word.Template = "Currently {setting}."
	afterSays     word.Template = "After the change the error is {error}. Before it, the setting was {setting}."
	thenCalibrate word.Template = "Find the mistake first. If the machine is right, set {setting}. Then repeat this test."
	nothingToGain               = "There's nothing to gain by changing it."
	notYetSays                  = "Don't enter this yet."
)

// What is missing, and what readings cannot give.
const (
	missingTitle = "Still needed"
	missingFor   = "the new setting"

	impossibleTitle               = "Not yet"
	nothingSaid                   = "These readings are so far apart that nothing can be said yet. Check each of them, and make more runs."
	anyImpossible                 = "One of the readings is impossible: check them."
	positionsFall                 = "The positions go down as the targets go up: check the sign."
	tooFewTargets                 = "Too few targets: approach at least three, each from both sides."
	tooFewRuns                    = "Too few runs: make at least three."
	oneSpeedOnly    word.Template = "All runs are at the same speed. Add other speeds, or choose “{choice}” above."
	onePositionOnly               = "All targets are at the same position. Add others."
	oneSideOnly                   = "Each target needs a position from both sides: fill in both boxes."
)

// slipWords say what speed does to the error.
const (
	slipRises  = "It feeds more at higher speed."
	slipBent   = "It grips up to a certain speed, then slips."
	slipUneven = "Speed makes a difference, but not a steady one."
	slipGrows  = "It feeds less at higher speed: that's slip."
	slipNone   = "Speed makes no visible difference."
	slipTip    = "Don't correct slip with steps/mm: the setting would be right at one speed only."
)

// basisSays tells which runs the setting is taken from.
var basisSays = [...]string{
	measure.FromZeroSpeed: "The setting is taken from the line at zero speed.",
	measure.FromSlowest:   "The setting is taken from the line through the two slowest speeds, at zero speed.",
}

// slowestToo says how far the ± of that reaches.
const slowestToo = "Its ± includes the result of the slowest runs alone."
