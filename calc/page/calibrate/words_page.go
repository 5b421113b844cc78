package calibrate

import "striderule/calc/sheet"

const (
	pageMenu     = "Calibrate"
	pageTitle    = "Calibrate from a measurement"
	pageQuestion = "I commanded one length and measured another. What should the setting be?"
)

var tasks = []sheet.Task{
	{Occasion: sheet.Changed, Situation: "I fitted a new extruder", Help: "Run a short test, enter what you measured, get the new setting.", Fragment: ""},
	{Occasion: sheet.Off, Situation: "It extrudes too much or too little", Help: "Mark the filament, feed a length, enter what remains.", Fragment: ""},
	{Occasion: sheet.Off, Situation: "A length comes out wrong", Help: "Enter the commanded and the measured length, get the corrected setting.", Fragment: "v=1&axis=travel"},
	{Occasion: sheet.Off, Situation: "It feeds less the faster it goes", Help: "Feed at several speeds: tells slip from a wrong setting.", Fragment: "v=1&trial=speeds&read=fed"},
	{Occasion: sheet.Off, Situation: "It has backlash", Help: "Reach each position from both sides, get the backlash.", Fragment: "v=1&axis=travel&trip=sides"},
}

// Units of figures of more than one sort of axis.
const (
	stepsUnits  = "steps/mm, steps/°"
	turnUnits   = "mm/rev, °/rev"
	lengthUnits = "mm, °"
)

var outputs = []sheet.Output{
	{ID: "steps", Label: "New steps per mm", Unit: stepsUnits},
	{ID: "turn", Label: "New travel per motor turn", Unit: turnUnits},
	{ID: "output", Label: "New travel per output turn", Unit: turnUnits},
	{ID: "was-steps", Label: "Steps per mm before the change", Unit: stepsUnits},
	{ID: "was-turn", Label: "Travel per motor turn before the change", Unit: turnUnits},
	{ID: "was-output", Label: "Travel per output turn before the change", Unit: turnUnits},
	{ID: "error", Label: "Error (measured / commanded − 1)", Unit: "%"},
	{ID: "mean", Label: "Mean of the measured lengths", Unit: lengthUnits},
	{ID: "spread", Label: "Scatter (standard deviation)", Unit: lengthUnits},
	{ID: "correction", Label: "Correction (commanded / measured)", Unit: "1"},
	{ID: "moved", Label: "Measured length of a run", Unit: lengthUnits},
	{ID: "off", Label: "Error of a run", Unit: "%"},
	{ID: "diameter", Label: "Effective diameter of the drive gear that this implies", Unit: "mm"},
	{ID: "expect", Label: "Expected reading after the change", Unit: lengthUnits},
	{ID: "feed", Label: "Feed speed", Unit: "mm/s"},
	{ID: "word", Label: "Feed speed as an F value", Unit: "mm/min"},
	{ID: "low", Label: "Smallest next reading that is fine", Unit: lengthUnits},
	{ID: "high", Label: "Largest next reading that is fine", Unit: lengthUnits},
	{ID: "then", Label: "Error after the change", Unit: "%"},
	{ID: "slope", Label: "Change in error per mm/s of feed speed", Unit: "%"},
	{ID: "holds", Label: "Speed up to which the error is acceptable", Unit: "mm/s"},
	{ID: "speedmean", Label: "Mean error at one speed", Unit: "%"},
	{ID: "offset", Label: "Fixed offset", Unit: lengthUnits},
	{ID: "reversal", Label: "Backlash, largest (reversal value)", Unit: lengthUnits},
	{ID: "lost", Label: "Backlash, mean (moving + minus moving −)", Unit: lengthUnits},
	{ID: "accuracy", Label: accuracyLabel, Unit: lengthUnits},
	{ID: "repeat", Label: repeatLabel, Unit: lengthUnits},
	{ID: "repeatup", Label: repeatUpLabel, Unit: lengthUnits},
	{ID: "repeatdown", Label: repeatDownLabel, Unit: lengthUnits},
	{ID: "systematic", Label: systematicLabel, Unit: lengthUnits},
	{ID: "systematicup", Label: systematicUpLabel, Unit: lengthUnits},
	{ID: "systematicdown", Label: systematicDownLabel, Unit: lengthUnits},
	{ID: "meanrange", Label: meanRangeLabel, Unit: lengthUnits},
	{ID: "devup", Label: "Mean deviation at a target, moving +", Unit: lengthUnits},
	{ID: "devdown", Label: "Mean deviation at a target, moving −", Unit: lengthUnits},
	{ID: "scatterup", Label: "Standard deviation at a target, moving +", Unit: lengthUnits},
	{ID: "scatterdown", Label: "Standard deviation at a target, moving −", Unit: lengthUnits},
}
