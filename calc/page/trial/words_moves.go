package trial

import (
	"striderule/calc/measure"
	"striderule/calc/word"
)

// A MoveWording is what is said in other words of axes that move and of axes that turn.
type MoveWording struct {
	OneLengthTip  word.Template
	OneLengthOnly word.Template
	OneLengthStep word.Template
	AddRunsStep   word.Template

	ToolSaysNothing  word.Template
	FinerOrWiderStep word.Template

	LengthsTitle    string
	OffsetFound     string
	LengthChartSays string
	ResidualSays    string
	SidesSays       word.Template

	Doubts word.Table // of package measure, where they are other ones
}

// What is said of either.
var (
	LengthWords = MoveWording{
		OneLengthTip:  "One length can't tell a steps/mm error from a fixed offset such as backlash: choose “{choice}” for that.",
		OneLengthOnly: "All runs are of the same length. Add other lengths, or choose “{choice}” above.",
		OneLengthStep: "Run a test of one length with the new setting, and check that it moves what you command.",
		AddRunsStep:   "Add more runs here, but start a new sheet for another length or measuring tool.",

		ToolSaysNothing:  "Your measuring tool is so coarse for this length that nothing can be said yet. Use a finer one, or a longer move.",
		FinerOrWiderStep: "Use a finer measuring tool or a longer move, or accept a larger error.",

		LengthsTitle:    "Steps/mm error and fixed offset",
		OffsetFound:     "There's a fixed offset, the same at every length: backlash, a tool edge or a thick mark. Keep it out of steps/mm.",
		LengthChartSays: "Measured minus commanded length, against the commanded length. The line starts at the fixed offset and rises or falls with the steps/mm error.",
		ResidualSays:    "How far each run lies above or below the line. Random is fine; a curve means that the error changes with length.",
		SidesSays:       "Backlash isn't a steps/mm error. Tighten the belt or nut, or look for a loose pulley; don't correct it with steps/mm.",
	}
	AngleWords = MoveWording{
		OneLengthTip:  "One angle can't tell an error of the setting from a fixed offset such as backlash: choose “{choice}” for that.",
		OneLengthOnly: "All runs are of the same angle. Add other angles, or choose “{choice}” above.",
		OneLengthStep: "Run a test of one angle with the new setting, and check that it turns by what you command.",
		AddRunsStep:   "Add more runs here, but start a new sheet for another angle or measuring tool.",

		ToolSaysNothing:  "Your measuring tool is so coarse for this angle that nothing can be said yet. Use a finer one, or a longer move.",
		FinerOrWiderStep: "Use a finer measuring tool or a longer move, or accept a larger error.",

		LengthsTitle:    "Steps/° error and fixed offset",
		OffsetFound:     "There's a fixed offset, the same at every angle: backlash, or a pointer that isn't set to zero. Keep it out of steps/°.",
		LengthChartSays: "Measured minus commanded angle, against the commanded angle. The line starts at the fixed offset and rises or falls with the steps/° error.",
		ResidualSays:    "How far each run lies above or below the line. Random is fine; a wave means that a gear or the scale is off centre.",
		SidesSays:       "Backlash isn't a steps/° error. Set the worm or gears closer, tighten the belt, or look for a loose coupling; don't correct it with steps/°.",

		Doubts: word.Table{
			{string(measure.WarnTwoLengths), "Two angles always lie on a straight line: add a third."},
			{string(measure.WarnNotStraight), "The readings are off a straight line by more than their scatter. Look for one wrong reading, or for a gear or a scale that's off centre."},
		},
	}
)
