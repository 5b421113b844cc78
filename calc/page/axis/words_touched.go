package axis

import (
	"striderule/calc/sheet"
	"striderule/calc/word"
)

// TouchesTitle heads what a new setting brings with it.
const TouchesTitle = "What else is affected"

// secTouched is where a person's own numbers stand that a new setting affects.
var secTouched = &sheet.Section{Title: "Your other settings", Folded: true}

// When what was found by trial was found.
var (
	tunedUnsaid = sheet.Option{Word: "unsaid", Label: "Not said", Hint: "then the page asks where it matters"}
	tunedBefore = sheet.Option{Word: "before", Label: "Before a part was changed", Hint: "with a setting that was right then"}
	tunedAfter  = sheet.Option{Word: "after", Label: "With this setting", Hint: "after the last change of parts"}
)

const (
	tunedLabel   = "When you tuned them"
	tunedHint    = "Retraction, flow and positions that you found by trial and error."
	retractLabel = "Retraction"
	retractHint  = "As set in your slicer or firmware."
	loadLabel    = "Load or unload length"
	loadHint     = "As in your load or unload macro."
	flowLabel    = "Flow"
	flowHint     = "As set in your slicer: 0.97 or 97%."
	placeLabel   = "Position you found by jogging"
	placeHint    = "Endstop offset, park position or axis length."
	fastestLabel = "Top speed of this axis"
	fastestHint  = "For an extruder, the retraction speed."
	limitLabel   = "Max. step rate"
	limitHint    = "What your controller can send."
)

// The figures of what is affected.
var (
	TunedOutputs = []sheet.Output{
		{ID: "retract", Label: "New retraction", Unit: "mm"},
		{ID: "load", Label: "New load or unload length", Unit: "mm"},
		{ID: "flow", Label: "New flow", Unit: "1"},
		{ID: "place", Label: "New position", Unit: "mm"},
	}
	PulseOutputs = []sheet.Output{
		{ID: "was-rate", Label: "Step rate at top speed, before", Unit: "pulses/s"},
		{ID: "rate", Label: "Step rate at top speed, after", Unit: "pulses/s"},
		{ID: "was-top", Label: "Top speed at the step-rate limit, before", Unit: "mm/s"},
		{ID: "top", Label: "Top speed at the step-rate limit, after", Unit: "mm/s"},
		{ID: "was-step", Label: "Travel per microstep, before", Unit: linearTravel},
		{ID: "step", Label: "Travel per microstep, after", Unit: linearTravel},
	}
)

// A tunedWords says how a number that a person tuned changes: by {factor}, or from {was} to {new}.
type tunedWords struct{ by, to word.Template }

var (
	retractWords = tunedWords{
		by: "Retraction, if you tuned it with this setting: multiply it by {factor}.",
		to: "Retraction, if you tuned it with this setting: {was} before, {new} after.",
	}
	loadWords = tunedWords{
		by: "Load and unload lengths that you tuned with this setting: multiply them by {factor}.",
		to: "Load or unload length, if you tuned it with this setting: {was} before, {new} after.",
	}
	flowWords = tunedWords{
		by: "Flow, if you tuned it with this setting: multiply it by {factor}.",
		to: "Flow, if you tuned it with this setting: {was} before, {new} after.",
	}
	placeWords = tunedWords{
		by: "Positions found by jogging with this setting (endstop offsets, park positions): multiply them by {factor}.",
		to: "Position found by jogging with this setting (endstop offset, park position): {was} before, {new} after.",
	}
)

// Why they change, and what stays.
const (
	movedLess = "It used to move less than it said."
	movedMore = "It used to move more than it said."
	flowAgain = "It made up for the wrong setting: start there and tune it again."
	samePlace = "Same place, new number."

	tunedFeedStays   = "Retraction, load lengths and flow that you tuned before a part was changed stay: the setting was right then. Check the flow once more when this is done."
	tunedTravelStays = "Positions that you found before a part was changed stay: the setting was right then."
	tunedAsks        = "Numbers that you found by trial and error: what you tuned before a part was changed stays. What you tuned with this setting is to be multiplied."
	tunedLater       = "Numbers that you found by trial and error: leave them until the setting is calibrated."
	tunedFor         = "what becomes of what you tuned"

	guidesStay   = "Values from a guide or someone else's profile stay as they are: they'll be right with the new setting."
	secondsStay  = "Pressure-compensation constants in seconds stay as they are."
	measuredStay = "What you measured with a ruler, or took from a drawing, stays: it'll be right with the new setting."
	compensation = "Undo any size compensation in the slicer that made up for the old setting."
)

// What the controller and the motor see.
const (
	changedRates = "what changes in step rates"

	rateBy    word.Template = "Step rate at any speed: multiplied by {factor}."
	rateTo    word.Template = "Step rate at {speed}: {was} before, {new} after."
	topTo     word.Template = "Top speed at the step-rate limit: {was} before, {new} after."
	microstep word.Template = "One microstep: {was} before, {new} after."

	beyondLimit = "With the new setting the top speed is beyond what the controller can send: go slower, or set fewer microsteps."
)

// Where the old value may come back from, and who else needs the new one.
const (
	savedWins                 = "Settings saved in the controller may override the config file. Save the new value there, or clear it."
	scriptSets  word.Template = "A start-up script, macro or profile that still sets {old}: change it to {new}."
	secondMotor               = "A second motor on the same axis or belt path (crossed belts, delta towers) needs the same parts and the same value."
)

// Links to the page of swaps.
const (
	swapMotorLink = "Work out the change of motor"
	swapMicroLink = "Work out the change of microsteps"
	swapGearsLink = "Work out the change of gears"
	swapAnyLink   = "Work out a change of parts"
)
