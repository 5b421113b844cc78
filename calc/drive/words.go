package drive

import "striderule/calc/word"

// A mistakeWords says a common mistake: what was mixed up, and what to check. Both are whole
// sentences; {fitted} and {set} are the size that sits there and the one that is set.
type mistakeWords struct {
	what word.Template
	look string
}

var (
	fineMotor = mistakeWords{
		what: "A 0.9° motor is configured as 1.8°.",
		look: "Check the step angle on the motor's label, and the full steps per turn.",
	}
	coarseMotor = mistakeWords{
		what: "A 1.8° motor is configured as 0.9°.",
		look: "Check the step angle on the motor's label, and the full steps per turn.",
	}
	forCoarseMotor = mistakeWords{
		what: "The setting is for a 1.8° motor, and yours has 0.9°.",
		look: "Was the motor changed after the setting was made?",
	}
	forFineMotor = mistakeWords{
		what: "The setting is for a 0.9° motor, and yours has 1.8°.",
		look: "Was the motor changed after the setting was made?",
	}
	otherMicrosteps = mistakeWords{
		what: "The setting is for {was} microsteps, and the driver uses {now}.",
		look: "Was the driver or its microsteps setting changed after the setting was made?",
	}
	moreMicrosteps = mistakeWords{
		what: "The driver uses {n} times the microsteps configured.",
		look: "Check the driver's jumpers or its microsteps setting.",
	}
	fewerMicrosteps = mistakeWords{
		what: "The driver uses 1/{n} of the microsteps configured.",
		look: "Check the driver's jumpers or its microsteps setting.",
	}
	millimetresForInches = mistakeWords{
		what: "Millimetres were sent where inches were meant.",
		look: "Check which unit the controller is set to.",
	}
	inchesForMillimetres = mistakeWords{
		what: "Inches were sent where millimetres were meant.",
		look: "Check which unit the controller is set to.",
	}
	thinFilament = mistakeWords{
		what: "The filament diameter is set to 2.85 mm, but you're using 1.75 mm.",
		look: "Check the filament diameter in the firmware or slicer.",
	}
	thickFilament = mistakeWords{
		what: "The filament diameter is set to 1.75 mm, but you're using 2.85 mm.",
		look: "Check the filament diameter in the firmware or slicer.",
	}
	pairLeftOut = mistakeWords{
		what: "The gear pair {driving} → {driven} teeth is left out of the setting.",
		look: "Check which gears the setting was worked out for.",
	}
	pairTwice = mistakeWords{
		what: "The gear pair {driving} → {driven} teeth is counted twice, or isn't there.",
		look: "Check which gears the setting was worked out for.",
	}
	pairReversed = mistakeWords{
		what: "The gear pair {driving} → {driven} teeth is the wrong way round in the setting.",
		look: "Check which of the two gears is on the motor.",
	}
	outputForMotorTurn = mistakeWords{
		what: "Travel per output turn was entered as travel per motor turn.",
		look: "Check which of the two your controller stores.",
	}
	motorForOutputTurn = mistakeWords{
		what: "Travel per motor turn was entered as travel per output turn.",
		look: "Check which of the two your controller stores.",
	}
	otherPulley = mistakeWords{
		what: "A pulley with {fitted} teeth is configured as {set}.",
		look: "Count the teeth of the pulley.",
	}
	otherBelt = mistakeWords{
		what: "A belt of {fitted} mm pitch is configured as {set} mm.",
		look: "Check the belt pitch: measure across ten teeth.",
	}
	otherScrew = mistakeWords{
		what: "A screw of {fitted} mm lead is configured as {set} mm.",
		look: "Check the screw's lead: how far the nut moves in one turn.",
	}
	pitchForLead = mistakeWords{
		what: "The screw's pitch was entered as its lead.",
		look: "Check the screw's lead: how far the nut moves in one turn.",
	}
	fourStartPitch = mistakeWords{
		what: "The pitch of a four-start screw was entered as its lead.",
		look: "Check the screw's lead: how far the nut moves in one turn.",
	}
	fourStartLead = mistakeWords{
		what: "A single-start screw is configured with four times its lead.",
		look: "Check the screw's lead: how far the nut moves in one turn.",
	}
)
