package swap

import "striderule/calc/word"

const (
	careSwap = "Switch off before you touch wiring or jumpers."

	guideAlt    word.Template = "The drivetrain: driver, motor, gears, and what they drive. {parts}" // {parts} are sentences
	guidePart   word.Template = "{letter}: {part}."
	guideChange word.Template = "{old} → {new}"
)

// partNames are the parts of the drivetrain in its picture, by their ticks.
var partNames = word.Table{{"angle", "the motor"}, {"micro", "the driver"}, {"gears", "the gears"}, {"out", "the pulley, belt, screw or drive gear"}}

// What folded parts hold.
const (
	checkBrief   = "current, direction, wiring"
	numbersBrief = "old and new"
	effectsBrief = "part by part"
	othersTitle  = "If your controller stores it differently"
	othersBrief  = "what to change"
	touchesBrief = "start-up script"
)
