package swap

import (
	"striderule/calc/word"
)

const (
	missingTitle = "Still needed"
	askSetting   = "the new setting"

	beforeAfterTitle = "Before and after"
	effectsTitle     = "What changes, what stays"
	entriesTitle     = "Which settings to change"
	checkTitle       = "Before you run it"
)

// Of the headline.
const (
	sameAsBefore word.Template = "The same as before, {old}. Any correction in the old value carries over."
	timesBefore  word.Template = "{old} × {factor}. Any correction in the old value carries over."
	timesMicro   word.Template = "{old} at {micro} microsteps × {factor}. Any correction in the old value carries over."
)

// Where the old setting and the old parts disagree.
const (
	disagrees      word.Template = "{setting} doesn't fit the old parts: those give {fit}, the new ones {new}."
	disagreesPlain word.Template = "{setting} doesn't fit the old parts: without gears those give {fit}, the new ones {new}."
	fitsMicro      word.Template = "{setting} fits {micro} microsteps."
	fitsMotor      word.Template = "{setting} fits a {angle}° motor."
	fitsLead       word.Template = "{setting} fits a screw of {lead} lead."
	fitsStarts     word.Template = "{setting} fits a screw of {lead} lead: if yours has {starts} starts, write {typed} x {starts}."
	fitsPlain      word.Template = "{setting} fits without the gears."

	partsGive word.Template = "These parts give {fit}."
)

const takenAsOld = "This holds if you entered the setting from before the swap. If it came with the new part, keep it as it is."

// What is said of a setting, by its convention and whether it is in degrees.
type settingWords struct {
	fresh  string // of the headline
	factor string
	where  string // the controller stores it so
}

var (
	perMM = [...]settingWords{
		{"New steps per mm", "Steps per mm, multiplied by", "If your controller stores steps per mm:"},
		{"New travel per motor turn", "Travel per motor turn, multiplied by", "If your controller stores travel per motor turn:"},
		{"New travel per output turn", "Travel per output turn, multiplied by", "If your controller stores travel per output turn:"},
	}
	perDegree = [...]settingWords{
		{"New steps per degree", "Steps per degree, multiplied by", "If your controller stores steps per degree:"},
		perMM[1],
		perMM[2],
	}
)

// What one part of a swap does, and what it does where it is as it was.
type effectWords struct{ angle, micro, gears, out word.Template }

var (
	linearEffects = effectWords{
		angle: "Step angle {new} instead of {old}: steps per mm × {steps}. Travel per motor turn stays, but the full steps per turn stored with it become {fullsteps}.",
		micro: "Microsteps {new} instead of {old}: steps per mm × {steps}. Travel per motor turn stays, but the microsteps stored with it become {new}.",
		gears: "Gear ratio {new} instead of {old}: steps per mm × {steps}, travel per motor turn × {turn}. Travel per output turn stays, but the gear ratio stored with it becomes {new}.",
		out:   "Old part: {old}. New part: {new}. Steps per mm × {steps}, travel per motor turn × {turn}, travel per output turn × {output}.",
	}
	rotaryEffects = effectWords{
		angle: "Step angle {new} instead of {old}: steps per degree × {steps}. Travel per motor turn stays, but the full steps per turn stored with it become {fullsteps}.",
		micro: "Microsteps {new} instead of {old}: steps per degree × {steps}. Travel per motor turn stays, but the microsteps stored with it become {new}.",
		gears: "Gear ratio {new} instead of {old}: steps per degree × {steps}, travel per motor turn × {turn}. Travel per output turn stays, but the gear ratio stored with it becomes {new}.",
		out:   "Old part: {old}. New part: {new}. Steps per degree × {steps}, travel per motor turn × {turn}, travel per output turn × {output}.",
	}
	noEffects = effectWords{
		angle: "Step angle {new} before and after: no setting changes for it.",
		micro: "Microsteps {new} before and after: no setting changes for it.",
		gears: "Gear ratio {new} before and after: no setting changes for it.",
		out:   "Old part: {old}. New part: {new}. Both move the axis equally far, so no setting changes for it.",
	}
)

// What to do with a setting of the controller.
const (
	leaveEntry    word.Template = "{setting}: no change."
	multiplyEntry word.Template = "{setting}: multiply by {factor}."
	changeEntry   word.Template = "{setting}: change to {new}."

	fullStepsEntry  = "Full steps per turn"
	microstepsEntry = "Microsteps (if set in firmware)"
	gearRatioEntry  = "Gear ratio"

	restartTip = "Restart the controller after changing a config file. A command works at once, but is lost at the next restart unless you save it."
)

// What else the swap affects.
const (
	fedStays   = "Retraction, other lengths in mm and the flow stay if the old setting was right. If it wasn't, use the Calibrate page instead."
	movedStays = "Positions and lengths stay if the old setting was right."
	newMotor   = "Driver current and direction of the new motor: see “Before you run it”."
)

const (
	thenTest      = "Then run a short test: it shows whether the new setting is right."
	thenTestDrive = "Then run a test: nothing else gives the effective diameter of a drive gear."

	toCalibrate = "Calibrate with the new setting"
	toStepRate  = "Check the step rate"
)
