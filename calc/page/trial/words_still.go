package trial

import "striderule/calc/word"

// One reading that cannot be, beside others.
const (
	beyondMark   word.Template = "“{remaining}” isn't less than the mark, {mark}, so nothing was fed. Enter what remains to the mark, choose “{choice}” above, or tick “Leave out” there."
	strayReading word.Template = "“{reading}” would mean that it didn't move, or moved the wrong way. Read it again, or tick “Leave out” there."
)

// Nothing moved, or all of it the wrong way.
const (
	stillTitle               = "It didn't move"
	stillSays  word.Template = "Going by these readings, nothing moved, or next to nothing. No setting cures that. Look at these:"

	backTitle               = "It moved the wrong way"
	backSays  word.Template = "That's a matter of direction: keep the setting, and reverse the direction of this axis in the controller. Then repeat the test."
	backOrFed word.Template = "If it did feed forwards, you may have entered the fed length: choose “{choice}” above."
)

var (
	stillFeeding = []string{
		"The motor's plug and cable.",
		"The driver: enabled, in its socket, its current set.",
		"The command: the right axis, the right extruder.",
		"The drive gear: it should turn with the motor, and grip.",
		"Cold-extrusion protection: it blocks moves while the hot end is cold.",
		"The reading: the mark before the run, and what remains after it.",
	}
	stillMoving = []string{
		"The motor's plug and cable.",
		"The driver: enabled, in its socket, its current set.",
		"The command: the right axis.",
		"The pulley or coupling: it should turn with the motor, and grip.",
		"An endstop that's triggered, or a limit of the axis.",
	}
)

// Readings that may be meant otherwise.
const (
	fedAsRest   word.Template = "Is that what was fed, rather than what remained? Then choose “{fed}”."
	restAsFed   word.Template = "Is that what remained to the mark, rather than what was fed? Then choose “{rest}”, and enter the mark."
	inchesRead  word.Template = "Were the readings in inches? Then write the unit with them, like 3.92 in."
	inchesAsked word.Template = "Was the commanded length in inches? Then write the unit with it, like 4 in."
	turnsRead   word.Template = "Are the readings in turns? Then multiply them by 360."
	turnsAsked  word.Template = "Is the commanded angle in turns? Then multiply it by 360."
	turnsLost   word.Template = "Does the dial start again at 0 on each turn? Then add 360° for each full turn already made."

	markGone word.Template = "“{remaining}”: the mark went in, so nobody knows how much was fed. Mark farther out, and repeat the run."
)
